'use client';

import { tellingText, untold } from '@/shared/mix/spraying-told';
import { act, keptMix, told } from './kept-mixes';
import { freshId } from './use-command-id';

/** Mixes of which the shop is being told from this tab. */
const underWay = new Set<string>();

/** Whether the shop is being told of a mix, and has not answered yet. */
export const isBeingTold = (commandId: string): boolean => underWay.has(commandId);

/**
 * Tell the shop what it does not know yet of a mix that is being sprayed, until it knows all of it. Without a network it
 * stays to be told. What was told is told once: a telling that is lost on its way is told again.
 */
export async function tellSpraying(commandId: string): Promise<void> {
  if (underWay.has(commandId)) return;
  underWay.add(commandId);
  told();
  try {
    // What changes while the shop is being told is told after it, in its turn.
    while (await tellOnce(commandId));
  } finally {
    underWay.delete(commandId);
    told();
  }
}

/** Whether the shop has taken something in that it did not know. */
async function tellOnce(commandId: string): Promise<boolean> {
  const mix = keptMix(commandId);
  const telling = mix && untold(mix);
  if (!telling) return false;
  try {
    const answer = await fetch('/api/v1/mix/spraying', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ ...telling, commandId: freshId() }),
      signal: AbortSignal.timeout(ANSWER_MS),
    });
    if (!answer.ok) return false;
    act(commandId, { do: 'told', what: tellingText(telling) });
    return true;
  } catch {
    // No network: it stays to be told.
    return false;
  }
}

const ANSWER_MS = 20_000;
