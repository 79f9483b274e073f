import highs, { type Highs, type Model } from 'highs';
import type { Program, Relaxed, Solver, Whole } from '../engine/buying/solver';

/** How a run is watched: how long it may take, whether somebody has stopped it, and who is told how far it is. */
export type Watch = { secondsLeft: () => number; told: Solver['told'] };

let loading: Promise<Highs> | null = null;

/**
 * The solver HiGHS, compiled to WebAssembly, as the search takes it. Loading is the only thing to wait for; every solve
 * then blocks the thread that it runs on, so a server gives it one of its own.
 */
export async function highsSolver({ secondsLeft, told }: Watch): Promise<Solver> {
  loading ??= highs();
  const runtime = await loading;
  return { open: () => programIn(runtime, secondsLeft), secondsLeft, told };
}

/** A plan whose cost is this near to the bound is as good as proven; the rest is the rounding of doubles. */
const GAP = 1e-9;

function programIn(runtime: Highs, secondsLeft: () => number): Program {
  const model = runtime.createModel();
  model.options.set({ output_flag: false, mip_rel_gap: GAP, mip_abs_gap: GAP });
  let [rows, columns] = [0, 0];
  return {
    addRow(lower, upper, entries) {
      model.addRow(finite(lower, runtime), finite(upper, runtime), split(entries));
      return rows++;
    },
    addColumn({ cost, upper, entries }) {
      model.addCol(cost, 0, finite(upper, runtime), split(entries));
      return columns++;
    },
    relaxed: () => relaxed(model, runtime, secondsLeft()),
    whole: (whole, start, seconds) => chosen(model, runtime, { secondsLeft, seconds }, whole, start),
    close: () => model.dispose(),
  };
}

const finite = (value: number, { infinity }: Highs): number =>
  value === Infinity ? infinity : value === -Infinity ? -infinity : value;

const split = (entries: readonly (readonly [number, number])[]) => ({
  indices: entries.map(([at]) => at),
  values: entries.map(([, value]) => value),
});

function relaxed(model: Model, runtime: Highs, seconds: number): Relaxed | null {
  model.zeroAllClocks();
  model.options.set({ time_limit: Math.max(0, seconds) });
  model.run();
  if (model.getModelStatus() !== runtime.constants.modelStatus.optimal) return null;
  const { colValue, rowDual } = model.getSolution();
  return { objective: model.getObjectiveValue(), values: colValue, duals: rowDual };
}

/** Whole columns with an interrupt, so that a stop is heard while the solver is at work. */
function chosen(
  model: Model,
  runtime: Highs,
  { secondsLeft, seconds }: { secondsLeft: () => number; seconds: number },
  whole: readonly number[],
  start: readonly number[],
): Whole | null {
  const { integer, continuous } = runtime.constants.variableType;
  const types = (type: typeof integer | typeof continuous) => whole.map(() => type);
  const columns = { kind: 'set', indices: whole.toSorted((a, b) => a - b) } as const;
  model.changeColsIntegrality(columns, types(integer));
  model.setSolution({ colValue: Array.from({ length: model.getDimensions().numCols }, (_, at) => start[at] ?? 0) });
  model.zeroAllClocks();
  model.options.set({ time_limit: Math.max(0, seconds) });
  model.run({
    [runtime.constants.callbackType.mipInterrupt]: (event) => {
      if (secondsLeft() <= 0) event.interrupt();
    },
  });
  const found = answerOf(model, runtime);
  model.changeColsIntegrality(columns, types(continuous));
  return found;
}

/** A solution that was found, whether it was proven or only the best so far. Every other end of a run is no answer. */
function answerOf(model: Model, runtime: Highs): Whole | null {
  const { optimal, timeLimit, interrupted } = runtime.constants.modelStatus;
  const status = model.getModelStatus();
  if (status !== optimal && status !== timeLimit && status !== interrupted) return null;
  const { colValue } = model.getSolution();
  if (colValue.length === 0 || Number(model.info.get('primal_solution_status')) !== FEASIBLE) return null;
  const bound = Number(model.info.get('mip_dual_bound'));
  return { objective: model.getObjectiveValue(), values: colValue, bound: Number.isFinite(bound) ? bound : -Infinity };
}

const FEASIBLE = 2;
