import type { CameSeen, OrderScreen } from '@/lib/views/orders';
import { showMoney } from '@/shared/measure/show';
import { showDay } from '@/shared/time/show-day';
import styles from './orders.module.css';
import { TakePriceForm } from './take-price-form';

/** What came of an order by day, what it cost beside what was quoted, and the new price of the offer where there is one. */
export function CameList({ screen }: { screen: OrderScreen }) {
  const { came, ways, today, shopId, order } = screen;
  return (
    <ul className={styles.orders}>
      {came.map((one) => (
        <li key={`${one.cameOn} ${one.line}`}>
          <p>
            <b>{showDay(one.cameOn, today)}</b>: {one.packs} × {one.product}, {one.pack}
          </p>
          <p className={one.dearerBy !== null && one.dearerBy > 0 ? 'grave' : 'soft'}>
            {paidWords(one, (micros) => showMoney(micros, ways.currency))}
          </p>
          {one.newFrom !== undefined && one.paidEach !== null && (
            <TakePriceForm
              {...{ shop: shopId, formId: one.formId, order: order.id }}
              {...{ offer: one.offer, line: one.line, cameOn: one.cameOn }}
              label={priceWords(one, showMoney(one.paidEach, ways.currency), showDay(one.cameOn, today))}
            />
          )}
        </li>
      ))}
    </ul>
  );
}

function paidWords({ paidEach, quoted, dearerBy }: CameSeen, money: (micros: number) => string): string {
  if (paidEach === null) return 'What was paid was not entered.';
  const paid = `${money(paidEach)} a pack`;
  if (quoted === null || dearerBy === null) return `${paid}; nobody noted what it was to cost.`;
  if (dearerBy === 0) return `${paid}, as it was quoted.`;
  const by = money(dearerBy < 0 ? -dearerBy : dearerBy);
  return dearerBy > 0
    ? `▲ ${paid}, ${by} dearer than the ${money(quoted)} on the order.`
    : `▼ ${paid}, ${by} cheaper than the ${money(quoted)} on the order.`;
}

const priceWords = ({ newFrom }: CameSeen, price: string, day: string): string =>
  `Let ${price} be its price${typeof newFrom === 'number' ? ` from ${newFrom} packs on` : ''} since ${day}`;
