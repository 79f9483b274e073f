import { z } from 'zod';
import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { floorBoard } from '@/lib/views/keep-out-board';
import { accept } from '@/shared/outcome';
import { boardHtml, HOLDS_MS, noBoardHtml } from './board-html';

/** What the sales floor sees: which benches people keep out of, and nothing else of the shop. A plain page, quickly there. */
export const GET = doorRoute({ may: 'link', query: z.looseObject({}), html: true }, async ({ path, nonce }) => {
  const board = await floorBoard(clock, decodeURIComponent(path.split('/')[2] ?? ''));
  if (!board) return accept({ status: 404, html: noBoardHtml({ nonce }) });
  const until = timeAt(board.now + HOLDS_MS, board.zone);
  return accept({ status: 200, html: boardHtml(board, { nonce, until }) });
});

/** The time with its seconds, as the wall clock of the shop shows it. */
const timeAt = (at: number, timeZone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, timeStyle: 'medium' }).format(at);
