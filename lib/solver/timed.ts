import type { Clock } from '../clock';
import type { Solver } from '../engine/buying/solver';
import { highsSolver } from './highs';

/** Who watches a run on the same thread: told how far it is, and asked whether to stop. */
export type Watcher = { told: Solver['told']; isStopped: () => boolean };

const NOBODY: Watcher = { told: () => {}, isStopped: () => false };

/** The solver with so many seconds from now on. It blocks the thread that it is used on. */
export function solverFor(seconds: number, clock: Clock, { told, isStopped }: Watcher = NOBODY): Promise<Solver> {
  const started = clock.steady();
  const secondsLeft = () => (isStopped() ? 0 : seconds - (clock.steady() - started) / 1_000);
  return highsSolver({ secondsLeft, told });
}
