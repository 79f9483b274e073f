import 'server-only';
import { account } from '@/lib/engine/ledger/account';
import { rangeFrom } from '@/lib/engine/ledger/balance';
import { setTo, takeOut } from '@/lib/engine/ledger/decide';
import { accept, type Outcome } from '@/shared/outcome';
import { type Micros, minus, plus, type Stock, stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import { dayOf, type Zone } from '@/shared/time/zone';
import { type Changing, changeContainer } from './container-changes';
import type { Rows } from './database';
import { type ContainerStanding, type Recording, recordMovements } from './movements';
import { newId } from './new-id';
import { toMicros } from './whole';
import type { Stamp } from './writer';

/** How much is drawn from a container, when, and what for. */
export type Drawing = {
  amount: Stock;
  at: Instant;
  reason?: string;
  /** Whether it really held that much, where the books have less: it is then first counted up by what is missing. */
  heldMore?: boolean;
  /** Whether it is empty after it: what the books still have in it is then counted away. */
  ranOut?: boolean;
};

/** A container with what was paid for it; null when nobody knows. */
export type PaidContainer = ContainerStanding & { paid: Micros | null };

/** A draw that was decided and is not yet written, and the container as it stands after it. */
export type Drawn<C extends PaidContainer> = {
  recordings: Recording[];
  opening: Changing | null;
  cost: Micros | null;
  after: C;
};

/**
 * Decide a draw from a container for a spray: its movement, that it was opened when this is its first draw, or an earlier
 * one than was known, and what it carried of the container's price.
 *
 * Gives    a cost of null when nobody knows what was paid
 * Refuses  'not-enough-stock'; 'more-than-it-holds'; 'before-received'
 */
export function decideDraw<C extends PaidContainer>(container: C, drawing: Drawing, zone: Zone): Outcome<Drawn<C>> {
  const { lotId, place, paid, openedOn } = container;
  const { amount, at, reason } = drawing;
  const counted = drawing.heldMore ? countUp(container, amount, at) : accept([]);
  if (!counted.ok) return counted;
  const before = counted.value.map(({ movement }) => movement);
  const held = { ...container.ledger, movements: [...container.ledger.movements, ...before] };
  const drawn = takeOut(held, 'spray', amount, { id: newId(), at });
  if (!drawn.ok) return drawn;
  const after = { ...held, movements: [...held.movements, drawn.value] };
  const emptied = drawing.ranOut ? countOut({ lotId, place, ledger: after }, at) : accept([]);
  if (!emptied.ok) return emptied;
  const ledger = { ...held, movements: [...after.movements, ...emptied.value.map(({ movement }) => movement)] };
  const drawnOn = dayOf(zone, at);
  const isFirst = openedOn === null || drawnOn < openedOn;
  return accept({
    recordings: [...counted.value, { lotId, place, movement: drawn.value, reason }, ...emptied.value],
    opening: isFirst ? { lotId, place, kind: 'opened', is: drawnOn, occurredAt: at, reason: 'drawn from' } : null,
    cost: paid === null ? null : (account(paid, after.size, after.movements).carried.at(-1)?.cost ?? null),
    after: { ...container, ledger, openedOn: isFirst ? drawnOn : openedOn },
  });
}

function countUp({ lotId, place, ledger }: ContainerStanding, amount: Stock, at: Instant): Outcome<Recording[]> {
  const { now, least } = rangeFrom(ledger.movements, at);
  if (amount <= least) return accept([]);
  const counted = setTo(ledger, plus(now, minus(amount, least)), { id: newId(), at });
  if (!counted.ok) return counted;
  const reason = 'held more than the books said, found while mixing';
  return accept(counted.value ? [{ lotId, place, movement: counted.value, reason }] : []);
}

/** It ran out: the difference between the books and nothing is a count, and no part of the draw. */
function countOut(
  { lotId, place, ledger }: Pick<ContainerStanding, 'lotId' | 'place' | 'ledger'>,
  at: Instant,
): Outcome<Recording[]> {
  const counted = setTo(ledger, stock(0), { id: newId(), at });
  if (!counted.ok) return counted;
  const reason = 'it ran out while mixing, where the books had more';
  return accept(counted.value ? [{ lotId, place, movement: counted.value, reason }] : []);
}

/**
 * Draw from a container for a spray, as `decideDraw` decides it.
 *
 * Gives    the movement, and what it carried of the container's price; null when nobody knows that
 */
export async function drawFrom(
  rows: Rows,
  stamp: Stamp,
  zone: Zone,
  container: ContainerStanding,
  drawing: Drawing,
): Promise<Outcome<{ movement: string; cost: Micros | null }>> {
  const paid = await paidFor(rows, stamp.shopId, container);
  const drawn = decideDraw({ ...container, paid }, drawing, zone);
  if (!drawn.ok) return drawn;
  const { recordings, opening, cost } = drawn.value;
  if (opening) await changeContainer(rows, stamp, opening);
  await recordMovements(rows, stamp, recordings);
  return accept({ movement: recordings.at(-1)?.movement.id ?? '', cost });
}

async function paidFor(rows: Rows, shopId: string, { lotId, place }: ContainerStanding): Promise<Micros | null> {
  const where = { shopId_lotId_place: { shopId, lotId, place } };
  const { paid } = await rows.container.findUniqueOrThrow({ where, select: { paid: true } });
  return paid === null ? null : toMicros(paid);
}
