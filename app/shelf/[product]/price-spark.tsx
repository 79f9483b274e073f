import type { PriceThen } from '@/lib/views/offers-shown';
import { type Day, dayNumber } from '@/shared/time/day';
import styles from './product.module.css';

const [WIDE, HIGH, EDGE] = [56, 18, 2];

/** A small line that steps at each new price, to today. Whoever cannot see it reads the words beside it. */
export function PriceSpark({ prices, today }: { prices: PriceThen[]; today: Day }) {
  const noted = prices.flatMap(({ since, price }) => (since === null ? [] : [{ at: dayNumber(since), price }]));
  const first = noted[0];
  if (!first || noted.length < 2) return null;
  const all = noted.map(({ price }) => price);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const span = Math.max(1, dayNumber(today) - first.at);
  const across = (at: number) => EDGE + ((at - first.at) / span) * (WIDE - 2 * EDGE);
  const down = (price: number) => HIGH - EDGE - ((price - least) / (most - least || 1)) * (HIGH - 2 * EDGE);
  const steps = noted.slice(1).map(({ at, price }) => `H${across(at)}V${down(price)}`);
  return (
    <svg className={styles.spark} width={WIDE} height={HIGH} viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      <path d={`M${EDGE} ${down(first.price)}${steps.join('')}H${WIDE - EDGE}`} />
    </svg>
  );
}
