import 'server-only';
import type { Clock } from '@/lib/clock';
import { zoneOf } from '@/lib/data/find-container';
import { deliveredLots, type LotIn } from '@/lib/data/lot-in';
import { receiveLots } from '@/lib/data/save-lots';
import { write } from '@/lib/data/writer';
import { accept, type Outcome } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';

export type ReceiveDelivery = { commandId: string; shopId: string; actor?: string; receivedOn: Day; lots: LotIn[] };

/**
 * Put on the shelf what one delivery brought: all of its lots, or none.
 *
 * Gives    the new ids of its lots, in their order
 * Refuses  'faults', each with its path in the delivery ("lots[1].pack"), for what `receiveLot` would refuse, and for a
 *          delivery of nothing
 */
export async function receiveDelivery(input: ReceiveDelivery, clock: Clock): Promise<Outcome<{ lots: string[] }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'receiveDelivery', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const zone = await zoneOf(rows, shopId);
    if (!zone.ok) return zone;
    const lots = await deliveredLots(rows, shopId, input.lots, input.receivedOn);
    if (!lots.ok) return lots;
    await receiveLots(rows, stamp, zone.value, lots.value);
    return accept({ lots: lots.value.map(({ id }) => id) });
  });
}
