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
  const waste = wasteMore === null ? 'what is wasted is not known' : words('waste', wasteMore);
  return [`Over the ${WEEKS_AHEAD} weeks ahead: ${cost}; ${waste}.`];
}

/** What runs out on another day, in words. */
export function stockWords({ runsOut }: Pick<PlanDifferences, 'runsOut'>): string[] {
  if (runsOut.length === 0) return ['Nothing runs out on another day.'];
  return runsOut.map(({ product, from, to, isKnown }) => {
    if (to === null && !isKnown) return `Nobody can say then when ${product.name} runs out.`;
    if (to === null) return `${product.name} no longer runs out.`;
    return `${product.name} runs out ${showDay(to)}${from === null ? '' : ` instead of ${showDay(from)}`}.`;
  });
}

/** How many flags would be gone, in words; nothing when none is. */
export const clearedWords = (cleared: number): string[] =>
  cleared > 0 ? [`${cleared} of today’s flags would be gone or become another.`] : [];
