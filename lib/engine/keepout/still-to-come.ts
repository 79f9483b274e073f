import type { Instant } from '@/shared/time/instant';
import type { Application, Shop } from '../shop';
import { sprayedIn } from './counting';
import type { BenchState } from './keep-out';
import { recordsToCome } from './record-index';

/** Who may stand at a bench, and the records of it that begin after now. */
export type BenchWithToCome = BenchState & { toCome: Application[] };

/**
 * Benches with a record that begins after now. What is on record has begun, so either the clock is behind or the record was
 * written down wrong; the bench may have been sprayed this minute. So people keep out, and nobody knows until when, until
 * that moment comes or the record is put right.
 *
 * Takes   the states as `keepOut` gives them, which counts only what has begun
 */
export function withToCome(states: readonly BenchState[], shop: Shop, now: Instant): BenchWithToCome[] {
  const toCome = recordsToCome(sprayedIn(shop), now);
  return states.map((state) => {
    const its = toCome.filter(({ benches }) => benches.length === 0 || benches.some(({ id }) => id === state.bench.id));
    if (its.length === 0) return { ...state, toCome: its };
    const because = [...new Set([...(state.state === 'unknown' ? state.because : []), ...its])];
    return { ...state, state: 'unknown', until: null, because, toCome: its };
  });
}
