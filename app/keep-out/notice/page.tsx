import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { publicOrigin } from '@/lib/door/allowed-hosts';
import { doorPage } from '@/lib/door/door-page';
import { type NoticesScreen, noticesScreen } from '@/lib/views/keep-out-notice';
import { EmptyPlace } from '../../_parts/empty-place';
import { KeepOutOfAll } from '../../_parts/keep-out-of-all';
import { PaperSheets } from '../../_parts/paper-sheets';
import { PrintButton } from '../../_parts/print-button';
import { readable } from '../../_parts/readable';
import { one, type Search } from '../../_parts/search';
import styles from './notice.module.css';
import { NoticeSheet } from './notice-sheet';

export const metadata: Metadata = { title: 'Keep-out notices' };

async function NoticePage({ searchParams }: { searchParams: Promise<Search> }) {
  const { bench, sheet } = await searchParams;
  const origin = publicOrigin((await headers()).get('host') ?? '');
  const asked = { bench: one(bench), sheet: one(sheet) };
  const screen = await readable(() => noticesScreen(clock, asked, origin));
  if (screen === 'unreadable') return <KeepOutOfAll />;
  if (!screen) notFound();
  return (
    <>
      <div className="unprinted">
        <p>
          <a href="/keep-out">Keep-out</a>
        </p>
        <h1>Keep-out notices</h1>
        {screen.notices.length === 0 ? <Nothing open={screen.open} /> : <Choices screen={screen} bench={one(bench)} />}
      </div>
      <PaperSheets size={screen.sheet}>
        {screen.notices.map((notice) => (
          <NoticeSheet key={notice.id} notice={notice} screen={screen} />
        ))}
      </PaperSheets>
    </>
  );
}

const Nothing = ({ open }: { open: string | null }) => (
  <EmptyPlace step={{ href: '/keep-out', text: 'Look at the board' }}>
    {open === null
      ? 'A notice for each bench that people keep out of. As recorded, there is none now.'
      : `A notice to hang up at ${open}. As recorded, its interval has elapsed, and paper never says that.`}
  </EmptyPlace>
);

function Choices({ screen, bench }: { screen: NoticesScreen; bench: string | undefined }) {
  const other = screen.sheet === 'letter' ? 'a4' : 'letter';
  const asked = new URLSearchParams({ ...(bench !== undefined && { bench }), sheet: other });
  return (
    <>
      <p className="soft">
        One sheet for each closed bench. Print it, hang it up, and take it down only when the board says that the
        interval has elapsed. Print it anew after every further spraying.
      </p>
      <p className={styles.choices}>
        <PrintButton />
        <a className="button" href={`/keep-out/notice?${asked}`}>
          On {other === 'a4' ? 'A4' : 'Letter'} instead
        </a>
      </p>
    </>
  );
}

export default doorPage('see-board', NoticePage);
