import type { SprayingMove } from '@/lib/views/spraying-move';

/** Which spraying somebody takes from the grid, and onto which day they put it. */
export type MoveAsked = { program: string; on: string; day: string };

const EVENT = 'spraying-moved-in-grid';

/** Say that a spraying is to go to another day. The form beside it opens there; nothing is moved before it is sent. */
export const askMove = (asked: MoveAsked): boolean =>
  document.dispatchEvent(new CustomEvent<MoveAsked>(EVENT, { detail: asked }));

/** Hear of it for one spraying. Gives what ends that. */
export function onMoveAsked({ program, on }: Pick<SprayingMove, 'program' | 'on'>, go: (day: string) => void) {
  const hear = (event: Event) => {
    const { detail } = event as CustomEvent<MoveAsked>;
    if (detail.program === program && detail.on === on) go(detail.day);
  };
  document.addEventListener(EVENT, hear);
  return () => document.removeEventListener(EVENT, hear);
}
