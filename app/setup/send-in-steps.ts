import { sureHeaders } from '@/shared/forms/earlier-asked';
import type { Fault } from '@/shared/outcome';

/**
 * What the shop says no to: one sentence, and what in the file must be put right. With `confirm` the faults are benches that
 * would open earlier, or lots of a great many bottles, and the same may be sent again with it and a reason.
 */
export type Refused = { message: string; faults: Fault[]; confirm?: string; code?: string };

/** Why it is certain that a bench may open earlier, for the refusal that asked for it. */
export type Sure = { token: string; reason: string };

export type Answer<T> = { ok: true; value: T } | { ok: false; refused: Refused };

/** How much of what is sent is on its way, from 0 to 1. */
export type Sending = { step: 'sending'; share: number };

/**
 * Send something large, and hear how far it is: how much of it is on its way, then each step of the shop's.
 * (fetch does not say how much of a body is on its way.)
 *
 * Gives   the answer; null where the signal broke it off
 */
export function postInSteps<T, Step>(
  path: string,
  body: object,
  told: (step: Step | Sending) => void,
  unanswered: string,
  { signal, sure = null }: { signal?: AbortSignal; sure?: Sure | null },
): Promise<Answer<T> | null> {
  const none: Answer<T> = { ok: false, refused: { message: unanswered, faults: [] } };
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    let read = 0;
    const lines = () => {
      const end = request.responseText.lastIndexOf('\n');
      if (end < read) return;
      for (const line of request.responseText.slice(read, end).split('\n')) if (isStep(line)) told(JSON.parse(line));
      read = end + 1;
    };
    request.open('POST', path);
    request.setRequestHeader('content-type', 'application/json');
    request.setRequestHeader('accept', 'application/x-ndjson');
    for (const [name, value] of Object.entries(sureHeaders(sure))) request.setRequestHeader(name, value);
    request.upload.onprogress = ({ loaded, total }) => told({ step: 'sending', share: total > 0 ? loaded / total : 1 });
    request.onprogress = () => request.status === 200 && lines();
    request.onload = () => resolve(answerIn<T>(request.status, request.responseText) ?? none);
    request.onerror = () => resolve(none);
    request.onabort = () => resolve(null);
    signal?.addEventListener('abort', () => request.abort());
    request.send(JSON.stringify(body));
  });
}

const isStep = (line: string): boolean => line.startsWith('{"step"');

function answerIn<T>(sentStatus: number, text: string): Answer<T> | null {
  try {
    const last = text.trimEnd().split('\n').at(-1) ?? '';
    const said = JSON.parse(last);
    const { status, answer } = sentStatus === 200 && 'status' in said ? said : { status: sentStatus, answer: said };
    if (status === 200) return { ok: true, value: answer };
    return { ok: false, refused: refusedIn(answer) };
  } catch {
    // The answer broke off, or is none of ours.
    return null;
  }
}

/** What a refusal of the HTTP API says. */
const refusedIn = ({ message, faults = [], confirm, code }: Partial<Refused>): Refused => ({
  ...{ message: message ?? '', faults, confirm, code },
});
