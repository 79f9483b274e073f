import { showMoney } from '@/shared/measure/show';
import { showDay } from '@/shared/time/show-day';
import type { More, PlanDifferences } from '../engine/ahead/plan-differences';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import type { Shop } from '../engine/shop';

/** What another plan costs more or less, in words. */
export function costWords(
  { currency }: Pick<Shop, 'currency'>,
  { costMore, wasteMore }: Pick<PlanDifferences, 'costMore' | 'wasteMore'>,
): string[] {
  const words = (what: string, { micros, isMore }: More) =>
    micros === 0 ? `${what} as before` : `${what} ${showMoney(micros, currency)} ${isMore ? 'more' : 'less'}`;
  const cost = costMore === null ? 'product costs something else, not known how much' : words('product', costMore);
  return [`Over the ${WEEKS_AHEAD} weeks ahead: ${cost}; ${words('waste', wasteMore)}.`];
}

/** What runs out on another day, in words. */
export function stockWords({ runsOut }: Pick<PlanDifferences, 'runsOut'>): string[] {
  if (runsOut.length === 0) return ['Nothing runs out on another day.'];
  return runsOut.map(({ product, from, to }) => {
    if (to === null) return `${product.name} no longer runs out.`;
    return `${product.name} runs out ${showDay(to)}${from === null ? '' : ` instead of ${showDay(from)}`}.`;
  });
}

/** How many flags would be gone, in words; nothing when none is. */
export const clearedWords = (cleared: number): string[] =>
  cleared > 0 ? [`${cleared} of today’s flags would be gone or become another.`] : [];
