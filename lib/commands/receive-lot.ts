import 'server-only';
import type { Clock } from '@/lib/clock';
import { zoneOf } from '@/lib/data/find-container';
import { type LotIn, lotReceived } from '@/lib/data/lot-in';
import { receiveLots } from '@/lib/data/save-lots';
import { write } from '@/lib/data/writer';
import { accept, type Outcome } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';

export type ReceiveLot = LotIn & { commandId: string; shopId: string; actor?: string; receivedOn: Day };

/**
 * Put a lot on the shelf: so many full, unopened containers that came together.
 *
 * Gives    the lot's new id
 * Refuses  'not-found' for the product; 'faults' for a pack that cannot be read or measured, or a count of none
 */
export async function receiveLot(input: ReceiveLot, clock: Clock): Promise<Outcome<{ lot: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'receiveLot', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const zone = await zoneOf(rows, shopId);
    if (!zone.ok) return zone;
    const lot = await lotReceived(rows, shopId, input, input.receivedOn);
    if (!lot.ok) return lot;
    await receiveLots(rows, stamp, zone.value, [lot.value]);
    return accept({ lot: lot.value.id });
  });
}
