import { flagsInWords } from '@/lib/views/flags-by-gravity';
import type { DayAhead } from '@/lib/views/today';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { DayCost } from '../_parts/day-cost';
import { EmptyPlace } from '../_parts/empty-place';
import { SeverityMark } from '../_parts/flag-lines';
import type { Ways } from '../_parts/shown-text';
import styles from './days-ahead.module.css';

type DaysAheadProps = { days: DayAhead[]; from: Day; ways: Ways };

/** The next seven days: on which of them is sprayed, what, and what it costs. */
export function DaysAhead({ days, from, ways }: DaysAheadProps) {
  const busy = days.filter(({ sprayings }) => sprayings.length > 0);
  return (
    <section aria-labelledby="ahead">
      <h2 id="ahead">The next seven days</h2>
      {busy.length === 0 && <EmptyPlace>Nothing is to be sprayed on any of them.</EmptyPlace>}
      <ol>
        {busy.map((one) => (
          <DayLine key={one.day} of={one} from={from} ways={ways} />
        ))}
      </ol>
    </section>
  );
}

type DayLineProps = { of: DayAhead; from: Day; ways: Ways };

function DayLine({ of: { day, sprayings, materialCost, unknown, flags }, from, ways }: DayLineProps) {
  const grave = flags.filter(({ severity }) => severity !== 'note');
  return (
    <li className={styles.day}>
      <h3 className={styles.name}>{showDayShort(day, from)}</h3>
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
          <DayCost cost={materialCost} unknown={unknown} of={sprayings.length} ways={ways} />
        </p>
      )}
      {grave.length > 0 && (
        <p className={styles.flagged}>
          <SeverityMark severity={grave.some(({ severity }) => severity === 'stop') ? 'stop' : 'warn'} />
          {flagsInWords(grave)}
        </p>
      )}
    </li>
  );
}
