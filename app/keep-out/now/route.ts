import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { keepOutBoard } from '@/lib/views/keep-out-board';
import { NoQuestion } from '@/shared/api/questions';
import { accept, refuse } from '@/shared/outcome';

/** The board as it stands now, for a page that shows it already. Never stored anywhere. */
export const GET = doorRoute({ may: 'see-board', query: NoQuestion }, async () => {
  const board = await keepOutBoard(clock);
  return board ? accept(board) : refuse({ code: 'not-found', what: 'shop', id: '' });
});
