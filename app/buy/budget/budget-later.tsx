'use client';

import dynamic from 'next/dynamic';
import styles from './budget.module.css';
import type { BudgetChartProps } from './budget-chart';

const Nothing = () => null;
const Chart = dynamic<BudgetChartProps>(
  () => import('./budget-chart').then(({ BudgetChart }) => BudgetChart).catch(() => Nothing),
  { ssr: false },
);

/** The chart, whose script is loaded once everything else of the page is there. Its place is kept, so that nothing moves. */
export function BudgetLater(props: BudgetChartProps) {
  const { byMonth, rows } = props;
  return (
    <div
      className={styles.chart}
      style={byMonth ? undefined : { height: `${4 * rows.length + 4}rem` }}
      aria-hidden="true"
    >
      <Chart {...props} />
    </div>
  );
}
