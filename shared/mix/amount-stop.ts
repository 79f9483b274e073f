import { stockText } from '../measure/read-stock';
import { showRough } from '../measure/show';
import { stock } from '../quantity/amounts';
import { bottleKey, productIn } from './mix-plan';
import type { MixProgress, Part } from './mix-progress';
import { plannedPour } from './mix-screens';
import { amountOf } from './poured-so-far';

/** What is typed may differ from the sheet by so much before somebody is asked: a hand that trembles is no other mix. */
const MOST_TIMES = 1.5;

/** The rules under which a typed amount says stop: the label's own, or that it is far from the sheet. */
export const AMOUNT_RULES = {
  label: 'dose-outside-label',
  sheet: 'amount-far-from-sheet',
  expired: 'lot-expired',
} as const;

/**
 * What says stop to the amount of one pour, before it is in the tank: more than the label allows in a fill, or far from
 * what the sheet has.
 *
 * Takes    the parts of the pour, as they are typed
 * Gives    null where nothing does, where the sheet has no amount, and while something cannot be read
 */
export function amountStop(
  progress: MixProgress,
  product: string,
  parts: readonly Part[],
): MixProgress['asked'][number] | null {
  const planned = plannedPour(progress, product);
  const its = productIn(progress.plan, product);
  let total = 0;
  for (const part of parts) {
    const amount = amountOf(part, its);
    if (!amount.ok) return null;
    total += amount.value;
  }
  if (!planned || total === 0) return null;
  const { perFill, most } = planned;
  const text = (amount: number) => stockText(stock(Math.round(amount)), its.form);
  const times = perFill ? ` That is ${showRough(total / perFill)} times what the sheet has.` : '';
  if (most !== null && total > Math.max(most, perFill ?? 0)) {
    return {
      rule: AMOUNT_RULES.label,
      messages: [`${its.name}: the label allows ${text(most)} in a fill at most, and ${text(total)} is typed.${times}`],
    };
  }
  const isFar = perFill !== null && perFill > 0 && (total > perFill * MOST_TIMES || total * MOST_TIMES < perFill);
  if (!isFar) return null;
  return {
    rule: AMOUNT_RULES.sheet,
    messages: [`${its.name}: the sheet has ${text(perFill)} for a fill, and ${text(total)} is typed.${times}`],
  };
}

/** What says stop to the bottles of one pour: one is past its last day. Null where none is. */
export function expiredStop(
  { plan }: MixProgress,
  product: string,
  parts: readonly Part[],
): MixProgress['asked'][number] | null {
  const { name, bottles } = productIn(plan, product);
  const messages = bottles.flatMap((bottle) => {
    const isTaken = parts.some((part) => part.bottle && bottleKey(part.bottle) === bottleKey(bottle));
    return isTaken && bottle.expired !== null
      ? [`${name}: bottle ${bottle.code} is past its last day, ${bottle.expired}. Take another.`]
      : [];
  });
  return messages.length > 0 ? { rule: AMOUNT_RULES.expired, messages } : null;
}
