'use client';

import type { MixProgress } from '@/shared/mix/mix-progress';

type Stops = MixProgress['asked'];
type Asked = {
  shop: string;
  recipe: string;
  benches: readonly string[];
  sprayed: string | null;
  spraying: string | null;
};

/** Nobody with a full sprayer waits longer for rules. */
const ANSWER_MS = 2_500;

/**
 * What says stop to a mix this minute, by the shop.
 *
 * Gives   null where the shop does not answer in time: then what is known already has to do
 */
export async function judgeMix(asked: Asked): Promise<Stops | null> {
  if (asked.benches.length === 0) return null;
  try {
    const answer = await fetch('/api/v1/mix/judge', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(asked),
      signal: AbortSignal.timeout(ANSWER_MS),
    });
    return answer.ok ? (await answer.json()).stops : null;
  } catch {
    return null;
  }
}
