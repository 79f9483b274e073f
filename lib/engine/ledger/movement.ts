import type { Stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';

/** Where stock comes from and goes to. `count` is what a count found missing, or found again. */
export type Side = 'supplier' | 'container' | 'spray' | 'waste' | 'count';

type MovementKind = 'received' | 'drawn' | 'counted' | 'discarded' | 'reversed';

/** One line against a container. The amount is above zero; the two sides say which way it went, so it balances by its shape. */
export type Movement = {
  id: string;
  kind: MovementKind;
  from: Side;
  to: Side;
  amount: Stock;
  /** When it happened, as a person said; the order of a list of movements is the order in which they were recorded. */
  occurredAt: Instant;
  /** The movement that this one takes back. */
  reverses: string | null;
};

/** Whether stock left the container. */
export const isOut = ({ from }: Pick<Movement, 'from'>): boolean => from === 'container';

/** A movement that takes another one back: the same amount the other way, at the same instant. */
export const opposite = (movement: Movement, id: string): Movement => ({
  ...movement,
  id,
  kind: 'reversed',
  from: movement.to,
  to: movement.from,
  reverses: movement.id,
});
