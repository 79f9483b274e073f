import { parentPort, workerData } from 'node:worker_threads';
import { tests } from '../plain-runner';

/*
 * Runs in a worker, with all tests and all mutants in one piece: finds which test reaches which mutant, then wakes one
 * mutant after another and runs the tests that reach it until one is red.
 */

type Namespace = {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: { static: Record<string, number>; perTest: Record<string, Record<string, number>> };
};
/** What the mutants look at, by the name that their maker gave it. */
const space: Namespace = Reflect.get(globalThis, '__stryker__');

/** A mutant that makes a loop endless is stopped at this many times its ordinary number of passes. */
const PATIENCE = 100;

/** A mutant that is awake while the program is loaded has a worker to itself, and is told in which order to run the tests. */
const { ids, from, awake }: { ids: string[]; from: number; awake: { inOrder: number[] } | null } = workerData;

async function isRed(run: () => unknown): Promise<boolean> {
  try {
    await run();
    return false;
  } catch {
    return true;
  }
}

async function durations(): Promise<number[]> {
  const all: number[] = [];
  for (const [at, { name, run }] of tests.entries()) {
    space.currentTestId = String(at);
    const began = performance.now();
    if (await isRed(run)) throw new Error(`Without any mutant this is red: ${name}`);
    all.push(performance.now() - began);
  }
  space.currentTestId = undefined;
  return all;
}

/** The first of some tests that is red, by its name. */
async function firstRed(those: number[]): Promise<string | null> {
  for (const at of those) {
    const test = tests[at];
    if (test && (await isRed(test.run))) return test.name;
  }
  return null;
}

async function killer(id: string, inOrder: number[]): Promise<string | null> {
  const perTest = space.mutantCoverage?.perTest ?? {};
  const reaching = inOrder.filter((at) => perTest[at]?.[id]);
  for (const at of reaching) {
    Object.assign(space, { activeMutant: id, hitCount: 0, hitLimit: ((perTest[at]?.[id] ?? 0) + 10) * PATIENCE });
    const by = await firstRed([at]);
    if (by !== null) return by;
  }
  return null;
}

async function runAll(): Promise<void> {
  if (awake) {
    parentPort?.postMessage({ ended: from, by: await firstRed(awake.inOrder), over: true });
    return;
  }
  const took = await durations();
  const inOrder = took.map((_, at) => at).sort((one, other) => (took[one] ?? 0) - (took[other] ?? 0));
  const seconds = took.reduce((sum, one) => sum + one, 0) / 1_000;
  const atImport = space.mutantCoverage?.static ?? {};
  parentPort?.postMessage({ inOrder, seconds });
  for (const [at, id] of ids.entries()) {
    if (at < from) continue;
    parentPort?.postMessage({ began: at });
    const by = await killer(id, inOrder);
    parentPort?.postMessage({ ended: at, by, isAtImport: by === null && atImport[id] !== undefined });
  }
  parentPort?.postMessage({ over: true });
}

export const done = runAll();
