import 'server-only';
import type { Clock } from '@/lib/clock';
import { containerOfMovement } from '@/lib/data/find-container';
import { recordMovements } from '@/lib/data/movements';
import { newId } from '@/lib/data/new-id';
import { write } from '@/lib/data/writer';
import { takeBack } from '@/lib/engine/ledger/decide';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';

export type ReverseMovement = { commandId: string; shopId: string; actor?: string; movement: string; reason: string };

/**
 * Take a line of the ledger back: the opposite line is recorded beside it, with the reason.
 *
 * Refuses  'already-reversed'; 'others-stand-on-it' when later lines used what it brought; 'not-found'
 */
export async function reverseMovement(input: ReverseMovement, clock: Clock): Promise<Outcome<{ movement: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { movement: id, reason } = input;
  return write({ id: commandId, name: 'reverseMovement', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(['reason', PIECES.reason, reason]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const container = await containerOfMovement(rows, shopId, id);
    if (!container.ok) return container;
    const { ledger, lotId, place } = container.value;
    const back = takeBack(ledger, id, newId());
    if (!back.ok) return back;
    await recordMovements(rows, stamp, [{ lotId, place, movement: back.value, reason }]);
    return accept({ movement: back.value.id });
  });
}
