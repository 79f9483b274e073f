import type { DayClock } from '@/lib/views/day-clock';
import type { BenchDay, WeekDay, WeekScreen } from '@/lib/views/week';
import type { Day } from '@/shared/time/day';
import { showClock, showDayShort } from '@/shared/time/show-day';
import { BenchTag } from '../_parts/bench-tag';
import { DayCost } from '../_parts/day-cost';
import { DayStrip } from '../_parts/day-strip';
import type { Ways } from '../_parts/shown-text';
import { MoveByHand } from './move-by-hand';
import styles from './week-grid.module.css';

/** Benches down, days across: on a wide page, the whole week at a glance. */
export function WeekGrid({ screen: { days, benches, today, ways } }: { screen: WeekScreen }) {
  return (
    <MoveByHand today={today}>
      <table className={styles.grid}>
        <caption className="spoken">
          Each bench through the seven days. Shift and the left or right arrow on a spraying moves it by a day, once you
          say so
        </caption>
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
              {days.map(({ day, clock }, place) => (
                <td key={day} data-day={day}>
                  <BenchDayCell of={bench.days[place]} clock={clock} ways={ways} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot hidden={days.every(({ day }) => day < today)}>
          <CostRow days={days} today={today} what="materialCost" unknown="unknown" name="Product" ways={ways} />
          <CostRow
            days={days}
            today={today}
            what="labourCost"
            unknown="unknownLabour"
            name="Labour, apart"
            ways={ways}
          />
        </tfoot>
      </table>
    </MoveByHand>
  );
}

type CellProps = { of: BenchDay | undefined; clock: DayClock; ways: Ways };

function BenchDayCell({ of: cell, clock, ways }: CellProps) {
  const { strip = null, sprayings = [] } = cell ?? {};
  return (
    <>
      <div className={styles.strip}>
        <DayStrip strip={strip} clock={clock} />
      </div>
      {sprayings.map(({ id, recipe, startsAt, program, on }) => (
        <a key={id} className={styles.spraying} href={`#${id}`} draggable data-program={program} data-on={on}>
          <b>{showClock(startsAt, ways.zone)}</b> {recipe}
        </a>
      ))}
      {sprayings.length === 0 && <span className="spoken">{standing(strip)}</span>}
    </>
  );
}

/** What the strip shows, for whoever cannot see it. */
function standing(strip: BenchDay['strip']): string {
  if (strip === null || strip.unknown.length > 0) return 'keep out, not known';
  return strip.closed.length > 0 ? 'closed for a part of the day' : 'nothing sprayed';
}

type CostRowProps = {
  days: WeekDay[];
  today: Day;
  what: 'materialCost' | 'labourCost';
  unknown: 'unknown' | 'unknownLabour';
  name: string;
  ways: Ways;
};

function CostRow({ days, today, what, unknown, name, ways }: CostRowProps) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {days.map((day) => {
        const cost = day[what];
        return (
          <td key={day.day}>
            {cost ? (
              <DayCost cost={cost} unknown={day[unknown]} of={day.tickets.length} ways={ways} />
            ) : (
              day.day >= today && <span className="soft">none</span>
            )}
          </td>
        );
      })}
    </tr>
  );
}
