'use client';

import { CartesianGrid, Line, LineChart, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import type { Fig } from '@/lib/views/figures';
import type { SeasonCurve } from '@/lib/views/season-curve';
import { showMoney, showVolume } from '@/shared/measure/show';
import { SLIP, TICK } from '../../_parts/chart-look';
import type { Ways } from '../../_parts/shown-text';
import { DASHES } from './curve-legend';
import styles from './equivalents.module.css';

export type CurveChartProps = { curve: SeasonCurve; ways: Ways };

/** The table beside it holds the same figures, so a reader that cannot see the chart skips it. */
export function CurveChart({ curve: { names, rows }, ways }: CurveChartProps) {
  const money = (value: unknown) => showMoney(Number(value), ways.currency);
  const spray = (value: unknown) => showVolume(Number(value) * 1_000, ways.units);
  const points = rows.map(({ spray: at, costs, ...row }) => ({
    ...row,
    sprayMl: numberIn(at) ?? 0,
    costs: costs.map((cost) => cost && numberIn(cost)),
  }));
  return (
    <div className={styles.chart} aria-hidden="true">
      <ResponsiveContainer width="100%" height="100%">
        <LineChart data={points} margin={{ top: 18, right: 28, bottom: 0, left: 8 }} accessibilityLayer={false}>
          <CartesianGrid vertical={false} stroke="var(--line)" />
          <XAxis
            dataKey="sprayMl"
            type="number"
            domain={['dataMin', 'dataMax']}
            tickFormatter={spray}
            tick={TICK}
            stroke="var(--ink)"
          />
          <YAxis tickFormatter={money} tick={TICK} width={68} axisLine={false} tickLine={false} />
          {points
            .filter(({ isPlanned, isTurn }) => isPlanned || isTurn)
            .map(({ sprayMl, isTurn }) => (
              <ReferenceLine
                key={sprayMl}
                x={sprayMl}
                stroke={isTurn ? 'var(--ink)' : 'var(--clay)'}
                strokeDasharray={isTurn ? '4 3' : ''}
                strokeWidth={isTurn ? 1 : 2}
                label={isTurn ? TURNS : PLANNED}
              />
            ))}
          {names.map((name, at) => (
            <Line
              key={name}
              dataKey={({ costs }: (typeof points)[number]) => costs[at]}
              connectNulls
              name={name}
              stroke="var(--ink)"
              strokeWidth={2}
              strokeDasharray={DASHES[at % DASHES.length]}
              dot={{ r: 2.5, fill: 'var(--paper)', strokeDasharray: '' }}
              isAnimationActive={false}
            />
          ))}
          <Tooltip
            formatter={money}
            labelFormatter={spray}
            isAnimationActive={false}
            contentStyle={SLIP}
            itemStyle={{ color: 'var(--ink)' }}
          />
        </LineChart>
      </ResponsiveContainer>
    </div>
  );
}

/** What a figure is as a plain number: micros, or mL. */
const numberIn = ({ value }: Fig): number | null =>
  value.kind === 'money' ? value.micros : value.kind === 'volume' ? value.ml : null;

const TURNS = { value: 'turns', fill: 'var(--ink)', position: 'top', fontSize: 13 } as const;
const PLANNED = { value: 'as planned', fill: 'var(--clay)', position: 'top', fontSize: 13, fontWeight: 650 } as const;
