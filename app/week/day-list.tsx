import type { Recorded, WeekDay, WeekScreen } from '@/lib/views/week';
import type { Day } from '@/shared/time/day';
import { showClock, showDay, showUntil } from '@/shared/time/show-day';
import { DayCost } from '../_parts/day-cost';
import type { Ways } from '../_parts/shown-text';
import { Ticket } from '../_parts/ticket';
import styles from './day-list.module.css';
import { DayStrips } from './day-strips';
import { MoveForms } from './move-forms';

type DayListProps = { screen: WeekScreen /** The first day that the page shows. */; from: Day };

/** The days one by one, each spraying with its mix, its cost, what is flagged, and where it could go instead. */
export function DayList({ screen: { days, benches, today, reach, ways }, from }: DayListProps) {
  return days.map((day, place) => (
    <section key={day.day} className={styles.day} id={`day-${day.day}`} aria-labelledby={`head-${day.day}`}>
      <div className={styles.head}>
        <h2 id={`head-${day.day}`}>{day.day === today ? `Today, ${showDay(day.day)}` : showDay(day.day, today)}</h2>
        {day.clock.special && <p className={styles.words}>{day.clock.special}</p>}
        <DayWords day={day} nothing={nothingOn(day.day, today, reach)} ways={ways} />
      </div>
      <DayStrips benches={benches} place={place} clock={day.clock} />
      {day.recorded.map((one) => (
        <RecordedLine key={one.key} recorded={one} day={day.day} ways={ways} />
      ))}
      {day.leftOut.map(({ key, recipe, benches: on, reason }) => (
        <p key={key} className={styles.recorded}>
          <b>{recipe}</b> on {on}: skipped, {reason}
        </p>
      ))}
      {day.tickets.map((ticket) => (
        <Ticket key={ticket.id} ticket={ticket} ways={ways}>
          <MoveForms move={ticket.move} from={from} today={today} />
        </Ticket>
      ))}
    </section>
  ));
}

function nothingOn(day: Day, today: Day, reach: Day): string {
  if (day < today) return 'Nothing was recorded.';
  return day > reach ? 'Further than the plan reaches.' : 'Nothing is to be sprayed.';
}

/** What the day costs; or, on a day with nothing, that. */
function DayWords({ day, nothing, ways }: { day: WeekDay; nothing: string; ways: Ways }) {
  const { materialCost, labourCost, unknown, unknownLabour, tickets, recorded, leftOut } = day;
  if (tickets.length + recorded.length + leftOut.length === 0) {
    return <p className={styles.words}>{nothing}</p>;
  }
  if (!materialCost || !labourCost) return null;
  return (
    <p className={styles.words}>
      product <DayCost cost={materialCost} unknown={unknown} of={tickets.length} ways={ways} /> · labour apart{' '}
      <DayCost cost={labourCost} unknown={unknownLabour} of={tickets.length} ways={ways} />
    </p>
  );
}

function RecordedLine({ recorded, day, ways }: { recorded: Recorded; day: Day; ways: Ways }) {
  const { recipe, benches, startsAt, endsAt, reopensAt } = recorded;
  return (
    <p className={styles.recorded}>
      <b>{recipe}</b> on {benches.join(', ')}: {showClock(startsAt, ways.zone)} to{' '}
      {endsAt === null ? 'no end noted' : showClock(endsAt, ways.zone, day)}, as recorded.{' '}
      {reopensAt === null ? (
        <b className="grave">Keep out, not known when it reopens.</b>
      ) : (
        `Closed to ${showUntil(reopensAt, ways.zone, day)}.`
      )}
    </p>
  );
}
