import { dayNumber } from '@/shared/time/day';
import type { Container } from '../shop';
import { lastUsableDayNumber } from './last-usable-day';

/** What decides a container's turn. Days are day numbers; a last day that is not known is +∞. */
export type Turn = { lastDay: number; opened: boolean; received: number; lot: string; place: number };

/** A container's turn as it stands. */
export const turnOf = (container: Container): Turn => ({
  lastDay: lastUsableDayNumber(container),
  opened: container.openedOn !== null,
  received: dayNumber(container.receivedOn),
  lot: container.lot,
  place: container.place,
});

/**
 * Which of two containers of a product is drawn first: the one that dies first; then an opened one; then the one that
 * was received earlier; then by lot and place, so that the answer is always the same.
 *
 * Gives    a negative number when `a` comes first, for sorting
 */
export function drawnBefore(a: Turn, b: Turn): number {
  if (a.lastDay !== b.lastDay) return a.lastDay < b.lastDay ? -1 : 1;
  if (a.opened !== b.opened) return a.opened ? -1 : 1;
  if (a.received !== b.received) return a.received - b.received;
  if (a.lot !== b.lot) return a.lot < b.lot ? -1 : 1;
  return a.place - b.place;
}

/** Containers in the order in which they are drawn, as they stand. */
export const inDrawOrder = (containers: readonly Container[]): Container[] =>
  containers
    .map((container) => ({ container, turn: turnOf(container) }))
    .sort((a, b) => drawnBefore(a.turn, b.turn))
    .map(({ container }) => container);
