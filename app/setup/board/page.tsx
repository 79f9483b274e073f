import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { linksScreen } from '@/lib/views/shared-links';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import { MakeLink, RevokeLink } from '../links/link-forms';
import styles from '../setup-list.module.css';

export const metadata: Metadata = { title: 'A board for the sales floor' };

export default async function BoardLinksPage() {
  const screen = await linksScreen('board', clock);
  if (!screen) return <FirstVisit />;
  const { shop, kind, links, commandId } = screen;
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
            <a href={link.href}>Board of {link.madeAt}</a>
            <span>made by {link.madeBy}</span>
            <RevokeLink shop={shop} link={link} />
          </li>
        ))}
      </ul>
      <MakeLink shop={shop} kind={kind} commandId={commandId} />
    </>
  );
}
