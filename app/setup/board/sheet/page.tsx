import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { publicOrigin } from '@/lib/door/allowed-hosts';
import { doorPage } from '@/lib/door/door-page';
import { linksScreen } from '@/lib/views/shared-links';
import { squareCode } from '@/lib/views/square-code';
import { PrintButton } from '../../../_parts/print-button';
import { one, type Search } from '../../../_parts/search';
import { Square } from '../../../_parts/square';
import styles from './sheet.module.css';

export const metadata: Metadata = { title: 'The board as a square code' };

/** One link to the board as a square code, to scan from the screen or to print and hang up. */
async function BoardSheetPage({ searchParams }: { searchParams: Promise<Search> }) {
  const asked = one((await searchParams).link);
  const screen = await linksScreen('board', clock);
  const link = screen?.links.find(({ id }) => id === asked);
  if (!link) notFound();
  const address = publicOrigin((await headers()).get('host') ?? '') + link.href;
  return (
    <>
      <p className="unprinted">
        <a href="/setup/board">A board for the sales floor</a>
      </p>
      <h1>Which benches to keep out of, now</h1>
      <div className={styles.code}>
        <Square of={squareCode(address)} />
      </div>
      <p className={styles.address}>{address}</p>
      <p className="unprinted">
        <PrintButton />
      </p>
    </>
  );
}

export default doorPage('own', BoardSheetPage);
