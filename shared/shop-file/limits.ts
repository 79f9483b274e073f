/*
 * How large a shop may be, so that no file that is accepted can use up the memory of whoever works it out. A chain of
 * shops stays far below: 2,000 products, 500 weekly programs and 50 benches are 52,000 sprayings in 104 weeks.
 */

const TOO_MUCH_AHEAD = 'TooMuchAhead';

/** How many things of a kind a shop file may list. */
export const MOST_LISTED = {
  suppliers: 2_000,
  products: 5_000,
  offers: 20_000,
  lots: 20_000,
  benches: 2_000,
  recipes: 5_000,
  programs: 2_000,
  applications: 50_000,
  orders: 20_000,
} as const;

/** How many sprayings may be under way. */
export const MOST_UNDER_WAY = 5_000;

/** How many ingredients one recipe may have. */
export const MOST_INGREDIENTS = 200;

/** How many fills of the sprayer one spraying may take. */
export const MOST_FILLS = 1_000;

/** The longest horizon that a plan may have, in days. */
export const LONGEST_HORIZON = 7 * 104;

/** What all programs together may come to in the longest horizon. */
export const MOST_AHEAD = {
  /** Sprayings. */
  sprayings: 100_000,
  /** Sprayings × the benches of each. */
  benches: 400_000,
  /** Sprayings × the ingredients of each. */
  ingredients: 800_000,
  /** Fills of the sprayer. */
  fills: 1_000_000,
} as const;

/** What a program comes to in the longest horizon. */
export type Load = Record<keyof typeof MOST_AHEAD, number>;

/** The sentence for programs that come to too much; null when they do not. */
export function tooMuchAhead(load: Load): string | null {
  for (const [of, most] of Object.entries(MOST_AHEAD) as [keyof Load, number][]) {
    if (load[of] > most) return `${SAID[of](grouped(load[of]), grouped(most))} Spray less often, or in fewer programs.`;
  }
  return null;
}

const SAID: Record<keyof Load, (found: string, most: string) => string> = {
  sprayings: (found, most) =>
    `All programs together come to ${found} sprayings in 104 weeks; at most ${most} can be planned.`,
  benches: (found, most) =>
    `All programs together spray benches ${found} times in 104 weeks; at most ${most} times can be planned.`,
  ingredients: (found, most) =>
    `All programs together measure out products ${found} times in 104 weeks; at most ${most} times can be planned.`,
  fills: (found, most) =>
    `All programs together take ${found} fills of the sprayer in 104 weeks; at most ${most} can be planned.`,
};

/** A whole number with a comma between thousands. */
export const grouped = (number: number): string => String(number).replace(/\B(?=(\d{3})+$)/g, ',');

/** Thrown where the programs of a shop come to too much to be worked out. Its message is the sentence for it. */
export class TooMuchAhead extends RangeError {
  override name = TOO_MUCH_AHEAD;
}

/** Known by its name, because pages and routes are bundles of their own. */
export const isTooMuchAhead = (thrown: unknown): thrown is RangeError =>
  thrown instanceof RangeError && thrown.name === TOO_MUCH_AHEAD;
