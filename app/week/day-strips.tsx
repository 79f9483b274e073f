import type { BenchStrip } from '@/lib/engine/keepout/planned-closures';
import type { DayClock } from '@/lib/views/day-clock';
import type { WeekBench } from '@/lib/views/week';
import { BenchTag } from '../_parts/bench-tag';
import { DayStrip, HourScale } from '../_parts/day-strip';
import styles from './day-strips.module.css';

type DayStripsProps = { benches: WeekBench[] /** Which of the days. */; place: number; clock: DayClock };

/** The benches of a day on which something happens, each with its strip: on a narrow page, where the grid has no room. */
export function DayStrips({ benches, place, clock }: DayStripsProps) {
  const busy = benches.flatMap(({ id, name, days }) => {
    const strip = days[place]?.strip ?? null;
    return strip !== null && isBusy(strip) ? [{ id, name, strip }] : [];
  });
  if (busy.length === 0) return null;
  return (
    <ul className={styles.strips}>
      <li className={styles.clock} aria-hidden="true">
        <HourScale clock={clock} every={6} />
      </li>
      {busy.map(({ id, name, strip }) => (
        <li key={id}>
          <BenchTag name={name} />
          <DayStrip strip={strip} clock={clock} />
        </li>
      ))}
    </ul>
  );
}

const isBusy = ({ spraying, closed, unknown }: BenchStrip): boolean =>
  spraying.length + closed.length + unknown.length > 0;
