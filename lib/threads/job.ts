import type { Worker } from 'node:worker_threads';
import type { Written } from '@/shared/json/written';
import { accept, type Outcome, type Refusal, refuse } from '@/shared/outcome';
import { confirmationGiven } from '../confirmation';
import { Answer } from './answer';
import type { Asked, Said } from './asked';

/** A thread, and the room for what it answers. */
export type Hand = { worker: Worker; room: Int32Array };

/** Who waits: told each step; a signal that is aborted ends the work. */
export type Waiting = { told?: (step: object) => void; signal?: AbortSignal };

/** A question that a thread is working on. */
export type Job = {
  /** Resolves once the thread waits for its turn to write; never where it does not write. */
  wantsTurn: Promise<void>;
  /** What it answers, which may still be coming in. */
  outcome: Promise<Outcome<Written>>;
  /** How many commands it has committed, once it has said all. Null where it was ended before: then none. */
  ended: Promise<number | null>;
};

/**
 * Ask a thread that has nothing else to do.
 *
 * Takes    how many seconds it has until it begins to answer
 * Refuses  'too-much-work' where that is not enough, where it takes more memory than a thread has, or where it was stopped
 */
export function begin({ worker, room }: Hand, asked: Asked, seconds: number, { told, signal }: Waiting): Job {
  const [turn, outcome, ended] = [later<void>(), later<Outcome<Written>>(), later<number | null>()];
  const release = () => {
    clearTimeout(limit);
    signal?.removeEventListener('abort', stop);
    for (const [event, listener] of Object.entries(listeners)) worker.off(event, listener);
  };
  const fail = (why: Refusal | Error) => {
    release();
    if (why instanceof Error) outcome.reject(why);
    else outcome.resolve(refuse(why));
    answer.close(why instanceof Error ? why : new Error(why.code));
    // What it had not committed is rolled back with its connections, before anybody goes on.
    void worker.terminate().then(() => ended.resolve(null));
  };
  const whole = (commits: number) => {
    release();
    answer.close('whole');
    ended.resolve(commits);
  };
  const stop = () => fail(tooMuch('This was stopped. Nothing was changed.'));
  const limit = setTimeout(() => fail(tooMuch(tooLong(seconds))), seconds * 1_000);
  const answer = new Answer(room, stop);
  const begun = () => {
    clearTimeout(limit);
    outcome.resolve(accept(answer.written()));
  };
  const refused = (why: Refusal) => outcome.resolve(refuse(why));
  const hear = hearing(answer, { told, turn: turn.resolve, begun, refused, fail, whole });
  const listeners = {
    message: hear,
    error: (error: Error) => fail(isOutOfMemory(error) ? tooMuch(TOO_LARGE) : error),
    exit: (code: number) => fail(new Error(`the thread ended with ${code} and said nothing`)),
  };
  for (const [event, listener] of Object.entries(listeners)) worker.on(event, listener);
  signal?.addEventListener('abort', stop, { once: true });
  worker.postMessage({ asked, confirmation: confirmationGiven() });
  if (signal?.aborted) stop();
  return { wantsTurn: turn.promise, outcome: outcome.promise, ended: ended.promise };
}

/** What is done with each thing that a thread says. */
type Heard = {
  told: Waiting['told'];
  turn: () => void;
  begun: () => void;
  refused: (why: Refusal) => void;
  fail: (why: Error) => void;
  whole: (commits: number) => void;
};

function hearing(answer: Answer, { told, turn, begun, refused, fail, whole }: Heard): (said: Said) => void {
  let isBegun = false;
  return (said) => {
    if ('step' in said) told?.(said.step);
    else if ('wantsTurn' in said) turn();
    else if ('refused' in said) refused(said.refused);
    else if ('named' in said) answer.name = said.named;
    else if ('thrown' in said) fail(new Error(said.thrown));
    else if ('end' in said) whole(said.commits);
    else {
      answer.add(said.piece);
      if (!isBegun) begun();
      isBegun = true;
    }
  };
}

const tooMuch = (said: string): Refusal => ({ code: 'too-much-work', said });

const tooLong = (seconds: number): string =>
  `This was still being worked out after ${seconds} seconds, and was stopped. Nothing was changed. ${WHAT_TO_DO}`;

const WHAT_TO_DO =
  'Ask for fewer weeks, or look for programs that spray much too often and for counts with too many digits.';

const TOO_LARGE = `This takes more memory than one question may have, and was stopped. Nothing was changed. ${WHAT_TO_DO}`;

const isOutOfMemory = (error: Error): boolean => 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';

function later<T>() {
  let resolve: (value: T) => void = () => {};
  let reject: (error: Error) => void = () => {};
  const promise = new Promise<T>((...settle) => {
    [resolve, reject] = settle;
  });
  promise.catch(() => {});
  return { promise, resolve, reject };
}
