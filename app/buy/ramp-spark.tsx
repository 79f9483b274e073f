import type { Ramp } from '@/lib/views/stock-ramp';
import styles from './buy.module.css';

const [WIDE, HIGH, EDGE] = [132, 30, 2];

/** The run-out of one product, small: a step for each spraying, hatched what will die, a line at the order-by day. */
export function RampSpark({ ramp: { points, orderBy } }: { ramp: Ramp }) {
  const [first, last] = [points[0]?.number ?? 0, points.at(-1)?.number ?? 1];
  const most = Math.max(1, ...points.map(({ left }) => total(left)));
  const across = (day: number) => EDGE + ((day - first) / Math.max(1, last - first)) * (WIDE - 2 * EDGE);
  const down = (amount: number) => HIGH - EDGE - (amount / most) * (HIGH - 2 * EDGE);
  const area = (amounts: number[]) => {
    const steps = points.slice(1).map(({ number }, at) => `H${across(number)}V${down(amounts[at + 1] ?? 0)}`);
    return `M${across(first)} ${down(amounts[0] ?? 0)}${steps.join('')}V${down(0)}H${across(first)}Z`;
  };
  return (
    <svg className={styles.spark} width={WIDE} height={HIGH} viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      <path className={styles.left} d={area(points.map(({ left }) => total(left)))} />
      <path className={styles.doomed} d={area(points.map(({ doomed }) => total(doomed)))} />
      {orderBy !== null && orderBy >= first && <path className={styles.by} d={`M${across(orderBy)} 0V${HIGH}`} />}
    </svg>
  );
}

const total = (amounts: readonly number[]): number => amounts.reduce((sum, amount) => sum + amount, 0);
