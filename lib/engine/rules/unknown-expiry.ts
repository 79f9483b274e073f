import { lastUsableDay } from '../ledger/last-usable-day';
import type { Flag } from './flag';
import { leftIn, lotInWords, lotsWhere } from './lots';
import { flagShelf } from './raise';
import type { Unflagged } from './unflagged';

/**
 * A lot that nobody can say the last usable day of.
 *
 * Looks at  every container with something in it
 * Fires     when it has neither a printed expiry nor a life on the shelf, nor, once opened, an opened life; once for a lot
 * Severity  note
 * Cleared   by entering the expiry that is printed on it, or how long the product keeps
 */
export function unknownExpiry(plan: Unflagged): Flag[] {
  return lotsWhere(plan, (container) => lastUsableDay(container) === null).map((lot) => {
    const { product } = lot.first;
    const about = { rule: 'unknown-expiry', severity: 'note', product } as const;
    return flagShelf(
      plan,
      about,
      () =>
        `${lotInWords(plan, lot)}: ${leftIn(plan, lot)} is left, and nothing says how long it keeps. Enter the expiry printed on it, or how many days ${product.name} keeps.`,
    );
  });
}
