import { parentPort, workerData } from 'node:worker_threads';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
import { clock } from '../clock';
import { type PurchasePlan, purchasePlanOf } from '../engine/buying/purchase-plan';
import type { Progress } from '../engine/buying/solver';
import { shopOfFile } from '../engine/shop-of-file';
import { solverFor } from './timed';

/** What is to be planned, for how long at most, and where whoever asked says that it is enough. */
export type PlanAsked = { file: ShopFile; today: Day; weeks: number; seconds: number };

/** What a thread says: how far it is, and last the plan. */
export type PlanSaid = { progress: Progress } | { plan: PurchasePlan };

/** Often enough to be seen moving. */
const EVERY_MS = 100;

/** Runs on a thread of its own, because the solver blocks the one that it is on. */
async function planHere({ file, today, weeks, seconds, stop }: PlanAsked & { stop: SharedArrayBuffer }): Promise<void> {
  const stopped = new Int32Array(stop);
  let last = Number.NEGATIVE_INFINITY;
  const told = (progress: Progress) => {
    if (clock.steady() - last < EVERY_MS) return;
    last = clock.steady();
    say({ progress });
  };
  const solver = await solverFor(seconds, clock, { told, isStopped: () => Atomics.load(stopped, 0) === 1 });
  say({ plan: purchasePlanOf(shopOfFile(file), today, weeks, solver) });
}

const say = (what: PlanSaid): void => parentPort?.postMessage(what);

await planHere(workerData);
