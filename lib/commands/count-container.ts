import 'server-only';
import type { Clock } from '@/lib/clock';
import { type ContainerNamed, findContainer } from '@/lib/data/find-container';
import { recordMovements } from '@/lib/data/movements';
import { newId } from '@/lib/data/new-id';
import { write } from '@/lib/data/writer';
import { setTo } from '@/lib/engine/ledger/decide';
import { accept, type Outcome } from '@/shared/outcome';
import type { Stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';

export type CountContainer = ContainerNamed & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** What was found in it: µL of a liquid, mg of a powder. */
  found: Stock;
  countedAt: Instant;
  reason: string | null;
};

/**
 * Set a container to what a person found in it.
 *
 * Gives    the movement that makes up the difference; null when the books already said so
 * Refuses  'more-than-it-holds'; 'not-enough-stock' when later draws would lack it; 'before-received'; 'not-found'
 */
export async function countContainer(
  input: CountContainer,
  clock: Clock,
): Promise<Outcome<{ movement: string | null }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { found, countedAt } = input;
  const command = { id: commandId, name: 'countContainer', shopId, body, spokenAt: countedAt, actor };

  return write<{ movement: string | null }>(command, clock.now(), async (rows, stamp) => {
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { ledger, lotId, place } = container.value;
    const counted = setTo(ledger, found, { id: newId(), at: countedAt });
    if (!counted.ok) return counted;
    if (counted.value === null) return accept({ movement: null });
    const reason = input.reason ?? undefined;
    await recordMovements(rows, stamp, [{ lotId, place, movement: counted.value, reason }]);
    return accept({ movement: counted.value.id });
  });
}
