import type { BenchDay, WeekDay, WeekScreen } from '@/lib/views/week';
import { showClock, showDayShort } from '@/shared/time/show-day';
import { BenchTag } from '../_parts/bench-tag';
import { DayStrip } from '../_parts/day-strip';
import { Figure } from '../_parts/figure';
import type { Ways } from '../_parts/shown-text';
import styles from './week-grid.module.css';

/** Benches down, days across: on a wide page, the whole week at a glance. */
export function WeekGrid({ screen: { days, benches, today, ways } }: { screen: WeekScreen }) {
  return (
    <table className={styles.grid}>
      <caption className="spoken">Each bench through the seven days</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="spoken">Bench</span>
          </th>
          {days.map(({ day }) => (
            <th key={day} scope="col" aria-current={day === today ? 'date' : undefined}>
              <a className={styles.day} href={`#day-${day}`}>
                {day === today ? `Today, ${showDayShort(day)}` : showDayShort(day, today)}
              </a>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {benches.map((bench) => (
          <tr key={bench.id}>
            <th scope="row">
              <BenchTag name={bench.name} />
            </th>
            {bench.days.map((one) => (
              <td key={one.day}>
                <BenchDayCell of={one} minute={days.find(({ day }) => day === one.day)?.minute ?? null} ways={ways} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
      <tfoot>
        <CostRow days={days} what="materialCost" name="Product" ways={ways} />
        <CostRow days={days} what="labourCost" name="Labour, apart" ways={ways} />
      </tfoot>
    </table>
  );
}

function BenchDayCell({ of: { spans, sprayings }, minute, ways }: { of: BenchDay; minute: number | null; ways: Ways }) {
  return (
    <>
      <div className={styles.strip}>
        <DayStrip {...spans} now={minute} />
      </div>
      {sprayings.map(({ id, recipe, startsAt }) => (
        <a key={id} className={styles.spraying} href={`#${id}`}>
          <b>{showClock(startsAt, ways.zone)}</b> {recipe}
        </a>
      ))}
      {sprayings.length === 0 && <span className="spoken">{standing(spans)}</span>}
    </>
  );
}

/** What the strip shows, for whoever cannot see it. */
function standing({ closed, unknown }: BenchDay['spans']): string {
  if (unknown.length > 0) return 'keep out, not known';
  return closed.length > 0 ? 'closed for a part of the day' : 'nothing sprayed';
}

type CostRowProps = { days: WeekDay[]; what: 'materialCost' | 'labourCost'; name: string; ways: Ways };

function CostRow({ days, what, name, ways }: CostRowProps) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {days.map((day) => {
        const cost = day[what];
        return (
          <td key={day.day}>
            {cost ? <Figure of={cost} ways={ways} /> : <span className="soft">–</span>}
            {what === 'materialCost' && day.unknown > 0 && <span className="grave"> + {day.unknown} not known</span>}
          </td>
        );
      })}
    </tr>
  );
}
