import { withoutInterval } from '../keepout/reopening';
import type { Recipe } from '../shop';
import type { Flag } from './flag';
import { heldIn } from './in-words';
import { type Finding, flagRecipes } from './recipe-findings';
import type { Unflagged } from './unflagged';

/**
 * Something in the mix has no restricted-entry interval entered.
 *
 * Looks at  the label of every product in a recipe, and of what a stock solution in it is made from
 * Fires     once for each product whose interval is unknown: unknown is never zero, so its benches never reopen
 * Severity  stop
 * Cleared   by entering the interval from the label, even if it is 0
 */
export const reiUnknown = (plan: Unflagged): Flag[] => flagRecipes(plan, 'rei-unknown', reiFindings);

/** The products of a mix without an interval. */
export function reiFindings(recipe: Pick<Recipe, 'ingredients'>): Finding[] {
  return withoutInterval(recipe).map((product) => ({
    severity: 'stop',
    product,
    message: () =>
      `${heldIn(recipe, product)}No restricted-entry interval is entered for ${product.name}, so nobody can say when these benches reopen after it: they stay closed. Enter the interval from its label; write 0 if the label says 0.`,
  }));
}
