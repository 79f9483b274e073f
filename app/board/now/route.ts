import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { floorBoard } from '@/lib/views/keep-out-board';
import { LinkQuestion } from '@/shared/api/questions';
import { accept, refuse } from '@/shared/outcome';

/** The board behind a secret link as it stands now: states, and nothing else. */
export const GET = doorRoute({ query: LinkQuestion }, async ({ query: { link } }) => {
  const board = await floorBoard(clock, link);
  return board ? accept(board) : refuse({ code: 'not-found', what: 'board', id: '' });
});
