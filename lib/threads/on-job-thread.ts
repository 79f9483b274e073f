import 'server-only';
import { Worker } from 'node:worker_threads';
import type { Written } from '@/shared/json/written';
import type { Outcome } from '@/shared/outcome';
import { beforeClosing, database } from '../data/database';
import { writtenBeside } from '../data/writer';
import { PIECES_ON_THE_WAY } from './answer';
import type { Asked, AskedToWrite, Start } from './asked';
import { begin, type Hand, type Waiting } from './job';

/** How long a question may take until it begins to be answered, and how long an import with its turn. */
const [READ_SECONDS, WRITE_SECONDS] = [60, 180];

/** A thread has so much memory of its own. */
const MOST_MEGABYTES = 700;

/** A thread that nobody asks ends after so long. */
const IDLE_MS = 60_000;

/** One thread reads, and one writes: a second of either would make both slower. */
type Threads = {
  reading: (Hand & { file: string }) | null;
  idle: NodeJS.Timeout | null;
  lines: Record<'read' | 'write', Promise<unknown>>;
};

/** Pages and routes are bundles of their own, and share the threads of the process. */
const house: { threads?: Threads } & typeof globalThis = globalThis;
house.threads ??= threadsHere();
const threads = house.threads;

function threadsHere(): Threads {
  beforeClosing((file) => endReading(file));
  return { reading: null, idle: null, lines: { read: Promise.resolve(), write: Promise.resolve() } };
}

/**
 * Have a question worked out on a thread of its own, which reads the shop itself, so that nobody else waits for it.
 *
 * Gives    the answer as JSON, in pieces
 * Refuses  what the question refuses; 'too-much-work' where it takes too long or too much memory, or was stopped
 */
export async function readOnThread(
  asked: Exclude<Asked, AskedToWrite>,
  waiting: Waiting = {},
): Promise<Outcome<Written>> {
  const { file } = await database();
  return inLine('read', () => {
    if (threads.idle) clearTimeout(threads.idle);
    const hand = threads.reading?.file === file ? threads.reading : { ...threadFor(file), file };
    if (hand !== threads.reading) void threads.reading?.worker.terminate();
    threads.reading = hand;
    const job = begin(hand, asked, READ_SECONDS, waiting);
    const over = job.ended.then(afterReading);
    return { outcome: job.outcome, over };
  });
}

/** A thread that was ended is gone; one that has answered is kept for the next question. */
function afterReading(commits: number | null): void {
  if (commits === null) threads.reading = null;
  threads.idle = setTimeout(() => threads.reading && endReading(threads.reading.file), IDLE_MS).unref();
}

async function endReading(file: string): Promise<void> {
  const { reading } = threads;
  if (reading?.file !== file) return;
  threads.reading = null;
  await reading.worker.terminate();
}

/**
 * Have a command prepared and written on a thread of its own, in this program's line of commands. Pages show the shop as it
 * was until it is committed. It can be stopped until it is its turn; after that it is written whole.
 *
 * Refuses  what the command refuses; 'too-much-work', also where it was stopped
 */
export async function writeOnThread(asked: AskedToWrite, waiting: Waiting = {}): Promise<Outcome<Written>> {
  const { file } = await database();
  return inLine('write', () => {
    const hand = threadFor(file);
    const stop = stopUntilTurn(waiting.signal);
    const job = begin(hand, asked, WRITE_SECONDS, { ...waiting, signal: stop.signal });
    const outcome = Promise.race([job.wantsTurn, job.outcome]).then((refused) =>
      refused
        ? refused
        : writtenBeside(async () => {
            // From here on it is written whole: who stops it now comes too late.
            if (!stop.goOn()) return { answer: await job.outcome, isWritten: false };
            hand.worker.postMessage({ go: true });
            const commits = await job.ended;
            return { answer: await job.outcome, isWritten: (commits ?? 0) > 0 };
          }),
    );
    const over = job.ended.then(() => hand.worker.terminate());
    return { outcome, over };
  });
}

/** A stop that no longer works once its turn has come. */
function stopUntilTurn(asked: AbortSignal | undefined) {
  const controller = new AbortController();
  const stop = () => controller.abort();
  asked?.addEventListener('abort', stop, { once: true });
  if (asked?.aborted) stop();
  return {
    signal: controller.signal,
    /** Gives false where it was stopped before. */
    goOn: () => {
      asked?.removeEventListener('abort', stop);
      return !controller.signal.aborted;
    },
  };
}

/** Answered after whoever came before has been answered whole. */
function inLine(
  line: 'read' | 'write',
  work: () => { outcome: Promise<Outcome<Written>>; over: Promise<unknown> },
): Promise<Outcome<Written>> {
  const begun = threads.lines[line].then(work);
  threads.lines[line] = begun.then(({ over }) => over).catch(() => {});
  return begun.then(({ outcome }) => outcome);
}

function threadFor(database: string): Hand {
  const room = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)).fill(PIECES_ON_THE_WAY);
  const worker = threadWith({ database, room });
  worker.unref();
  return { worker, room };
}

function threadWith(start: Start): Worker {
  const resourceLimits = { maxOldGenerationSizeMb: MOST_MEGABYTES };
  // The bundler finds the thread by exactly this expression, and builds it into a file of its own.
  if (process.env.NEXT_RUNTIME)
    return new Worker(new URL('./job-thread.ts', import.meta.url), { workerData: start, resourceLimits });
  return new Worker(asWritten(import.meta.url.replace('on-job-thread', 'job-thread')), {
    ...{ eval: true, workerData: start, resourceLimits },
    execArgv: ['--conditions=react-server'],
  });
}

/** Run as it is written, as the tests do, it first needs what reads TypeScript. */
const asWritten = (url: string): string =>
  `import('tsx/esm/api').then((tsx) => { tsx.register(); return import(${JSON.stringify(url)}); });`;
