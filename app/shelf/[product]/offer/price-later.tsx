'use client';

import dynamic from 'next/dynamic';
import styles from './offer.module.css';
import type { PriceChartProps } from './price-chart';

const Empty = () => <div className={styles.chart} aria-hidden="true" />;

/** The chart, whose script is loaded once everything else of the page is there. Its place is kept, so that nothing moves. */
export const PriceLater = dynamic<PriceChartProps>(
  () => import('./price-chart').then(({ PriceChart }) => PriceChart).catch(() => Empty),
  { ssr: false, loading: Empty },
);
