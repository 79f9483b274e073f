import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { damageHere } from '@/lib/views/damage';
import { keepOutBoard } from '@/lib/views/keep-out-board';
import { unreadHere } from '@/lib/views/unread-here';
import { Damage } from '../_parts/damage';
import { EmergencyLink } from '../_parts/emergency-link';
import { EmptyPlace } from '../_parts/empty-place';
import { FirstVisit } from '../_parts/first-visit';
import { KeepOutBoard } from '../_parts/keep-out-board';
import { Refreshed } from '../_parts/refreshed';
import { one, type Search } from '../_parts/search';
import { Unread } from '../_parts/unread';
import styles from './keep-out.module.css';

export const metadata: Metadata = { title: 'Keep-out' };

async function KeepOutPage({ searchParams }: { searchParams: Promise<Search> }) {
  const isAlone = one((await searchParams).wall) !== undefined;
  const board = await keepOutBoard(clock);
  if (!board) return <FirstVisit />;
  const closed = board.benches.filter(({ state }) => state !== 'open').length;
  return (
    <div data-alone={isAlone || undefined}>
      <Refreshed />
      <h1>{isAlone ? (board.shop ?? 'Keep-out') : 'Keep-out'}</h1>
      <Damage sentence={await damageHere()} />
      <Unread sentence={board.doubt === 'reading' ? null : await unreadHere(clock)} />
      <KeepOutBoard first={board} from="/keep-out/now">
        What was sprayed, as recorded; the label governs.
      </KeepOutBoard>
      {board.doubt === null && board.benches.length === 0 && (
        <EmptyPlace step={{ href: '/setup/benches/new', text: 'Add a bench' }}>
          Each bench with its state, large enough to read across a room. There is no bench yet.
        </EmptyPlace>
      )}
      <p className={styles.links}>
        {isAlone ? (
          <a href="/keep-out">Back to the shop</a>
        ) : (
          <>
            {closed > 0 && <a href="/keep-out/notice">Notices to print, one for each closed bench</a>}
            <EmergencyLink />
            <a href="/keep-out?wall=1">On a wall</a>
            <a href="/setup/board">A link for the sales floor</a>
          </>
        )}
      </p>
    </div>
  );
}

export default doorPage('see-board', KeepOutPage);
