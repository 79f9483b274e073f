'use client';

import { Bar, BarChart, CartesianGrid, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import type { BudgetRow } from '@/lib/views/budget-seen';
import { showMoney } from '@/shared/measure/show';
import { SLIP, TICK } from '../../_parts/chart-look';
import { SERIES } from './budget-legend';

export type BudgetChartProps = { rows: BudgetRow[]; currency: string; byMonth: boolean };

/**
 * Stacked columns side by side: what was spent, and what is planned, each on product, on what is wasted and on work. By
 * month they stand; otherwise they lie, so that names have room. The table under it holds the same numbers.
 */
export function BudgetChart({ rows, currency, byMonth }: BudgetChartProps) {
  const money = (value: unknown) => showMoney(Number(value), currency);
  const data = rows.map(({ name, drawn }) => ({ name, ...drawn }));
  const names = { dataKey: 'name', tick: TICK, stroke: 'var(--ink)', tickLine: false } as const;
  const costs = { tickFormatter: money, tick: TICK, axisLine: false, tickLine: false } as const;
  return (
    <ResponsiveContainer width="100%" height="100%">
      <BarChart
        data={data}
        layout={byMonth ? 'horizontal' : 'vertical'}
        margin={{ top: 8, right: 8, bottom: 0, left: 4 }}
        barGap={1}
        barCategoryGap="18%"
        accessibilityLayer={false}
      >
        <Hatches />
        <CartesianGrid vertical={!byMonth} horizontal={byMonth} stroke="var(--line)" />
        {byMonth ? (
          <XAxis {...names} tickFormatter={(name: string) => name.slice(0, 3)} interval="preserveStartEnd" />
        ) : (
          <XAxis {...costs} type="number" />
        )}
        {byMonth ? <YAxis {...costs} width={62} /> : <YAxis {...names} type="category" width={110} interval={0} />}
        {SERIES.map(({ key, name, ...drawn }) => (
          <Bar
            key={key}
            dataKey={key}
            name={name}
            stackId={stackOf(key, byMonth)}
            stroke="var(--ink)"
            isAnimationActive={false}
            {...drawn}
          />
        ))}
        <Tooltip
          formatter={money}
          isAnimationActive={false}
          contentStyle={SLIP}
          itemStyle={{ color: 'var(--ink)' }}
          cursor={{ fill: 'var(--line)', fillOpacity: 0.5 }}
        />
      </BarChart>
    </ResponsiveContainer>
  );
}

/** What was planned stands beside what was spent: by month with what is planned, since a month is past or ahead. */
const stackOf = (key: string, byMonth: boolean): string =>
  byMonth && key.startsWith('foreseen') ? 'planned' : (key.split('-')[0] ?? key);

/** What is planned is drawn as lines on paper, in the colour of what it will be; what was planned as dots. */
function Hatches() {
  return (
    <defs>
      {[
        ['foreseen-product', 'var(--leaf)', 1.8],
        ['foreseen-labour', 'var(--soft)', 0.9],
      ].map(([id, colour, radius]) => (
        <pattern key={id} id={String(id)} width="5" height="5" patternUnits="userSpaceOnUse">
          <rect width="5" height="5" fill="var(--sheet)" />
          <circle cx="2.5" cy="2.5" r={radius} fill={String(colour)} />
        </pattern>
      ))}
      {[
        ['planned-product', 'var(--leaf)', 45],
        ['planned-waste', 'var(--oxide)', -45],
        ['planned-labour', 'var(--soft)', 90],
      ].map(([id, colour, angle]) => (
        <pattern
          key={id}
          id={String(id)}
          width="5"
          height="5"
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${angle})`}
        >
          <rect width="5" height="5" fill="var(--sheet)" />
          <line x1="0" y1="0" x2="0" y2="5" stroke={String(colour)} strokeWidth="3" />
        </pattern>
      ))}
    </defs>
  );
}
