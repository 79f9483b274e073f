import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type TodayScreen, todayScreen } from '@/lib/views/today';
import { showClock, showDayLong } from '@/shared/time/show-day';
import { BegunMixes } from '../_parts/begun-mixes';
import { BenchRow } from '../_parts/bench-row';
import { HourScale } from '../_parts/day-strip';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { KeepOutOfAll } from '../_parts/keep-out-of-all';
import { OrderList } from '../_parts/order-list';
import { readable } from '../_parts/readable';
import { Ticket } from '../_parts/ticket';
import { UnderWayList } from '../_parts/under-way-list';
import { MissedList } from '../mix/missed-list';
import { AlertList } from './alert-list';
import { ComingIn } from './coming-in';
import { DaysAhead } from './days-ahead';
import { KeepFresh } from './keep-fresh';
import { StillConfirmed } from './still-confirmed';
import { summaryOf } from './summary';
import styles from './today.module.css';
import { WasteShelf } from './waste-shelf';

export const metadata: Metadata = { title: 'Today' };

async function TodayPage() {
  const screen = await readable(() => todayScreen(clock));
  if (screen === 'unreadable') return <KeepOutOfAll />;
  if (!screen) return <FirstVisit />;
  return (
    <div className={styles.today}>
      <div className={styles.left}>
        <h1>{showDayLong(screen.today)}</h1>
        <p className="soft">{summaryOf(screen)}</p>
        <KeepFresh asOf={screen.now} zone={screen.ways.zone} />
        <AlertList screen={screen} />
        <BegunMixes />
        <UnderWayList sprayings={screen.underWay} />
        <div className={styles.board}>
          <Benches screen={screen} />
        </div>
        <ToMix screen={screen} />
        <div className={styles.missed}>
          <MissedHere screen={screen} />
        </div>
      </div>
      <div className={styles.right}>
        <DaysAhead days={screen.ahead} from={screen.today} ways={screen.ways} />
        <Orders screen={screen} />
        <WasteShelf waste={screen.waste} total={screen.wasteCost} flagged={screen.shelfFlags} ways={screen.ways} />
      </div>
    </div>
  );
}

type ScreenProps = { screen: TodayScreen };

/** Why people keep out of every bench, and the way out. */
const DOUBTS = {
  clock: ['the clock of this machine is not confirmed.', '/setup/clock', 'Look and confirm'],
  restored: [
    'a backup was put back, and nobody has confirmed what was sprayed since.',
    '/setup/clock',
    'Enter and confirm',
  ],
  records: [
    'something in the books is lost, or is not as it was written.',
    '/setup#database',
    'Setup tells what, and what to do',
  ],
} as const;

function Doubted({ doubt }: { doubt: keyof typeof DOUBTS }) {
  const [why, href, what] = DOUBTS[doubt];
  return (
    <p className="grave">
      KEEP OUT of every bench: {why} <a href={href}>{what}</a>
    </p>
  );
}

function Benches({ screen: { benches, doubt, clock: ofToday, now, ways } }: ScreenProps) {
  const open = benches.filter(({ state }) => state === 'open');
  return (
    <section aria-labelledby="benches">
      <h2 id="benches">Who may stand where, at {showClock(now, ways.zone)}</h2>
      {doubt && <Doubted doubt={doubt} />}
      {benches.length === 0 ? (
        <EmptyPlace step={{ href: '/setup', text: 'Bring in a shop file' }}>
          Each bench with its opening hours, its sprayings and the time people keep out. There is no bench yet.
        </EmptyPlace>
      ) : (
        <StillConfirmed>
          <ul className={styles.benches}>
            <li className={styles.clock} aria-hidden="true">
              <HourScale clock={ofToday} />
            </li>
            {open.length > 0 && (
              <li className={styles.folded}>
                {open.length === 1 ? 'One bench' : `${open.length} benches`} with no interval running now:{' '}
                <a href="/keep-out">see every bench</a>
              </li>
            )}
            {benches.map((bench) => (
              <BenchRow key={bench.id} bench={bench} clock={ofToday} ways={ways} />
            ))}
          </ul>
        </StillConfirmed>
      )}
    </section>
  );
}

/** The latest are shown; the others wait on Mix. */
const MOST_MISSED = 3;

function MissedHere({ screen: { missed } }: ScreenProps) {
  if (missed.length === 0) return null;
  return (
    <section aria-labelledby="missed">
      <h2 id="missed">Missed: say what became of it</h2>
      <MissedList missed={missed.slice(0, MOST_MISSED)} />
      {missed.length > MOST_MISSED && (
        <p className={styles.more}>
          <a href="/mix#missed">{missed.length - MOST_MISSED} more</a>
        </p>
      )}
    </section>
  );
}

function ToMix({ screen: { toMix, ways } }: ScreenProps) {
  return (
    <section aria-labelledby="to-mix">
      <h2 id="to-mix">To mix</h2>
      {toMix.length === 0 ? (
        <EmptyPlace>Nothing is to be sprayed today.</EmptyPlace>
      ) : (
        toMix.map((ticket) => (
          <Ticket key={ticket.id} ticket={ticket} ways={ways}>
            <a className={`button ${styles.mixNow}`} data-main="" href={`/mix/do?${ticket.query}`}>
              Mix it now
            </a>
          </Ticket>
        ))
      )}
    </section>
  );
}

/** What presses is always shown; beside it, as much as a laptop has room for. */
const MOST_ORDERS = 3;

function Orders({ screen: { orders, coming, onItsWay, ways } }: ScreenProps) {
  const pressing = orders.filter(({ order }) => order === null || order.weeks <= 0);
  // What is on its way takes a line more.
  const room = orders.slice(0, MOST_ORDERS).some(({ onOrder }) => onOrder) ? MOST_ORDERS - 1 : MOST_ORDERS;
  const shown = orders.slice(0, Math.max(pressing.length, room));
  return (
    <section aria-labelledby="order">
      <h2 id="order">Order</h2>
      {pressing.length === 0 && <EmptyPlace>Nothing has to be ordered this week.</EmptyPlace>}
      <OrderList orders={shown} ways={ways} />
      <ComingIn coming={coming} ways={ways} />
      {(shown.length < orders.length || onItsWay > 0) && (
        <p className={styles.more}>
          {shown.length < orders.length && (
            <a href="/shelf?as=table">{orders.length - shown.length} more run out within 26 weeks</a>
          )}
          {shown.length < orders.length && onItsWay > 0 && ' · '}
          {onItsWay > 0 && (
            <a href="/buy/orders">
              {onItsWay} {onItsWay === 1 ? 'order' : 'orders'} on the way
            </a>
          )}
        </p>
      )}
    </section>
  );
}

export default doorPage('see-shop', TodayPage);
