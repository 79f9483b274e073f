import 'server-only';
import type { Day } from '@/shared/time/day';
import { type Clock, clock } from '../clock';
import { noteRun, runNoted, stopRun, takeRun } from '../data/runs-elsewhere';
import { shopMarks } from '../data/shop-marks';
import { shopFileOf } from '../data/snapshot';
import { type PurchasePlan, purchasePlanOf } from '../engine/buying/purchase-plan';
import type { Progress } from '../engine/buying/solver';
import type { Shop } from '../engine/shop';
import { AT_ONCE } from '../solver/at-once';
import { onThread } from '../solver/on-thread';

/** Which plan: of which shop, as it stands at a revision, from which day on, for how many weeks. */
export type PlanKey = { shop: string; today: Day; weeks: number };

/** A run of the search: still at work, done with its plan (which it may have been told to stop at), or failed. */
export type PlanRun = {
  seconds: number;
  startedAt: number;
  /** Aborted once somebody is content with what was found so far. */
  stop: AbortController;
  progress: Progress | null;
  plan: PurchasePlan | null;
  hasFailed: boolean;
  /** The name of a run of another process; null for one of this process. */
  elsewhere: string | null;
};

/** The runs of this process by key, the oldest first, and what stands there until one was made. */
type Runs = Map<string, PlanRun>;
type AtOnce = Map<string, PurchasePlan>;

const { runs, atOnce } = keptIn(globalThis);

/** Pages and routes are bundles of their own, and share what the process has once. */
function keptIn(house: { planRuns?: { runs: Runs; atOnce: AtOnce } } & typeof globalThis) {
  house.planRuns ??= { runs: new Map(), atOnce: new Map() };
  return house.planRuns;
}

/** So many plans are kept; the oldest make room. */
const MOST_KEPT = 8;

/** The run for a shop as it stands; null when nobody began one, or the shop has changed since. */
export async function planRun(key: PlanKey, at: Clock = clock): Promise<PlanRun | null> {
  const name = await nameOf(key);
  return runs.get(name) ?? runElsewhere(name, at);
}

/** The run of another process at the same database, as it was noted last; null when there is none, or it is gone. */
async function runElsewhere(name: string, clock: Clock): Promise<PlanRun | null> {
  const noted = await runNoted(name);
  if (!noted || noted.isOrphaned) return null;
  const stop = new AbortController();
  if (noted.isStopped) stop.abort();
  return {
    ...{ seconds: noted.seconds, startedAt: clock.steady() - noted.sinceMs, stop, hasFailed: noted.hasFailed },
    ...{ progress: noted.progress as Progress | null, plan: noted.plan as PurchasePlan | null, elsewhere: name },
  };
}

/** The plan that stands there until a search has made one, made once for a shop as it stands. */
export async function planAtOnce(key: PlanKey, shop: Shop): Promise<PurchasePlan> {
  const name = await nameOf(key);
  const plan = atOnce.get(name) ?? purchasePlanOf(shop, key.today, key.weeks, AT_ONCE);
  atOnce.set(name, plan);
  for (const old of [...atOnce.keys()].slice(0, -MOST_KEPT)) atOnce.delete(old);
  return plan;
}

/**
 * Begin to plan, unless that is under way or done already for the shop as it stands.
 *
 * Takes    the seconds that it may take; a plan that is there and was not proven is made anew when there are more
 */
export async function beginPlan(key: PlanKey, seconds: number, clock: Clock): Promise<PlanRun> {
  const name = await nameOf(key);
  const known = runs.get(name) ?? (await runElsewhere(name, clock));
  if (known && !isWorthMore(known, seconds)) return known;
  if (!(await takeRun(name, seconds))) return (await runElsewhere(name, clock)) ?? beginPlan(key, seconds, clock);
  const run: PlanRun = {
    seconds,
    startedAt: clock.steady(),
    stop: new AbortController(),
    progress: null,
    plan: null,
    hasFailed: false,
    elsewhere: null,
  };
  void runNow(run, key, name);
  runs.delete(name);
  runs.set(name, run);
  for (const old of [...runs.keys()].slice(0, -MOST_KEPT)) runs.delete(old);
  return run;
}

const isWorthMore = ({ plan, hasFailed, stop, seconds }: PlanRun, more: number): boolean =>
  hasFailed || (plan !== null && !plan.proven && (stop.signal.aborted || more > seconds));

async function runNow(run: PlanRun, { shop, today, weeks }: PlanKey, name: string): Promise<void> {
  const told = (progress: Progress) => {
    run.progress = progress;
  };
  const noting = setInterval(() => noteHere(run, name), A_SECOND);
  try {
    const file = await shopFileOf(shop);
    const asked = { what: 'purchase plan', file, today, weeks, seconds: run.seconds } as const;
    run.plan = await onThread(asked, { told, signal: run.stop.signal });
  } catch (error) {
    console.error('purchase plan:', error);
    run.hasFailed = true;
  } finally {
    clearInterval(noting);
    await noteHere(run, name);
  }
}

const A_SECOND = 1_000;

/** Tell other processes how far a run is, and stop it where somebody there is content. */
async function noteHere(run: PlanRun, name: string): Promise<void> {
  const isStopped = await noteRun(name, run).catch(() => false);
  if (isStopped) run.stop.abort();
}

/** Enough: the run ends with the best plan that it has found. */
export async function stopPlan(run: PlanRun): Promise<void> {
  run.stop.abort();
  if (run.elsewhere !== null) await stopRun(run.elsewhere);
}

/** How far a run is, for whoever waits for it. */
export type PlanState =
  | { kind: 'none' }
  | { kind: 'running'; progress: Progress | null; seconds: number; secondsLeft: number; isStopped: boolean }
  | { kind: 'done' | 'failed' };

export function planState(run: PlanRun | null, clock: Clock): PlanState {
  if (!run) return { kind: 'none' };
  if (run.hasFailed) return { kind: 'failed' };
  if (run.plan) return { kind: 'done' };
  const secondsLeft = Math.max(0, run.seconds - (clock.steady() - run.startedAt) / 1_000);
  return {
    kind: 'running',
    progress: run.progress,
    seconds: run.seconds,
    secondsLeft,
    isStopped: run.stop.signal.aborted,
  };
}

async function nameOf({ shop, today, weeks }: PlanKey): Promise<string> {
  const { revision } = await shopMarks(shop);
  return JSON.stringify([shop, revision, today, weeks]);
}
