import { Worker } from 'node:worker_threads';
import { TooMuchAhead } from '@/shared/shop-file/limits';
import type { Progress } from '../engine/buying/solver';
import type { Answers, Asked, Said, Start } from './asked';

/** Who waits for an answer: told how far it is; a signal that is aborted ends the search with the best found so far. */
export type Waiting = { told?: (progress: Progress) => void; signal?: AbortSignal };

/** One search at a time: a second one at once would make both of them slower, and prove less in the same time. */
let line: Promise<unknown> = Promise.resolve();

/**
 * Ask for something that needs the solver, on a thread of its own.
 *
 * Throws   RangeError when figures are too large to be kept exactly; whatever else ends the thread
 */
export function onThread<A extends Asked>(asked: A, waiting: Waiting = {}): Promise<Answers[A['what']]> {
  const turn = line.then(() => answered(asked, waiting));
  line = turn.catch(() => {});
  return turn;
}

function answered<A extends Asked>(asked: A, { told, signal }: Waiting): Promise<Answers[A['what']]> {
  const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  let limit: NodeJS.Timeout | undefined;
  const halt = () => Atomics.store(stop, 0, 1);
  if (signal?.aborted) halt();
  signal?.addEventListener('abort', halt, { once: true });
  const worker = threadWith({ asked, stop });
  const answer = new Promise<Answers[A['what']]>((resolve, reject) => {
    worker.on('message', (said: Said) => {
      if ('progress' in said) told?.(said.progress);
      else if ('answer' in said) resolve(said.answer as Answers[A['what']]);
      else reject('tooMuch' in said ? new TooMuchAhead(said.tooMuch) : new RangeError(TOO_LARGE));
    });
    worker.once('error', (error) => reject(isOutOfMemory(error) ? new TooMuchAhead(TOO_MUCH_MEMORY) : error));
    limit = setTimeout(() => reject(new TooMuchAhead(TOO_LONG)), (asked.seconds + SECONDS_BESIDE) * 1_000);
    worker.once('exit', (code) => reject(new Error(`the search ended with ${code} and said nothing`)));
  });
  return answer.finally(() => {
    clearTimeout(limit);
    signal?.removeEventListener('abort', halt);
    return worker.terminate();
  });
}

/** What is planned before a search, and put together after it, may take so long. */
const SECONDS_BESIDE = 60;

const TOO_LONG =
  'Looking for what to buy takes longer than one question may. Ask for fewer weeks, or spray less often.';

const isOutOfMemory = (error: Error): boolean => 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';

const TOO_MUCH_MEMORY =
  'Looking for what to buy takes more memory than one question may have. Ask for fewer weeks, or spray less often.';

/** The sentence by which figures that are too large are known everywhere. */
const TOO_LARGE = 'buying: a figure is too large to be exact';

/** A search has so much memory of its own, beside that of the solver. */
const resourceLimits = { maxOldGenerationSizeMb: 800 };

function threadWith(start: Start): Worker {
  // The bundler finds the thread by exactly this expression, and builds it into a file of its own.
  if (process.env.NEXT_RUNTIME)
    return new Worker(new URL('./search-thread.ts', import.meta.url), { workerData: start, resourceLimits });
  return new Worker(asWritten(import.meta.url.replace('on-thread', 'search-thread')), {
    ...{ eval: true, workerData: start, resourceLimits },
  });
}

/** Run as it is written, as the tests do, it first needs what reads TypeScript. */
const asWritten = (url: string): string =>
  `import('tsx/esm/api').then((tsx) => { tsx.register(); return import(${JSON.stringify(url)}); });`;
