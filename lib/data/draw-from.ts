import 'server-only';
import { account } from '@/lib/engine/ledger/account';
import { takeOut } from '@/lib/engine/ledger/decide';
import { accept, type Outcome } from '@/shared/outcome';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import { dayOf, type Zone } from '@/shared/time/zone';
import { changeContainer } from './container-changes';
import type { Rows } from './database';
import { type ContainerStanding, recordMovements } from './movements';
import { newId } from './new-id';
import { toMicros } from './whole';
import type { Stamp } from './writer';

/** How much is drawn from a container, when, and what for. */
export type Drawing = { amount: Stock; at: Instant; applicationId?: string; reason?: string };

/**
 * Draw from a container for a spray, and note that it was opened when this is its first draw, or an earlier one than was
 * known.
 *
 * Gives    the movement, and what it carried of the container's price; null when nobody knows that
 * Refuses  'not-enough-stock'; 'before-received'
 */
export async function drawFrom(
  rows: Rows,
  stamp: Stamp,
  zone: Zone,
  container: ContainerStanding,
  { amount, at, applicationId, reason }: Drawing,
): Promise<Outcome<{ movement: string; cost: Micros | null }>> {
  const { ledger, openedOn, lotId, place } = container;
  const movement = takeOut(ledger, 'spray', amount, { id: newId(), at });
  if (!movement.ok) return movement;
  const drawnOn = dayOf(zone, at);
  if (openedOn === null || drawnOn < openedOn) {
    const opening = { kind: 'opened', is: drawnOn, occurredAt: at, reason: 'drawn from' } as const;
    await changeContainer(rows, stamp, { lotId, place, ...opening });
  }
  await recordMovements(rows, stamp, [{ lotId, place, movement: movement.value, applicationId, reason }]);
  const paid = await paidFor(rows, stamp.shopId, container);
  const carried = paid === null ? null : account(paid, ledger.size, [...ledger.movements, movement.value]).carried;
  return accept({ movement: movement.value.id, cost: carried?.at(-1)?.cost ?? null });
}

async function paidFor(rows: Rows, shopId: string, { lotId, place }: ContainerStanding): Promise<Micros | null> {
  const where = { shopId_lotId_place: { shopId, lotId, place } };
  const { paid } = await rows.container.findUniqueOrThrow({ where, select: { paid: true } });
  return paid === null ? null : toMicros(paid);
}
