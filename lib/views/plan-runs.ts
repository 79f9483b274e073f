import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
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
export async function planRun(key: PlanKey): Promise<PlanRun | null> {
  return runs.get(await nameOf(key)) ?? null;
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
  const known = runs.get(name);
  if (known && !isWorthMore(known, seconds)) return known;
  const run: PlanRun = {
    seconds,
    startedAt: clock.steady(),
    stop: new AbortController(),
    progress: null,
    plan: null,
    hasFailed: false,
  };
  void runNow(run, key);
  runs.delete(name);
  runs.set(name, run);
  for (const old of [...runs.keys()].slice(0, -MOST_KEPT)) runs.delete(old);
  return run;
}

const isWorthMore = ({ plan, hasFailed, stop, seconds }: PlanRun, more: number): boolean =>
  hasFailed || (plan !== null && !plan.proven && (stop.signal.aborted || more > seconds));

async function runNow(run: PlanRun, { shop, today, weeks }: PlanKey): Promise<void> {
  const told = (progress: Progress) => {
    run.progress = progress;
  };
  try {
    const file = await shopFileOf(shop);
    const asked = { what: 'purchase plan', file, today, weeks, seconds: run.seconds } as const;
    run.plan = await onThread(asked, { told, signal: run.stop.signal });
  } catch (error) {
    console.error('purchase plan:', error);
    run.hasFailed = true;
  }
}

/** Enough: the run ends with the best plan that it has found. */
export const stopPlan = (run: PlanRun): void => run.stop.abort();

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
