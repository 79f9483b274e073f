import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { clock } from '@/lib/clock';
import { networkWay, publicOrigin } from '@/lib/door/allowed-hosts';
import { doorPage } from '@/lib/door/door-page';
import { linksScreen } from '@/lib/views/shared-links';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import { MakeLink, RevokeLink } from '../links/link-forms';
import styles from '../setup-list.module.css';

export const metadata: Metadata = { title: 'Calendar' };

async function CalendarLinksPage() {
  const screen = await linksScreen('calendar', clock);
  if (!screen) return <FirstVisit />;
  const { shop, kind, links, commandId } = screen;
  // The door has judged the Host: it is an address of this very server.
  const origin = publicOrigin((await headers()).get('host') ?? '');
  const isHereAlone = networkWay().url === null;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Calendar</h1>
      <p>
        A calendar program that subscribes to such a link shows what is sprayed when, and when people keep out of which
        bench. It asks again every quarter of an hour at best, and some ask once a day, so the board decides and the
        calendar only plans. Whoever has the link sees the names of recipes and benches, and nothing else of the shop.
      </p>
      {isHereAlone && (
        <p className="soft">
          This shop answers on its own computer alone, so the calendar program must run there, too.
        </p>
      )}
      {links.length === 0 && <EmptyPlace>The links that work, with who made them. There is none yet.</EmptyPlace>}
      <ul className={styles.list}>
        {links.map((link) => (
          <li key={link.id}>
            <span>
              <a href={`${origin.replace(/^https?:/, 'webcal:')}${link.href}`}>
                Subscribe to the calendar of {link.madeAt}
              </a>
              <span className="soft small">made by {link.madeBy}</span>
            </span>
            <code className={styles.address}>{`${origin}${link.href}`}</code>
            <RevokeLink shop={shop} link={link} />
          </li>
        ))}
      </ul>
      <MakeLink shop={shop} kind={kind} commandId={commandId} />
    </>
  );
}

export default doorPage('own', CalendarLinksPage);
