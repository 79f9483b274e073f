import 'server-only';
import type { Clock } from '@/lib/clock';
import { drawFrom } from '@/lib/data/draw-from';
import { type ContainerNamed, findContainer, zoneOf } from '@/lib/data/find-container';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Instant } from '@/shared/time/instant';

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
  const command = { id: commandId, name: 'drawStock', shopId, body, spokenAt: input.drawnAt ?? undefined, actor };

  return write(command, clock.now(), async (rows, stamp) => {
    const faults = heldTo(
      ['amount', PIECES.taken, input.amount],
      ['reason', PIECES.reasonOrNone, input.reason],
      ['drawnAt', PIECES.moment, input.drawnAt],
    );
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const zone = await zoneOf(rows, shopId);
    if (!zone.ok) return zone;
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { amount, drawnAt, reason } = input;
    const drawing = { amount, at: drawnAt ?? stamp.recordedAt, reason: reason ?? undefined };
    const drawn = await drawFrom(rows, stamp, zone.value, container.value, drawing);
    return drawn.ok ? accept({ movement: drawn.value.movement }) : drawn;
  });
}
