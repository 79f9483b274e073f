import type { Day } from '@/shared/time/day';
import type { Plan, ProductAhead, Spraying } from '../ahead/plan';
import { type Shown, text } from './shown';

export const UNKNOWN_AMOUNT = 'How much some sprayings take of it is not known.';

/** In how many lines of some sprayings nobody knows how much of a product is taken. */
export function unknownIn(
  { sprayings }: Pick<Plan, 'sprayings'>,
  { product, unknownSince }: ProductAhead,
  isMeant: (spraying: Spraying) => boolean,
): number {
  if (unknownSince === null) return 0;
  let unknown = 0;
  for (const spraying of sprayings) {
    if (!isMeant(spraying)) continue;
    for (const { amount, ingredient } of spraying.lines) {
      if (amount === null && ingredient.product === product) unknown += 1;
    }
  }
  return unknown;
}

/** An amount that unknown sprayings would make smaller: it is at most so much. Nothing stays nothing. */
export function atMost(value: Shown, unknown: number): Shown {
  if (unknown === 0) return value;
  if (value.kind === 'money' && value.micros !== 0) return { ...value, unknown, atMost: true };
  return value.kind === 'stock' && value.amount !== 0 ? { ...value, unknown, atMost: true } : value;
}

const notWithin = (plan: Pick<Plan, 'weeks'>): Shown => text(`not within ${plan.weeks} weeks`);

/**
 * The day a product runs out, or words for not running out. Where an amount is unknown before, it may run out sooner; and
 * where nothing that is known runs out, nobody can say.
 */
export function runsOutShown(
  plan: Pick<Plan, 'weeks'>,
  ahead: Pick<ProductAhead, 'runsOutOn' | 'unknownSince'>,
): Shown {
  const { runsOutOn, unknownSince } = ahead;
  if (runsOutOn === null) return unknownSince === null ? notWithin(plan) : NOBODY_KNOWS;
  return dayShown(runsOutOn, isMaybeSooner(ahead));
}

export const NOBODY_KNOWS: Shown = { kind: 'unknown', because: UNKNOWN_AMOUNT };

/** Whether a product may run out before the day that is known, because an amount before it is not. */
export const isMaybeSooner = ({ runsOutOn, unknownSince }: Pick<ProductAhead, 'runsOutOn' | 'unknownSince'>): boolean =>
  runsOutOn !== null && unknownSince !== null && unknownSince <= runsOutOn;

export const dayShown = (day: Day, isMaybe: boolean): Shown => ({
  kind: 'day',
  day,
  ...(isMaybe && { atLatest: true }),
});
