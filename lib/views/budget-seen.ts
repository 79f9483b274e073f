import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { planKept, pricedKept } from '../data/plan-kept';
import { snapshotOf } from '../data/snapshot';
import { type Budget, type BudgetColumn, type BudgetKey, linesIn, rowsBy, unknownIn } from '../engine/budget/budget';
import type { BudgetLine } from '../engine/budget/budget-line';
import { sumOnce } from '../engine/budget/placed-lines';
import { eachOnce, type ToEnter } from '../engine/rules/to-enter';
import type { PlantGroup } from '../engine/shop';
import { rowName, sideWords } from '../engine/working/budget-figures';
import { budgetNow } from './budget-now';
import { type Fig, type FigAt, figuresOf } from './figures';
import type { House } from './house';

/** One row: its name, its figures by column, and how many pieces of it are not known; null where there is nothing. */
export type BudgetRow = {
  row: string;
  name: string;
  cells: Record<BudgetColumn, Fig | null>;
  /** The same as plain numbers of micros, for the chart; what is not known draws nothing. */
  drawn: Record<BudgetColumn, number>;
  unknown: Fig | null;
};

/** What one plant of a group costs in the year ahead: in product, in work, and in both. */
type PlantCost = { bench: string; group: PlantGroup; product: Fig; labour: Fig; all: Fig };

export type BudgetScreen = Pick<House, 'today' | 'ways'> & {
  from: Day;
  to: Day;
  by: BudgetKey;
  rows: BudgetRow[];
  sums: Record<BudgetColumn, Fig | null>;
  /** What is not known and so in no sum, by name, with how many times. */
  unknown: { name: string; times: Fig; side: string; toEnter: ToEnter[] }[];
  /** How many pieces that are in all; null when everything is known. */
  unknownInAll: Fig | null;
  plants: PlantCost[];
};

/** What a budget is told from. */
export type BudgetHouse = Pick<House, 'id' | 'shop' | 'plan' | 'now' | 'today' | 'ways'>;

/** The budget by month, program, bench or product: what was spent in the year behind, what is planned in the year ahead. */
export async function budgetSeen(house: BudgetHouse, by: BudgetKey): Promise<BudgetScreen> {
  const budget = await budgetNow(house);
  // No figure of a budget rests on who may stand where.
  const figure = figuresOf({ ...house, benches: [], budget });
  return {
    ...{ today: house.today, ways: house.ways, from: budget.from, to: budget.to, by },
    rows: rowsBy(budget, by).map((row) => budgetRow(budget, by, row, figure)),
    sums: cellsOf((column) => cellAt(budget, by, null, column, () => figure('budget', by, column))),
    unknown: unknownSeen(budget, figure),
    unknownInAll: unknownIn(budget, by, null).length === 0 ? null : figure('budget', by, 'unknown'),
    plants: plantCosts(budget, figure),
  };
}

/** The same for a shop as it stands now, whoever looks at it. */
export async function budgetMade(id: string, by: BudgetKey, clock: Clock): Promise<BudgetScreen> {
  const { shop: asWritten } = await snapshotOf(id);
  const today = clock.today(asWritten.zone);
  const shop = pricedKept(asWritten, today);
  const ways = { units: shop.units, currency: shop.currency, zone: shop.zone, today };
  const plan = await planKept(shop, today);
  return budgetSeen({ ...{ id, shop, today, ways }, plan, now: clock.now() }, by);
}

function budgetRow(budget: Budget, by: BudgetKey, row: string, figure: FigAt): BudgetRow {
  const lines = cellsOf((column) => linesIn(budget, by, row, column));
  return {
    ...{ row, name: rowName(budget, by, row) },
    cells: cellsOf((column) => cellAt(budget, by, row, column, () => figure('budget', by, row, column))),
    drawn: cellsOf((column) => Math.max(0, sumOnce(lines[column]).cost ?? 0)),
    unknown: unknownIn(budget, by, row).length === 0 ? null : figure('budget', by, row, 'unknown'),
  };
}

const cellAt = (budget: Budget, by: BudgetKey, row: string | null, column: BudgetColumn, of: () => Fig): Fig | null =>
  linesIn(budget, by, row, column).length === 0 ? null : of();

const cellsOf = <T>(of: (column: BudgetColumn) => T): Record<BudgetColumn, T> => ({
  'actual-product': of('actual-product'),
  'actual-waste': of('actual-waste'),
  'actual-labour': of('actual-labour'),
  'foreseen-product': of('foreseen-product'),
  'foreseen-labour': of('foreseen-labour'),
  'planned-product': of('planned-product'),
  'planned-waste': of('planned-waste'),
  'planned-labour': of('planned-labour'),
});

/** Each thing that is not known, the most often first. */
function unknownSeen(budget: Budget, figure: FigAt): BudgetScreen['unknown'] {
  const pieces = new Map<string, { line: BudgetLine; pieces: Set<string>; toEnter: ToEnter[] }>();
  for (const line of unknownIn(budget, 'month', null)) {
    const key = `${line.side} ${line.what}`;
    const found = pieces.get(key) ?? { line, pieces: new Set<string>(), toEnter: [] };
    pieces.set(key, found);
    found.pieces.add(line.piece);
    found.toEnter = eachOnce([...found.toEnter, ...(line.toEnter ?? [])]);
  }
  return [...pieces.values()]
    .sort((a, b) => b.pieces.size - a.pieces.size || a.line.what.localeCompare(b.line.what))
    .map(({ line: { what, side }, toEnter }) => ({
      toEnter,
      ...{ name: what, side: sideWords(side), times: figure('budget', 'unknown', side, what) },
    }));
}

/** What one plant costs, for benches that anything is planned for. */
function plantCosts(budget: Budget, figure: FigAt): PlantCost[] {
  return budget.shop.benches.flatMap((bench) => {
    const has = (column: BudgetColumn) => linesIn(budget, 'bench', bench.id, column).length > 0;
    if (!has('planned-product')) return [];
    return bench.plants.map((group, at): PlantCost => {
      const of = (column: BudgetColumn) => figure('budget', 'plant', bench.id, at, column);
      const all = figure('budget', 'plant', bench.id, at, 'all');
      return { bench: bench.name, group, product: of('planned-product'), labour: of('planned-labour'), all };
    });
  });
}
