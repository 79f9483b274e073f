'use client';

import dynamic from 'next/dynamic';
import type { CurveChartProps } from './curve-chart';
import styles from './equivalents.module.css';

const Empty = () => <div className={styles.chart} aria-hidden="true" />;

/** The chart, whose script is loaded once everything else of the page is there. Its place is kept, so that nothing moves. */
export const CurveLater = dynamic<CurveChartProps>(
  () => import('./curve-chart').then(({ CurveChart }) => CurveChart).catch(() => Empty),
  { ssr: false, loading: Empty },
);
