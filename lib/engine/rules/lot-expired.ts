import type { Day } from '@/shared/time/day';
import { lastUsableDay } from '../ledger/last-usable-day';
import type { Flag } from './flag';
import { dayNear } from './in-words';
import { leftIn, lotInWords, lotsWhere } from './lots';
import { flagShelf } from './raise';
import type { Unflagged } from './unflagged';

/**
 * A lot that may no longer be used.
 *
 * Looks at  every container with something in it, on today
 * Fires     when its last usable day is before today; once for a lot. The last usable day itself is still a good one.
 * Severity  warn
 * Cleared   by discarding what is left and noting it, or by correcting the dates
 */
export function lotExpired(plan: Unflagged): Flag[] {
  const isPast = (day: Day | null): day is Day => day !== null && day < plan.today;
  return lotsWhere(plan, (container) => isPast(lastUsableDay(container))).map((lot) => {
    const about = { rule: 'lot-expired', severity: 'warn', product: lot.first.product } as const;
    return flagShelf(plan, about, () => {
      const days = lot.containers.map((container) => lastUsableDay(container)).filter(isPast);
      const last = days.sort()[0] ?? plan.today;
      return `${lotInWords(plan, lot)}: ${dayNear(plan, last)} was the last usable day, and ${leftIn(plan, lot)} is left. It may not be used: discard it and note that, or correct its dates.`;
    });
  });
}
