import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type WeekScreen, weekScreen } from '@/lib/views/week';
import { showDay, showDayLong } from '@/shared/time/show-day';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { one, type Search } from '../_parts/search';
import { UnderWayList } from '../_parts/under-way-list';
import { DayList } from './day-list';
import { MovedNotice } from './move-forms';
import styles from './week.module.css';
import { WeekGrid } from './week-grid';

export const metadata: Metadata = { title: 'Week' };

async function WeekPage({ searchParams }: { searchParams: Promise<Search> }) {
  const { from, moved: program, on, was } = await searchParams;
  const screen = await weekScreen(clock, { from: one(from), moved: one(program), on: one(on), was: one(was) });
  if (!screen) return <FirstVisit />;
  const { days, benches, today, fault, reach, moved } = screen;
  const [first, last] = [days[0]?.day ?? today, days[6]?.day ?? today];
  return (
    <>
      <div className={styles.top}>
        <div>
          <h1>{showDayLong(first, today)} and six days on</h1>
          <p className="soft">{summaryOf(screen)}</p>
        </div>
        <WeekLinks screen={screen} />
      </div>
      <UnderWayList sprayings={screen.underWay} />
      {moved && <MovedNotice moved={moved} from={first} />}
      {fault && (
        <p role="alert" className="grave">
          {fault} These are the seven days from today instead.
        </p>
      )}
      {last > reach && <p className="soft">The plan reaches as far as {showDay(reach, today)}.</p>}
      {first < today && (
        <p className="soft">Days that are past show what was recorded, and nothing that was planned.</p>
      )}
      {benches.length === 0 ? (
        <EmptyPlace step={{ href: '/setup', text: 'Bring in a shop file' }}>
          Seven days by benches: what is sprayed, what it costs, and when each bench is closed. There is no bench yet.
        </EmptyPlace>
      ) : (
        <>
          <WeekGrid screen={screen} />
          <DayList screen={screen} from={first} />
        </>
      )}
    </>
  );
}

function summaryOf({ days }: WeekScreen): string {
  const planned = days.flatMap(({ tickets }) => tickets);
  const recorded = days.flatMap((day) => day.recorded);
  const stops = planned.filter(({ flags }) => flags.some(({ severity }) => severity === 'stop')).length;
  return [
    counted(planned.length, 'spraying planned', 'sprayings planned'),
    recorded.length > 0 && counted(recorded.length, 'recorded', 'recorded'),
    stops > 0 && `${stops} of them must not go ahead as planned`,
  ]
    .filter(Boolean)
    .join(' · ');
}

const counted = (count: number, one: string, many: string): string =>
  `${count === 0 ? 'No' : count} ${count === 1 ? one : many}`;

function WeekLinks({ screen: { previous, next } }: { screen: WeekScreen }) {
  return (
    <nav className={styles.links} aria-label="Weeks">
      <a className="button" href={`/week?from=${previous}`}>
        ← Seven days back
      </a>
      <a className="button" href="/week">
        From today
      </a>
      <a className="button" href={`/week?from=${next}`}>
        Seven days on →
      </a>
      <a className="button" href="/week/modes">
        Modes of action
      </a>
    </nav>
  );
}

export default doorPage('see-shop', WeekPage);
