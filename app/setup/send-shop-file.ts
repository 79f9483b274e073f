import type { Comparison } from '@/lib/engine/exchange/compare';
import { type Answer, postInSteps, type Sending, type Sure } from './send-in-steps';

export type Preview = { name: string; comparison: Comparison; fingerprint: string | null };
export type Imported = { shopId: string; added: number; changed: number };

/** How far a shop file is: on its way, read and compared, being saved. */
export type Progress = Sending | { step: 'reading' } | { step: 'saving' };
type Told = (progress: Progress) => void;

/** Ask what a file would change. Changes nothing, and can be broken off; then there is no answer. */
export const askPreview = (
  into: string,
  text: string,
  told: Told,
  signal: AbortSignal,
): Promise<Answer<Preview> | null> =>
  postInSteps('/api/v1/shop/preview', { into, text }, thenReading(told), UNANSWERED, { signal });

type ToImport = { commandId: string; into: string; fingerprint: string | null; text: string };

/** Bring a file in as the preview showed it, all of it or nothing. Sending the same command twice does it once. */
export const sendImport = (sent: ToImport, told: Told, sure: Sure | null): Promise<Answer<Imported> | null> =>
  postInSteps('/api/v1/shop/import', sent, thenReading(told), UNSAVED, { sure });

const AGAIN_MS = 1_000;

/**
 * Ask the shop to stop an import, again until it knows of it: while the file is still on its way it does not. What became
 * of it, the import answers: nothing was changed, or all of it is in.
 *
 * Takes   whether the import was answered meanwhile
 */
export async function stopImport(commandId: string, isOver: () => boolean): Promise<void> {
  while (!isOver() && !(await isStopHeard(commandId))) await new Promise((resume) => setTimeout(resume, AGAIN_MS));
}

async function isStopHeard(commandId: string): Promise<boolean> {
  const headers = { 'content-type': 'application/json' };
  const sent = { method: 'POST', headers, body: JSON.stringify({ commandId }) };
  const answer = await fetch('/api/v1/shop/import/stop', sent)
    .then((said) => said.json())
    .catch(() => null);
  return answer?.found === true;
}

/** What has arrived is being read until the shop says something else. */
const thenReading =
  (told: Told): Told =>
  (progress) =>
    told(progress.step === 'sending' && progress.share >= 1 ? { step: 'reading' } : progress);

const UNANSWERED = 'The shop did not answer. Nothing was changed. Try again.';
const UNSAVED = 'The shop did not answer. Press the button again: a file that is in already does not go in twice.';
