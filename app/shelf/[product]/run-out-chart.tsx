'use client';

import {
  Area,
  AreaChart,
  CartesianGrid,
  ReferenceArea,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import type { Ramp, RampPoint } from '@/lib/views/stock-ramp';
import { showStock } from '@/shared/measure/show';
import { stock } from '@/shared/quantity/amounts';
import { type Day, dayFromNumber } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { SLIP, TICK } from '../../_parts/chart-look';
import styles from './run-out-chart.module.css';

export type RunOutChartProps = { ramp: Ramp; units: 'us' | 'metric'; today: Day };

/**
 * Stock through the weeks ahead as a ramp, stacked by container, stepping down at each spraying; hatched what will die in
 * a container before anything uses it. The table beside it holds the same figures, so a reader that cannot see the chart
 * skips it.
 */
export function RunOutChart({ ramp, units, today }: RunOutChartProps) {
  const amount = (value: unknown) => showStock(stock(Number(value)), ramp.form, units);
  const day = (value: unknown) => showDayShort(dayFromNumber(Number(value)), today);
  const [first, last] = [ramp.points[0]?.number ?? 0, ramp.points.at(-1)?.number ?? 0];
  return (
    <div className={styles.chart} aria-hidden="true">
      <ResponsiveContainer width="100%" height="100%">
        <AreaChart data={ramp.points} margin={{ top: 18, right: 8, bottom: 0, left: 8 }} accessibilityLayer={false}>
          <CartesianGrid vertical={false} stroke="var(--line)" />
          <XAxis
            dataKey="number"
            type="number"
            domain={[first, last]}
            ticks={[0, 4, 8, 12, 16, 20, 24].map((week) => first + 7 * week)}
            tickFormatter={day}
            tick={TICK}
            stroke="var(--ink)"
            interval="preserveStartEnd"
          />
          <YAxis tickFormatter={amount} tick={TICK} width={68} stroke="var(--edge)" axisLine={false} tickLine={false} />
          {containerAreas(ramp)}
          {ramp.orderBy !== null && ramp.neededOn !== null && ramp.neededOn >= first && (
            <ReferenceArea x1={Math.max(ramp.orderBy, first)} x2={ramp.neededOn} fill="var(--sun)" fillOpacity={0.55} />
          )}
          {ramp.orderBy !== null && (
            <ReferenceLine
              x={Math.max(ramp.orderBy, first)}
              stroke="var(--clay)"
              strokeWidth={2}
              strokeDasharray={ramp.orderBy < first ? '2 5' : undefined}
              label={orderByWords(
                ramp.orderBy < first ? day(ramp.orderBy) : null,
                ramp.orderBy - first < (last - first) / 5,
              )}
            />
          )}
          {ramp.runsOut !== null && (
            <ReferenceLine
              x={ramp.runsOut}
              stroke="var(--oxide)"
              strokeWidth={2}
              label={said('runs out', 'var(--oxide)', 'insideTopLeft')}
            />
          )}
          <Tooltip
            formatter={amount}
            labelFormatter={day}
            isAnimationActive={false}
            contentStyle={SLIP}
            itemStyle={{ color: 'var(--ink)' }}
            cursor={{ stroke: 'var(--ink)', strokeDasharray: '3 3' }}
          />
        </AreaChart>
      </ResponsiveContainer>
    </div>
  );
}

/** What each container holds, one on the other: first what will be used of it, then what will not. */
const containerAreas = ({ containers, liquid }: Ramp) =>
  containers.flatMap(({ key, name, isDoomed }, place) => {
    const named = `${name}, lot ${key.split(' ')[0]}`;
    const step = { type: 'stepAfter', stackId: 'shelf', stroke: 'var(--ink)', isAnimationActive: false } as const;
    const used = (
      <Area
        {...step}
        key={key}
        dataKey={({ used }: RampPoint) => used[place] ?? 0}
        name={named}
        strokeWidth={1.5}
        fill={`var(--liquid-${liquid})`}
        fillOpacity={place % 2 === 0 ? 1 : 0.55}
      />
    );
    if (!isDoomed) return [used];
    const doomed = (
      <Area
        {...step}
        key={`${key} doomed`}
        dataKey={({ doomed }: RampPoint) => doomed[place] ?? 0}
        name={`${named}, to be wasted`}
        strokeWidth={1}
        fill="url(#hatch-waste)"
        fillOpacity={1}
      />
    );
    return [used, doomed];
  });

/** A day that is past stands at the edge, and says so. Near the edge there is room only on the inside, below the other word. */
function orderByWords(past: string | null, isNearEdge: boolean) {
  const words = past === null ? 'order by' : `◂ order by ${past}`;
  if (!isNearEdge) return said(words, 'var(--clay)', 'insideTopRight');
  return { ...said(words, 'var(--clay)', 'insideTopLeft'), dy: 18 };
}

/** A word beside a line, on a ground of its own; the two lines keep theirs on opposite sides, since they are often close. */
const said = (value: string, fill: string, position: 'insideTopLeft' | 'insideTopRight') => ({
  value,
  fill,
  position,
  fontSize: 13,
  fontWeight: 650,
  stroke: 'var(--paper)',
  strokeWidth: 4,
  paintOrder: 'stroke',
});
