import type { ReactNode } from 'react';
import type { RampSteps } from '@/lib/views/ramp-steps';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import { weeksWords } from '../weeks-words';
import styles from './ramp.module.css';

/** What the lines, the band and the hatching of the run-out ramp stand for, with their figures. */
export function RampFacts({ steps, ways }: { steps: RampSteps; ways: Ways }) {
  const { orderBy, weeks, weeksUntilReorder, lead, runsOutOn, wasteCost } = steps;
  return (
    <dl className={styles.facts}>
      <Fact name="Order by" mark={lead ? 'orderBy' : null}>
        <Figure of={orderBy} ways={ways} />
        {weeks !== null && (
          <span className={weeks < 0 ? styles.late : undefined}>
            {weeks < 0 ? '▲ ' : ''}
            <Figure of={weeksUntilReorder} ways={ways}>
              {weeksWords(weeks)}
            </Figure>
          </span>
        )}
      </Fact>
      {lead && (
        <Fact name="On its way until" mark="lead">
          <Figure of={lead.neededOn} ways={ways} />
          <small className="soft">
            {lead.days} working {lead.days === 1 ? 'day' : 'days'}, {lead.supplier}, {lead.pack}
          </small>
        </Fact>
      )}
      <Fact name="Runs out" mark={runsOutOn.value.kind === 'day' ? 'runsOut' : null}>
        <Figure of={runsOutOn} ways={ways} />
      </Fact>
      <Fact name="Will be wasted" mark="wasted">
        <Figure of={wasteCost} ways={ways} />
      </Fact>
    </dl>
  );
}

type FactProps = { name: string; mark: 'orderBy' | 'lead' | 'runsOut' | 'wasted' | null; children: ReactNode };

function Fact({ name, mark, children }: FactProps) {
  return (
    <div>
      <dt>
        {mark && <Mark of={mark} />}
        {name}
      </dt>
      <dd>{children}</dd>
    </div>
  );
}

/** How it is drawn in the ramp: a day as a line, a span or an amount as an area. */
const Mark = ({ of }: { of: NonNullable<FactProps['mark']> }) => (
  <svg className={styles.mark} width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
    {of === 'orderBy' || of === 'runsOut' ? (
      <path className={styles[of]} d="M9 0V18" />
    ) : (
      <rect className={styles[of]} x="1" y="1" width="16" height="16" />
    )}
  </svg>
);
