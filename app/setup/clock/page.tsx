import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type ClockScreen, clockScreen } from '@/lib/views/clock-screen';
import { FirstVisit } from '../../_parts/first-visit';
import { ConfirmForm } from './confirm-form';

export const metadata: Metadata = { title: 'The clock' };

const DOUBTS: Record<NonNullable<ClockScreen['doubt']>, string> = {
  behind: 'It shows less time than has passed: it was set back.',
  leapt: 'It went ahead by more than time passed: it was set, or the computer slept.',
  'long-gap': 'The shop was not running for more than a day, so nobody has watched its clock.',
  unwatched: 'The shop was not running for a while, and a bench was closed meanwhile.',
  restored: 'A backup was put back.',
  unconfirmed: 'It was set, leapt ahead or went unwatched, and nobody has confirmed it since.',
};

const DAMAGED = 'What the shop had noted of it was changed outside of this program.';

async function ClockPage() {
  const screen = await clockScreen(clock);
  if (!screen) return <FirstVisit />;
  const { doubt, isDamaged, shown, zone, confirmed } = screen;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>The clock</h1>
      <p>
        Every interval is counted by the clock of the shop’s computer. While it is in doubt, the board keeps people out
        of every bench.
      </p>
      <h2>Now it shows</h2>
      <p>
        <b>{shown}</b> in {zone}
      </p>
      {doubt === null && !isDamaged ? (
        <p>Nothing speaks against it.</p>
      ) : (
        <>
          <p className="grave">
            <b>In doubt.</b> {doubt === null ? DAMAGED : DOUBTS[doubt]}
          </p>
          {doubt === 'restored' && <SinceBackup keptUntil={screen.keptUntil} />}
          <p>
            Compare it with another clock: weekday, date, hour and minute. Set the computer’s clock first if it is
            wrong.
          </p>
          <ConfirmForm screen={screen} />
        </>
      )}
      <h2>Confirmed before</h2>
      {confirmed.length === 0 && <p className="soft">Nobody has had to yet.</p>}
      <ul>
        {confirmed.map(({ id, by, at, before }) => (
          <li key={id}>
            {at}, by {by}; it was last seen at {before}
          </li>
        ))}
      </ul>
    </>
  );
}

/** What was sprayed after a backup is nowhere in it, so somebody has to enter it before a bench can be entered. */
const SinceBackup = ({ keptUntil }: { keptUntil: string | null }) => (
  <p>
    What was sprayed, mixed, received or ordered after {keptUntil ?? 'the backup'} is not in it. Enter every spraying
    since then first, with the times at which it was really sprayed: <a href="/mix">Mix</a>. Then confirm it here,
    together with the time.
  </p>
);

export default doorPage('own', ClockPage);
