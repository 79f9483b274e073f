import { Worker } from 'node:worker_threads';
import type { PurchasePlan } from '../engine/buying/purchase-plan';
import type { Progress, Solver } from '../engine/buying/solver';
import type { PlanAsked, PlanSaid } from './plan-thread';

/** A plan that is being made on another thread. */
export type PlannedApart = {
  /** How far it is; null before anything is known. */
  progress(): Progress | null;
  /** Enough: the best plan found so far is given. What does not come to an end by then is given up. */
  stop(): void;
  plan: Promise<PurchasePlan>;
};

/** A search that is told to stop looks up from its work within this. */
const PATIENCE_MS = 5_000;

/**
 * Make a purchase plan off the thread that answers requests.
 *
 * Throws   in its promise, when the thread fails or has to be given up
 */
export function plannedApart(asked: PlanAsked): PlannedApart {
  const stop = new SharedArrayBuffer(4);
  const thread = new Worker(new URL('./plan-thread.ts', import.meta.url), { workerData: { ...asked, stop } });
  let progress: Progress | null = null;
  const plan = new Promise<PurchasePlan>((done, failed) => {
    thread.on('message', (said: PlanSaid) => {
      if ('progress' in said) progress = said.progress;
      else done(said.plan);
    });
    thread.on('error', failed);
    thread.on('exit', () => failed(new Error('the thread ended without a plan')));
  });
  return {
    plan,
    progress: () => progress,
    stop() {
      Atomics.store(new Int32Array(stop), 0, 1);
      setTimeout(() => thread.terminate(), PATIENCE_MS).unref();
    },
  };
}

/** No solver and no time: what is planned with it are the exact packs of each product by itself, or a habit. */
export const AT_ONCE: Solver = {
  open: () => ({
    addRow: () => 0,
    addColumn: () => 0,
    relaxed: () => null,
    whole: () => null,
    close: () => {},
  }),
  secondsLeft: () => 0,
  told: () => {},
};
