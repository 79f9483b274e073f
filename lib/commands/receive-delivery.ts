import 'server-only';
import type { Clock } from '@/lib/clock';
import { zoneOf } from '@/lib/data/find-container';
import { type LotIn, lotReceived } from '@/lib/data/lot-in';
import { type ReceivedLot, receiveLots } from '@/lib/data/save-lots';
import { write } from '@/lib/data/writer';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
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
    if (input.lots.length === 0) return refuse({ code: 'faults', faults: [{ path: 'lots', message: NOTHING }] });
    const faults: Fault[] = [];
    const lots: ReceivedLot[] = [];
    for (const [number, lot] of input.lots.entries()) {
      const received = await lotReceived(rows, shopId, lot, input.receivedOn);
      if (received.ok) lots.push({ ...received.value, position: received.value.position + number });
      else if (received.refusal.code !== 'faults') return received;
      else faults.push(...received.refusal.faults.map((fault) => inLot(number, fault)));
    }
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    await receiveLots(rows, stamp, zone.value, lots);
    return accept({ lots: lots.map(({ id }) => id) });
  });
}

const inLot = (number: number, { path, message }: Fault): Fault => ({ path: `lots[${number}].${path}`, message });

const NOTHING = 'Nothing is counted yet. Write beside each pack how many came.';
