import type { Ramp, RampPoint } from '@/lib/views/stock-ramp';
import { path } from '@/shared/measure/pixels';
import styles from './buy.module.css';

const [WIDE, HIGH, EDGE] = [132, 30, 2];

/**
 * The run-out of one product, small: a step for each spraying, a line between containers, hatched what will die, the days
 * that an order is on its way as a band, a line at the order-by day; at the edge and broken where that day is past.
 */
export function RampSpark({ ramp: { points, containers, orderBy, neededOn } }: { ramp: Ramp }) {
  const [first, last] = [points[0]?.number ?? 0, points.at(-1)?.number ?? 1];
  const most = Math.max(1, ...points.map(({ left }) => total(left)));
  const across = (day: number) =>
    EDGE + ((Math.max(first, day) - first) / Math.max(1, last - first)) * (WIDE - 2 * EDGE);
  const down = (amount: number) => HIGH - EDGE - (amount / most) * (HIGH - 2 * EDGE);
  const line = (amountOf: (point: RampPoint) => number) => {
    const steps = points.slice(1).map((point) => path`H${across(point.number)}V${down(amountOf(point))}`);
    return path`M${across(first)} ${down(points[0] ? amountOf(points[0]) : 0)}` + steps.join('');
  };
  const area = (amountOf: (point: RampPoint) => number) => line(amountOf) + path`V${down(0)}H${across(first)}Z`;
  return (
    <svg className={styles.spark} width={WIDE} height={HIGH} viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
      {orderBy !== null && neededOn !== null && neededOn >= first && (
        <path className={styles.lead} d={path`M${across(orderBy)} 0H${across(neededOn)}V${HIGH}H${across(orderBy)}Z`} />
      )}
      <path className={styles.left} d={area(({ left }) => total(left))} />
      {containers.slice(1).map(({ key }, place) => (
        <path key={key} className={styles.between} d={line(({ left }) => total(left.slice(0, place + 1)))} />
      ))}
      <path className={styles.doomed} d={area(({ doomed }) => total(doomed))} />
      {orderBy !== null && (
        <path className={orderBy < first ? styles.past : styles.by} d={path`M${across(orderBy)} 0V${HIGH}`} />
      )}
    </svg>
  );
}

const total = (amounts: readonly number[]): number => amounts.reduce((sum, amount) => sum + amount, 0);
