import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { floorBoard } from '@/lib/views/keep-out-board';
import { KeepOutBoard } from '../../_parts/keep-out-board';
import { Refreshed } from '../../_parts/refreshed';

export const metadata: Metadata = {
  title: 'Keep-out',
  robots: { index: false, follow: false },
  referrer: 'no-referrer',
};

/** What the sales floor sees: which benches people keep out of, and nothing else of the shop. */
export default async function FloorBoardPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params;
  const board = await floorBoard(clock, token);
  if (!board) notFound();
  return (
    <>
      <Refreshed />
      <h1>{board.shop ?? 'Keep-out'}</h1>
      <KeepOutBoard first={board} from={`/board/now?link=${encodeURIComponent(token)}`}>
        As recorded; the label governs.
      </KeepOutBoard>
    </>
  );
}
