import { flagsInWords } from '@/lib/views/flags-by-gravity';
import type { DayAhead } from '@/lib/views/today';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { Figure } from '../_parts/figure';
import { SeverityMark } from '../_parts/flag-lines';
import type { Ways } from '../_parts/shown-text';
import styles from './days-ahead.module.css';

type DaysAheadProps = { days: DayAhead[]; from: Day; ways: Ways };

/** The next seven days side by side: what is sprayed on each, and what it costs. */
export function DaysAhead({ days, from, ways }: DaysAheadProps) {
  return (
    <section aria-labelledby="ahead">
      <h2 id="ahead">The next seven days</h2>
      <ol className={styles.days}>
        {days.map((one) => (
          <li key={one.day} className={styles.day} data-empty={one.sprayings.length === 0 || undefined}>
            <h3 className={styles.name}>{showDayShort(one.day, from)}</h3>
            <Sprayings of={one} ways={ways} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Sprayings({ of: { day, sprayings, materialCost, unknown, flags }, ways }: { of: DayAhead; ways: Ways }) {
  const flagged = flagsInWords(flags);
  if (sprayings.length === 0) return <p className={styles.nothing}>nothing</p>;
  return (
    <>
      <ul>
        {sprayings.map(({ id, recipe }) => (
          <li key={id}>
            <a className={styles.recipe} href={`/week?from=${day}#${id}`}>
              {recipe}
            </a>
          </li>
        ))}
      </ul>
      {materialCost && (
        <p className={styles.cost}>
          <Figure of={materialCost} ways={ways} />
          {unknown > 0 && <span className="grave"> + {unknown} not known</span>}
        </p>
      )}
      {flagged && (
        <p className={styles.flagged}>
          <SeverityMark severity={flags.some(({ severity }) => severity === 'stop') ? 'stop' : 'warn'} />
          {flagged}
        </p>
      )}
    </>
  );
}
