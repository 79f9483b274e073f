'use client';

import type { Problem } from '@/shared/api/problem';
import { sureHeaders } from '@/shared/forms/earlier-asked';
import { finishBodyOf } from '@/shared/mix/finish-body';
import { act, keptMix, told } from './kept-mixes';
import { tellSpraying } from './tell-spraying';

/** Mixes that are on their way from this tab. */
const underWay = new Set<string>();

/** Whether a mix is on its way, and has no answer yet. */
export const isUnderWay = (commandId: string): boolean => underWay.has(commandId);

/**
 * Send a finished mix. Without a network, or with nobody signed in, it stays where it is, to be sent again; refused, it is open again with what was
 * refused. However often it is sent, it is one mix.
 */
export async function sendMix(commandId: string): Promise<void> {
  const mix = keptMix(commandId);
  if (mix?.state !== 'to-send' || underWay.has(commandId)) return;
  const finishing = finishBodyOf(mix);
  if (!finishing.ok) {
    return act(commandId, { do: 'refused', code: null, message: 'Something is missing.', faults: finishing.faults });
  }
  underWay.add(commandId);
  told();
  try {
    // When spraying began and ended comes first, in its order, and closes the benches even where the record is refused.
    await tellSpraying(commandId);
    const answer = await fetch('/api/v1/mix/finish', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', ...sureHeaders(mix.sure) },
      body: JSON.stringify(finishing.body),
    });
    await answered(commandId, answer);
  } catch {
    // No network: it stays to be sent.
  } finally {
    underWay.delete(commandId);
    told();
  }
}

async function answered(commandId: string, answer: Response): Promise<void> {
  if (answer.ok) {
    const { application } = await answer.json();
    return act(commandId, { do: 'sent', application });
  }
  // Nobody is signed in any more: it waits until somebody is.
  if (answer.status >= SERVER_FAULT || answer.status === TOO_MANY || answer.status === SIGNED_OUT) return;
  const { code, message, faults = [], confirm }: Problem = await answer.json();
  // The answer to the first sending was lost, and then something was changed: what was sent first is on record.
  if (code === 'same-key-other-body') return act(commandId, { do: 'sent', application: null });
  act(commandId, { do: 'refused', code, message, faults, confirm });
}

const SERVER_FAULT = 500;
const TOO_MANY = 429;
const SIGNED_OUT = 401;
