import type { Plan, ProductAhead, Spraying } from '../ahead/plan';
import { eachOnce, type ToEnter, toEnterForAmount } from '../rules/to-enter';
import type { Shown } from './shown';

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

/** What somebody must enter before every amount of a product is known, each once. */
export function toEnterForProduct({ sprayings }: Pick<Plan, 'sprayings'>, ahead: ProductAhead): ToEnter[] {
  const { product, unknownSince } = ahead;
  if (unknownSince === null) return [];
  return eachOnce(
    sprayings.flatMap((spraying) =>
      spraying.lines.flatMap((line) => (line.ingredient.product === product ? toEnterForAmount(spraying, line) : [])),
    ),
  );
}

/** An amount that unknown sprayings would make smaller: it is at most so much. Nothing stays nothing. */
export function atMost(value: Shown, unknown: number): Shown {
  if (unknown === 0) return value;
  if (value.kind === 'money' && value.micros !== 0) return { ...value, unknown, atMost: true };
  return value.kind === 'stock' && value.amount !== 0 ? { ...value, unknown, atMost: true } : value;
}
