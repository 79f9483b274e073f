import { accept, type Outcome, refuse } from '@/shared/outcome';
import { minus, plus, type Stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { holdsTogether, rangeFrom } from './balance';
import { type Movement, opposite } from './movement';

/** A container as the ledger knows it: its movements are in the order in which they were recorded. */
export type Ledgered = {
  form: 'liquid' | 'powder';
  size: Stock;
  receivedOn: Day;
  movements: readonly Movement[];
};

/** A movement to be recorded: its id, and when it happened. */
export type Entry = { id: string; at: Instant };

/** Where stock goes when it leaves: sprayed, thrown away, or back to whoever sold it. */
export type Leaving = 'spray' | 'waste' | 'supplier';

/**
 * Take stock out of a container, into a spray or away.
 *
 * Takes    the container, where the stock goes and how much of it, and the entry
 * Refuses  'before-received'; 'not-enough-stock' when more is wanted than it held at that instant or holds since then
 * Throws   RangeError for an amount of nothing, which moves nothing
 */
export function takeOut(from: Ledgered, to: Leaving, amount: Stock, entry: Entry): Outcome<Movement> {
  if (!(amount > 0)) throw new RangeError(`ledger: ${amount} is nothing to take`);
  if (isBeforeReceipt(from, entry)) return refuse({ code: 'before-received', receivedOn: from.receivedOn });
  const { least } = rangeFrom(from.movements, entry.at);
  if (amount > least) return refuse({ code: 'not-enough-stock', wanted: amount, left: least, unit: unitOf(from) });
  const kind = to === 'spray' ? 'drawn' : 'discarded';
  return accept({ ...entryOf(entry), kind, from: 'container', to, amount });
}

/**
 * Take away all that a container holds.
 *
 * Refuses  'before-received'; 'nothing-left'
 */
export function takeAllOut(from: Ledgered, to: Leaving, entry: Entry): Outcome<Movement> {
  if (isBeforeReceipt(from, entry)) return refuse({ code: 'before-received', receivedOn: from.receivedOn });
  const { least } = rangeFrom(from.movements, entry.at);
  return least > 0 ? takeOut(from, to, least, entry) : refuse({ code: 'nothing-left' });
}

/**
 * Set a container to what a person found in it. The movement is the difference to what the ledger says for that instant.
 *
 * Gives    null when they agree, since nothing moved
 * Refuses  'before-received'; 'more-than-it-holds'; 'not-enough-stock' when what was entered for later would no longer
 *          have been there
 */
export function setTo(container: Ledgered, found: Stock, entry: Entry): Outcome<Movement | null> {
  if (isBeforeReceipt(container, entry)) return refuse({ code: 'before-received', receivedOn: container.receivedOn });
  const { now, least, most } = rangeFrom(container.movements, entry.at);
  if (found === now) return accept(null);
  if (found > now) {
    const more = minus(found, now);
    const room = minus(container.size, most);
    if (more > room) return refuse({ code: 'more-than-it-holds', most: plus(now, room), unit: unitOf(container) });
    return accept({ ...entryOf(entry), kind: 'counted', from: 'count', to: 'container', amount: more });
  }
  const less = minus(now, found);
  if (less > least) return refuse({ code: 'not-enough-stock', wanted: less, left: least, unit: unitOf(container) });
  return accept({ ...entryOf(entry), kind: 'counted', from: 'container', to: 'count', amount: less });
}

/**
 * Take a movement back. Nothing is erased: the opposite movement is recorded beside it.
 *
 * Refuses  'not-found'; 'already-reversed', also for a movement that itself takes one back;
 *          'others-stand-on-it' when later ones used what it brought
 */
export function takeBack(container: Ledgered, movementId: string, id: string): Outcome<Movement> {
  const movement = container.movements.find((one) => one.id === movementId);
  if (!movement) return refuse({ code: 'not-found', what: 'movement', id: movementId });
  if (movement.reverses !== null || container.movements.some(({ reverses }) => reverses === movementId)) {
    return refuse({ code: 'already-reversed', movement: movementId });
  }
  const back = opposite(movement, id);
  if (!holdsTogether([...container.movements, back], container.size)) {
    return refuse({ code: 'others-stand-on-it', movement: movementId });
  }
  return accept(back);
}

/** Whether something was drawn from a container that was not taken back, so that it must have been open. */
export const wasDrawnFrom = (movements: readonly Movement[]): boolean =>
  movements.some(({ id, kind }) => kind === 'drawn' && !movements.some(({ reverses }) => reverses === id));

/** What a container is measured in. */
export const unitOf = ({ form }: Pick<Ledgered, 'form'>): 'mL' | 'g' => (form === 'liquid' ? 'mL' : 'g');

/** The first movement of a container: the supplier filled it. */
export const receipt = (size: Stock, entry: Entry): Movement => ({
  ...entryOf(entry),
  kind: 'received',
  from: 'supplier',
  to: 'container',
  amount: size,
});

const entryOf = ({ id, at }: Entry) => ({ id, occurredAt: at, reverses: null });

const isBeforeReceipt = ({ movements }: Ledgered, { at }: Entry): boolean =>
  movements.some(({ kind, occurredAt }) => kind === 'received' && at < occurredAt);
