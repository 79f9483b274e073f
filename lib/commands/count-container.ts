import 'server-only';
import type { Clock } from '@/lib/clock';
import { type ContainerNamed, findContainer } from '@/lib/data/find-container';
import { recordMovements } from '@/lib/data/movements';
import { newId } from '@/lib/data/new-id';
import { write } from '@/lib/data/writer';
import { balance, rangeFrom } from '@/lib/engine/ledger/balance';
import { setTo, unitOf } from '@/lib/engine/ledger/decide';
import { needsReason } from '@/shared/measure/level';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Instant } from '@/shared/time/instant';

export type CountContainer = ContainerNamed & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** What was found in it: µL of a liquid, mg of a powder. */
  found: Stock;
  /** When it was looked at; null for the moment at which this is recorded. */
  countedAt: Instant | null;
  /** What may have become of the difference: 'evaporated', 'spilled'. */
  reason: string | null;
  /** How many movements the ledger had when the person looked; left out, nobody looked at it before. */
  seen?: number;
};

/**
 * Set a container to what a person found in it.
 *
 * Gives    the movement that makes up the difference; null when the books already said so
 * Refuses  'ledger-moved' when something was drawn, counted or thrown away since the person looked, because it is not
 *          known which came first; 'faults' without a reason for more than 5 % of the pack; 'more-than-it-holds';
 *          'not-enough-stock' when later draws would lack it; 'before-received'; 'not-found'
 */
export async function countContainer(
  input: CountContainer,
  clock: Clock,
): Promise<Outcome<{ movement: string | null }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { found, countedAt, seen } = input;
  const command = { id: commandId, name: 'countContainer', shopId, body, spokenAt: countedAt ?? undefined, actor };

  return write<{ movement: string | null }>(command, clock.now(), async (rows, stamp) => {
    const faults = heldTo(
      ['reason', PIECES.reasonOrNone, input.reason?.trim() || null],
      ['countedAt', PIECES.moment, countedAt],
    );
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { ledger, lotId, place } = container.value;
    if (seen !== undefined && seen !== ledger.movements.length) {
      return refuse({ code: 'ledger-moved', left: balance(ledger.movements), unit: unitOf(ledger) });
    }
    const at = countedAt ?? stamp.recordedAt;
    const counted = setTo(ledger, found, { id: newId(), at });
    if (!counted.ok) return counted;
    if (counted.value === null) return accept({ movement: null });
    const reason = input.reason?.trim() || undefined;
    const told = rangeFrom(ledger.movements, at).now;
    if (reason === undefined && needsReason(found, told, ledger.size)) {
      return refuse({ code: 'faults', faults: [{ path: 'reason', message: WHY }] });
    }
    await recordMovements(rows, stamp, [{ lotId, place, movement: counted.value, reason }]);
    return accept({ movement: counted.value.id });
  });
}

const WHY =
  'That is more than 5 % of the bottle away from the ledger. Say what may have become of it: spilled, miscounted.';
