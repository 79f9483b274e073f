'use client';

import {
  CartesianGrid,
  type DotItemDotProps,
  Line,
  LineChart,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import type { PriceSteps } from '@/lib/views/offer';
import { showMoney } from '@/shared/measure/show';
import { type Day, dayFromNumber } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { SLIP, TICK } from '../../../_parts/chart-look';
import styles from './offer.module.css';

export type PriceChartProps = { steps: PriceSteps; currency: string; unit: string; today: Day };

/**
 * What a pack cost through time, a step at each new price, to today; on the right, what that is for a litre, gallon,
 * kilogram or pound. The table beside it holds the same prices, so a reader that cannot see the chart skips it.
 */
export function PriceChart({
  steps: { counts, points, changes, unitsPerPack },
  currency,
  unit,
  today,
}: PriceChartProps) {
  const money = (value: number) => showMoney(value, currency);
  const day = (value: unknown) => showDayShort(dayFromNumber(Number(value)), today);
  const most = Math.max(...points.flatMap(({ prices }) => prices));
  const domain: [number, number] = [0, most === 0 ? 1 : most * 1.1];
  const [first, last] = [points[0]?.number ?? 0, points.at(-1)?.number ?? 0];
  const axis = { domain, ticks: [0, most / 2, most], tick: TICK, axisLine: false, tickLine: false, width: 62 };
  return (
    <div className={styles.chart} aria-hidden="true">
      <AxisNames unit={unit} />
      <ResponsiveContainer width="100%" height="100%">
        <LineChart data={points} margin={{ top: 8, right: 4, bottom: 0, left: 4 }} accessibilityLayer={false}>
          <CartesianGrid vertical={false} stroke="var(--line)" />
          <XAxis
            dataKey="number"
            type="number"
            domain={[first, last]}
            ticks={[first, last]}
            tickFormatter={day}
            tick={TICK}
            stroke="var(--ink)"
            interval="preserveStartEnd"
          />
          <YAxis {...axis} tickFormatter={money} />
          <YAxis
            {...axis}
            yAxisId="unit"
            orientation="right"
            tickFormatter={(value: number) => money(value * unitsPerPack)}
          />
          <Line
            yAxisId="unit"
            dataKey={() => 0}
            stroke="none"
            dot={false}
            isAnimationActive={false}
            tooltipType="none"
          />
          {counts.map((count, place) => (
            <Line
              key={count}
              dataKey={({ prices }: PriceSteps['points'][number]) => prices[place]}
              name={count === 1 ? 'a pack' : `a pack from ${count} on`}
              type="stepAfter"
              stroke="var(--ink)"
              strokeWidth={place === 0 ? 2.5 : 1.5}
              strokeDasharray={place === 0 ? undefined : '5 4'}
              dot={place === 0 ? markUpTo(changes) : false}
              isAnimationActive={false}
            />
          ))}
          <Tooltip
            formatter={(value: unknown) => `${money(Number(value))}, a ${unit} ${money(Number(value) * unitsPerPack)}`}
            labelFormatter={day}
            isAnimationActive={false}
            contentStyle={SLIP}
            itemStyle={{ color: 'var(--ink)' }}
            cursor={{ stroke: 'var(--ink)', strokeDasharray: '3 3' }}
          />
        </LineChart>
      </ResponsiveContainer>
    </div>
  );
}

const AxisNames = ({ unit }: { unit: string }) => (
  <p className={styles.axes}>
    <span>a pack</span>
    <span>a {unit}</span>
  </p>
);

/** A mark stands where a price was new; the line runs on to today without one. */
const markUpTo =
  (changes: number) =>
  ({ key, cx, cy, index }: DotItemDotProps) =>
    index < changes ? (
      <circle key={key} cx={cx} cy={cy} r={3.5} fill="var(--paper)" stroke="var(--ink)" strokeWidth={2} />
    ) : (
      <g key={key} />
    );
