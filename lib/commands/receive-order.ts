import 'server-only';
import type { Clock } from '@/lib/clock';
import { zoneOf } from '@/lib/data/find-container';
import { deliveredLots } from '@/lib/data/lot-in';
import { receiveLots } from '@/lib/data/save-lots';
import { savePart } from '@/lib/data/save-part';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { write } from '@/lib/data/writer';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { Micros } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { cameByLine } from '@/shared/shop-file/packs-came';
import type { Day } from '@/shared/time/day';

/** Packs of one line of an order that came: how many, what was paid for them, and the last day printed on them. */
export type CameIn = {
  offer: string;
  count: number;
  paid: Micros | null;
  expiresOn: Day | null;
  keptIn: string | null;
};

export type ReceiveOrder = {
  commandId: string;
  shopId: string;
  actor?: string;
  order: string;
  receivedOn: Day;
  came: CameIn[];
  /** Whether the rest, if there is one, will not come any more. */
  restIsOff: boolean;
};

/**
 * Put on the shelf what came of an order, all of it or nothing. What is missing stays expected, unless it is said that it
 * will not come; an order of which nothing more is expected is closed on the day of the delivery.
 *
 * Gives    the new ids of the lots, in the order of what came, and how many packs are still expected
 * Refuses  'not-found'; 'faults', each with its path ("lots[1].count"): for what is no line of this order, for a delivery
 *          before the order or after today, and for what `receiveDelivery` refuses
 */
export async function receiveOrder(
  input: ReceiveOrder,
  clock: Clock,
): Promise<Outcome<{ lots: string[]; expected: number }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'receiveOrder', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const zone = await zoneOf(rows, shopId);
    if (!zone.ok) return zone;
    const file = await shopInWrite(rows, shopId);
    const order = file?.orders.find(({ id }) => id === input.order);
    if (!file || !order) return refuse({ code: 'not-found', what: 'order', id: input.order });
    const faults = faultsOf(input, file, order, clock.today(zone.value));
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const lots = await deliveredLots(rows, shopId, lotsOf(input, file), input.receivedOn);
    if (!lots.ok) return lots;
    const named = lots.value.map((lot, at) => ({ ...lot, order: order.id, offer: input.came[at]?.offer ?? null }));
    await receiveLots(rows, stamp, zone.value, named);
    const expected = input.restIsOff ? 0 : stillExpected(input, file, order);
    if (expected === 0 && order.closedOn === null) {
      const closed = await savePart(rows, stamp, await standing(rows, shopId, file), {
        orders: [{ ...order, closedOn: input.receivedOn }],
      });
      if (!closed.ok) return closed;
    }
    return accept({ lots: named.map(({ id }) => id), expected });
  });
}

type Rows = Parameters<typeof shopInWrite>[0];

/** The shop with what has just come. */
const standing = async (rows: Rows, shopId: string, before: ShopFile): Promise<ShopFile> =>
  (await shopInWrite(rows, shopId)) ?? before;

type FileOrder = ShopFile['orders'][number];

function faultsOf({ came, receivedOn }: ReceiveOrder, file: ShopFile, order: FileOrder, today: Day): Fault[] {
  const faults: Fault[] = [];
  if (receivedOn > today) faults.push({ path: 'receivedOn', message: NOT_YET });
  if (receivedOn < order.placedOn) {
    faults.push({ path: 'receivedOn', message: `It was ordered on ${order.placedOn}. Give that day or a later one.` });
  }
  for (const [number, { offer }] of came.entries()) {
    const isOnIt = order.lines.some((line) => line.offer === offer) && file.offers.some(({ id }) => id === offer);
    if (!isOnIt) faults.push({ path: `lots[${number}].count`, message: 'This is not on the order. Reload the page.' });
  }
  return faults;
}

const NOT_YET = 'That day is still to come. What has not come yet stays expected.';

const lotsOf = ({ came }: ReceiveOrder, { offers }: ShopFile) =>
  came.flatMap(({ offer, ...lot }) => {
    const sold = offers.find(({ id }) => id === offer);
    return sold ? [{ ...lot, product: sold.product, pack: sold.pack }] : [];
  });

/** Packs that have not come, counting those that come now. */
function stillExpected({ came }: ReceiveOrder, { lots }: ShopFile, order: FileOrder): number {
  const now = came.map(({ offer, count }) => ({ order: order.id, offer, count }));
  const received = cameByLine([...lots, ...now], order);
  return order.lines.reduce((sum, { count }, place) => sum + Math.max(count - (received[place] ?? 0), 0), 0);
}
