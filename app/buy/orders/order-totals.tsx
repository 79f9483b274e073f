'use client';

import type { OrderFormScreen } from '@/lib/views/orders';
import type { OrderTyped } from '@/shared/forms/order';
import { type OrderSums, type OrderTerms, orderSums } from '@/shared/measure/order-sums';
import { priceOfOne } from '@/shared/measure/price-break';
import { showMoney, showMoneyIfKnown } from '@/shared/measure/show';
import type { Micros } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { arrivalOf } from '@/shared/time/working-days';
import styles from './order-form.module.css';

type TotalsProps = {
  screen: OrderFormScreen;
  typed: OrderTyped;
  /** Whether all that is typed can be read. As long as it cannot, nobody knows what it comes to. */
  isReadable: boolean;
};

/** What is typed comes to, beside what the supplier asks of an order, and when it should come. */
export function OrderTotals({ screen, typed, isReadable }: TotalsProps) {
  const { offers, supplier, ways, today } = screen;
  const lines = typed.lines.flatMap(({ offer: id, count, price }) => {
    const offer = offers.find((one) => one.id === id);
    return offer ? [{ offer, count, price: price ?? priceOfOne(offer, count) }] : [];
  });
  const sums = orderSums(lines, supplier, typed.freight);
  const expected = typed.expectedOn ?? dayOf(screen, typed.placedOn ?? today, lines);
  const money = (cost: Micros | null) => showMoneyIfKnown(isReadable ? cost : null, ways.currency);
  return (
    <output className={styles.totals} aria-live="polite">
      <span>
        Goods <b>{money(sums.goods)}</b>
      </span>
      <span>
        freight <b>{money(sums.freight)}</b>
      </span>
      <span>
        in all <b>{money(sums.total)}</b>
      </span>
      <span>expected {expected === null ? 'on a day not known' : showDay(expected, today)}</span>
      {isReadable && <Thresholds sums={sums} terms={supplier} currency={ways.currency} />}
    </output>
  );
}

/** As the longest delivery time has it; null when nothing is ordered yet, or one is not known. */
function dayOf(
  { supplier }: OrderFormScreen,
  placedOn: Day,
  lines: { offer: { leadDays: number | null } }[],
): Day | null {
  const leads = lines.map(({ offer }) => offer.leadDays);
  if (leads.length === 0 || leads.includes(null)) return null;
  const working = { weekdays: new Set(supplier.workingDays), closed: new Set(supplier.closed) };
  return arrivalOf(placedOn, Math.max(...leads.map((lead) => lead ?? 0)), working);
}

/** What is missing to the smallest order that they take, and to free freight, in words. */
function Thresholds({ sums, terms, currency }: { sums: OrderSums; terms: OrderTerms; currency: string }) {
  const { toMinimum, toFreeFreight } = sums;
  const { minimumOrder, freeFreightOver } = terms;
  return (
    <>
      {toMinimum !== null && toMinimum > 0 && (
        <span className="grave">
          ▲ {showMoney(toMinimum, currency)} short of the smallest order they take,{' '}
          {showMoneyIfKnown(minimumOrder, currency)}
        </span>
      )}
      {toFreeFreight !== null && toFreeFreight > 0 && (
        <span className="soft">
          {showMoney(toFreeFreight, currency)} more for free freight, from {showMoneyIfKnown(freeFreightOver, currency)}{' '}
          on
        </span>
      )}
    </>
  );
}
