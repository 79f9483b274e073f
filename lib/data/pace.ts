import { atOnce, type Steps } from '@/shared/steps';

/** How long work is gone through: without a pause, or giving way to every request that waits. */
export type Pace = {
  through<T>(steps: Steps<T>): T | Promise<T>;
  /** A pause between two parts of the work; none where it is done at once. */
  pause(): Promise<void> | undefined;
  /** How many records are read and checked between two pauses; null for all of them. */
  few: number | null;
};

/** Everybody else waits until it is done: for what takes a moment, and for the middle of a write. */
export const AT_ONCE: Pace = { through: atOnce, pause: () => undefined, few: null };

/** One part of it takes some ten milliseconds. */
const FEW_RECORDS = 40;

/** Others are answered between any two parts of it. */
export const GIVING_WAY = {
  async through<T>(steps: Steps<T>): Promise<T> {
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
      await giveWay();
    }
  },
  pause: giveWay,
  few: FEW_RECORDS,
} satisfies Pace;

/** A request takes several turns of the event loop, which take no time where nobody asks for anything. */
const TURNS = 4;

/** Whatever has come in meanwhile goes first. */
async function giveWay(): Promise<void> {
  for (let turn = 0; turn < TURNS; turn += 1) await new Promise((resume) => setImmediate(resume));
}
