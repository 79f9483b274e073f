import type { Metadata } from 'next';
import { lastTry } from '@/lib/alerts/tries';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type AlertSettingsScreen, alertSettingsScreen } from '@/lib/views/alert-settings-form';
import { showInstant } from '@/shared/time/show-day';
import { FirstVisit } from '../../_parts/first-visit';
import { wentInWords } from '../../_parts/way-names';
import { AlertsForm } from './alerts-form';
import { TryForm } from './try-form';

export const metadata: Metadata = { title: 'Alerts' };

async function AlertsPage() {
  const screen = await alertSettingsScreen(clock);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Alerts</h1>
      <p>
        What must be ordered, a bottle that dies with something in it, a bench that reopens within the hour or is closed
        when the shop opens, a label’s limit that is reached: Today shows it, and it goes by e-mail and to another
        program, once each, where that is set up here. Nothing goes anywhere else.
      </p>
      <AlertsForm screen={screen} />
      <section aria-labelledby="try">
        <h2 id="try">Does it arrive?</h2>
        <LastTries screen={screen} />
        <TryForm shop={screen.thing.shop} />
      </section>
    </>
  );
}

/** How the last message went in each way, since the program was started. */
function LastTries({ screen: { setUp, thing, ways, today } }: { screen: AlertSettingsScreen }) {
  const tries = setUp.flatMap((way) => {
    const last = lastTry(thing.shop, way);
    return last ? [{ way, ...last }] : [];
  });
  return (
    <ul>
      {tries.map((last) => (
        <li key={last.way} className={last.ok ? undefined : 'grave'}>
          {showInstant(last.at, ways.zone, today)}: {wentInWords(last)}
          {!last.ok && ' It is tried again, an hour later at most.'}
        </li>
      ))}
    </ul>
  );
}

export default doorPage('own', AlertsPage);
