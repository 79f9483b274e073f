import type { Spraying } from '../ahead/plan';
import type { Bench, Product } from '../shop';
import type { Flag, RuleName, Severity } from './flag';
import type { ToEnter } from './to-enter';
import type { Unflagged } from './unflagged';

/** What a flag is about, beside the spraying. */
type About = { rule: RuleName; severity: Severity; benches: readonly Bench[]; product: Product | null };

/**
 * A flag about one planned spraying, on its date.
 *
 * Takes   the message as a function: a year's plan raises thousands of flags and a page shows a few, so a message is
 *         written when somebody reads it, each time the same; and what is to be entered, likewise
 */
export const flagSpraying = (
  spraying: Spraying,
  about: About,
  message: () => string,
  toEnter: () => readonly ToEnter[] = () => [],
): Flag => ({
  severity: about.severity,
  rule: about.rule,
  on: spraying.date,
  program: spraying.program.id,
  benches: [...new Set(about.benches.map(({ id }) => id))],
  product: about.product?.id ?? null,
  get message() {
    return message();
  },
  get toEnter() {
    return toEnter();
  },
});

/** A flag about what stands on the shelf today. */
export const flagShelf = (
  plan: Unflagged,
  about: Omit<About, 'benches'> & { product: Product },
  message: () => string,
): Flag => flagBenches(plan, { ...about, benches: [] }, message);

/** A flag about how benches stand today, whatever is planned. */
export const flagBenches = ({ today }: Unflagged, about: About, message: () => string): Flag => ({
  severity: about.severity,
  rule: about.rule,
  on: today,
  program: null,
  benches: [...new Set(about.benches.map(({ id }) => id))],
  product: about.product?.id ?? null,
  get message() {
    return message();
  },
});
