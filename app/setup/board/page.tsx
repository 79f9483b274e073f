import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { clock } from '@/lib/clock';
import { publicOrigin } from '@/lib/door/allowed-hosts';
import { doorPage } from '@/lib/door/door-page';
import { linksScreen } from '@/lib/views/shared-links';
import { CopyButton } from '../../_parts/copy-button';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import { MakeLink, RevokeLink } from '../links/link-forms';
import styles from '../setup-list.module.css';

export const metadata: Metadata = { title: 'A board for the sales floor' };

async function BoardLinksPage() {
  const screen = await linksScreen('board', clock);
  if (!screen) return <FirstVisit />;
  const { shop, kind, links, commandId } = screen;
  const origin = publicOrigin((await headers()).get('host') ?? '');
  return (
    <>
      <p>
        <a href="/setup">Setup</a> · <a href="/keep-out">Keep-out</a>
      </p>
      <h1>A board for the sales floor</h1>
      <p>
        Whoever has such a link sees which benches people keep out of, and until when: no stock, no products, no prices.
        Notices to hang up carry it as a square code. Revoke one that got into wrong hands; its page then keeps people
        out of everything.
      </p>
      {links.length === 0 && <EmptyPlace>The links that work, with who made them. There is none yet.</EmptyPlace>}
      <ul className={styles.list}>
        {links.map((link) => (
          <li key={link.id}>
            <span>
              <a href={link.href}>Board of {link.madeAt}</a>
              <span className="soft small">made by {link.madeBy}</span>
            </span>
            <span>
              <code className={styles.address}>{origin + link.href}</code>
              <a href={`/setup/board/sheet?link=${encodeURIComponent(link.id)}`}>Show as a square code, and print it</a>
            </span>
            <span>
              <CopyButton text={origin + link.href} of={`the board of ${link.madeAt}`} />
              <RevokeLink shop={shop} link={link} />
            </span>
          </li>
        ))}
      </ul>
      <MakeLink shop={shop} kind={kind} commandId={commandId} />
    </>
  );
}

export default doorPage('own', BoardLinksPage);
