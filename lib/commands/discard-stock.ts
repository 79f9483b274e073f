import 'server-only';
import type { Clock } from '@/lib/clock';
import { type ContainerNamed, findContainer } from '@/lib/data/find-container';
import { recordMovements } from '@/lib/data/movements';
import { newId } from '@/lib/data/new-id';
import { write } from '@/lib/data/writer';
import { takeAllOut, takeOut } from '@/lib/engine/ledger/decide';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Instant } from '@/shared/time/instant';

export type DiscardStock = ContainerNamed & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** µL of a liquid, mg of a powder; null for all that is left. */
  amount: Stock | null;
  /** Null for the moment at which this is recorded. */
  discardedAt: Instant | null;
  reason: string;
  /** Whether it goes back to whoever sold it, and not to waste. */
  returned?: boolean;
};

/**
 * Take stock away that will not be used: expired, spilled, spoiled, returned.
 *
 * Refuses  'not-enough-stock', or 'nothing-left' for all of nothing; 'before-received'; 'not-found'
 */
export async function discardStock(input: DiscardStock, clock: Clock): Promise<Outcome<{ movement: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { amount, discardedAt, reason } = input;
  const command = { id: commandId, name: 'discardStock', shopId, body, spokenAt: discardedAt ?? undefined, actor };

  return write(command, clock.now(), async (rows, stamp) => {
    const faults = heldTo(
      ['amount', PIECES.taken, amount],
      ['reason', PIECES.reason, reason],
      ['discardedAt', PIECES.moment, discardedAt],
    );
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { ledger, lotId, place } = container.value;
    const entry = { id: newId(), at: discardedAt ?? stamp.recordedAt };
    const to = input.returned ? 'supplier' : 'waste';
    const movement = amount === null ? takeAllOut(ledger, to, entry) : takeOut(ledger, to, amount, entry);
    if (!movement.ok) return movement;
    await recordMovements(rows, stamp, [{ lotId, place, movement: movement.value, reason }]);
    return accept({ movement: movement.value.id });
  });
}
