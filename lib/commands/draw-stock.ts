import 'server-only';
import type { Clock } from '@/lib/clock';
import { changeContainer } from '@/lib/data/container-changes';
import { type ContainerNamed, findContainer, zoneOf } from '@/lib/data/find-container';
import { recordMovements } from '@/lib/data/movements';
import { newId } from '@/lib/data/new-id';
import { write } from '@/lib/data/writer';
import { takeOut } from '@/lib/engine/ledger/decide';
import { accept, type Outcome } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';

export type DrawStock = ContainerNamed & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** µL of a liquid, mg of a powder. */
  amount: Stock;
  /** Null for the moment at which this is recorded. */
  drawnAt: Instant | null;
  /** What it was for, when no spraying says so. */
  reason?: string | null;
};

/**
 * Draw from a container for a spray. The first draw opens it; one that is entered late and was earlier opens it earlier.
 *
 * Refuses  'not-enough-stock'; 'before-received'; 'not-found'
 */
export async function drawStock(input: DrawStock, clock: Clock): Promise<Outcome<{ movement: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { amount } = input;
  const command = { id: commandId, name: 'drawStock', shopId, body, spokenAt: input.drawnAt ?? undefined, actor };

  return write(command, clock.now(), async (rows, stamp) => {
    const zone = await zoneOf(rows, shopId);
    if (!zone.ok) return zone;
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { ledger, openedOn, lotId, place } = container.value;
    const drawnAt = input.drawnAt ?? stamp.recordedAt;
    const movement = takeOut(ledger, 'spray', amount, { id: newId(), at: drawnAt });
    if (!movement.ok) return movement;
    const drawnOn = dayOf(zone.value, drawnAt);
    if (openedOn === null || drawnOn < openedOn) {
      const opening = { kind: 'opened', is: drawnOn, occurredAt: drawnAt, reason: 'drawn from' } as const;
      await changeContainer(rows, stamp, { lotId, place, ...opening });
    }
    const reason = input.reason ?? undefined;
    await recordMovements(rows, stamp, [{ lotId, place, movement: movement.value, reason }]);
    return accept({ movement: movement.value.id });
  });
}
