import 'server-only';
import type { Clock } from '@/lib/clock';
import { type ContainerNamed, findContainer } from '@/lib/data/find-container';
import { recordMovements } from '@/lib/data/movements';
import { newId } from '@/lib/data/new-id';
import { write } from '@/lib/data/writer';
import { takeOut } from '@/lib/engine/ledger/decide';
import { accept, type Outcome } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';

export type DiscardStock = ContainerNamed & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** µL of a liquid, mg of a powder. */
  amount: Stock;
  discardedAt: Instant;
  reason: string;
};

/**
 * Take stock away that will not be used: expired, spilled, spoiled.
 *
 * Refuses  'not-enough-stock'; 'before-received'; 'not-found'
 */
export async function discardStock(input: DiscardStock, clock: Clock): Promise<Outcome<{ movement: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { amount, discardedAt, reason } = input;
  const command = { id: commandId, name: 'discardStock', shopId, body, spokenAt: discardedAt, actor };

  return write(command, clock.now(), async (rows, stamp) => {
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { ledger, lotId, place } = container.value;
    const movement = takeOut(ledger, 'waste', amount, { id: newId(), at: discardedAt });
    if (!movement.ok) return movement;
    await recordMovements(rows, stamp, [{ lotId, place, movement: movement.value, reason }]);
    return accept({ movement: movement.value.id });
  });
}
