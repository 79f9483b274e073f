'use client';

import dynamic from 'next/dynamic';
import type { RunOutChartProps } from './run-out-chart';
import styles from './run-out-chart.module.css';

const Empty = () => <div className={styles.chart} aria-hidden="true" />;

/** The chart, whose script is loaded once everything else of the page is there. Its place is kept, so that nothing moves. */
export const RunOutLater = dynamic<RunOutChartProps>(
  () => import('./run-out-chart').then(({ RunOutChart }) => RunOutChart).catch(() => Empty),
  { ssr: false, loading: Empty },
);
