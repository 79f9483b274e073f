import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { compare, type Exact, ZERO } from '@/shared/quantity/exact';
import type { Clock } from '../clock';
import { shopOf } from '../data/snapshot';
import { askedMix } from '../engine/mix/asked-mix';
import { unpassed } from '../engine/mix/mix-flags';
import { apartFrom } from '../engine/record/as-told';

/** What is about to be sprayed: a recipe on benches, and which spraying it is where the shop was told of it already. */
export type Judged = {
  shopId: string;
  recipe: string;
  benches: string[];
  sprayed: Exact | null;
  spraying: string | null;
};

/**
 * The rules that say stop to a mix that is sprayed this minute on these benches.
 *
 * Refuses  'not-found' for a recipe or a bench that is gone; 'faults' for what cannot be mixed
 */
export async function mixJudged(asked: Judged, clock: Clock): Promise<Outcome<{ stops: Stop[] }>> {
  const { beside: shop } = apartFrom(await shopOf(asked.shopId), asked.spraying ?? '');
  const { recipe, benches, sprayed } = asked;
  const what =
    sprayed && compare(sprayed, ZERO) > 0
      ? ({ kind: 'volume', volume: { text: '', value: sprayed }, benches, area: null } as const)
      : ({ kind: 'benches', benches } as const);
  const mix = askedMix(shop, clock.now(), { recipe, planned: null, what, sprayer: null }, '', true);
  if (!mix.ok) return refuse({ code: 'faults', faults: [{ path: 'benches', message: mix.message }] });
  const others = mix.value.flags.filter(({ rule }) => rule !== 'short');
  return accept({
    stops: [...unpassed(others, [])].map(([rule, stops]) => ({ rule, messages: stops.map(({ message }) => message) })),
  });
}

type Stop = { rule: string; messages: string[] };
