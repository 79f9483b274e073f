import type { IngredientLine, ProductAhead, Spraying } from '../ahead/plan';
import type { Flag } from './flag';
import { counted } from './in-words';
import { flagSpraying } from './raise';
import { eachOnce, type ToEnter, toEnterForAmount } from './to-enter';
import type { Unflagged } from './unflagged';

/**
 * A product of which nobody knows how much the sprayings take.
 *
 * Looks at  the amount of every line
 * Fires     when an amount is unknown, once for a product, at the first such spraying
 * Severity  warn
 * Cleared   by entering what is missing: the mL per plant, the area of a bench, or the weight, density or strength that
 *           turns the dose into an amount
 */
export function unknownNeed(plan: Unflagged): Flag[] {
  return plan.products.flatMap((ahead) => {
    const unknown = sprayingsUnknown(plan, ahead);
    const [first] = unknown;
    if (!first) return [];
    const { benches } = first.spraying.program;
    const about = { rule: 'unknown-need', severity: 'warn', benches, product: ahead.product } as const;
    const toEnter = () => toEnterIn(unknown);
    return [flagSpraying(first.spraying, about, () => messageFor(ahead, unknown), toEnter)];
  });
}

type Unknown = { spraying: Spraying; lines: IngredientLine[] };

/** The sprayings that take an unknown amount of a product, with those lines of each. */
function sprayingsUnknown({ sprayings }: Unflagged, { product, unknownSince }: ProductAhead): Unknown[] {
  if (unknownSince === null) return [];
  return sprayings.flatMap((spraying) => {
    const lines = spraying.lines.filter(({ amount, ingredient }) => amount === null && ingredient.product === product);
    return lines.length > 0 ? [{ spraying, lines }] : [];
  });
}

/** What is to be entered before every amount of a product is known, each once. */
const toEnterIn = (unknown: readonly Unknown[]): ToEnter[] =>
  eachOnce(unknown.flatMap(({ spraying, lines }) => lines.flatMap((line) => toEnterForAmount(spraying, line))));

function messageFor({ product, runsOutOn }: ProductAhead, unknown: readonly Unknown[]): string {
  const later = unknown.length - 1;
  const times = later === 0 ? '' : `, nor what ${counted(later, 'later one')} ${later === 1 ? 'takes' : 'take'}`;
  const so =
    runsOutOn === null
      ? 'So nobody can say when it runs out, and it cannot be planned what to buy of it.'
      : 'So it may run out sooner than is said, and it cannot be planned what to buy of it.';
  const enter = toEnterIn(unknown).map(({ words }) => words);
  return [`How much ${product.name} this takes is not known${times}.`, so, ...enter].join(' ');
}
