import 'server-only';
import { readStock } from '@/shared/measure/read-stock';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { Micros } from '@/shared/quantity/amounts';
import { MOST_CONTAINERS } from '@/shared/shop-file/check-stock';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Day } from '@/shared/time/day';
import type { Rows } from './database';
import { newId } from './new-id';
import type { ReceivedLot } from './save-lots';
import { productMeasures } from './shop-facts';

/** So many containers of one product that come in together. */
export type LotIn = {
  product: string;
  /** What one container holds, as it was typed: "1 qt". */
  pack: string;
  count: number;
  /** For all of them together, without freight; null when it is not known. */
  paid: Micros | null;
  expiresOn: Day | null;
  /** Where it will stand. */
  keptIn: string | null;
};

/**
 * A lot as it will stand on the shelf, with a new id, after all that the shop has.
 *
 * Refuses  'not-found' for the product; 'faults' for a pack that cannot be read or measured, or a count of none
 */
export async function lotReceived(rows: Rows, shopId: string, lot: LotIn, on: Day): Promise<Outcome<ReceivedLot>> {
  const product = await productMeasures(rows, shopId, lot.product);
  if (!product) return refuse({ code: 'not-found', what: 'product', id: lot.product });
  const size = readStock(lot.pack, product);
  const faults = firstOfEach([
    ...(size.ok ? [] : [{ path: 'pack', message: size.message }]),
    ...lotFaults(lot, on),
    ...(await shelfFaults(rows, shopId, lot.count)),
  ]);
  if (!size.ok || faults.length > 0) return refuse({ code: 'faults', faults });
  const { pack, count, paid, expiresOn, keptIn } = lot;
  return accept({
    ...{ id: newId(), position: product.lots, productId: lot.product, packText: pack, size: size.value },
    ...{ form: product.form, count, remaining: size.value, paid, receivedOn: on, openedOn: null, expiresOn, keptIn },
    ...{ order: null, offer: null },
  });
}

/**
 * The lots of one delivery, each after the one before it.
 *
 * Refuses  'faults', each with its path in the delivery ("lots[1].pack"), for what `lotReceived` refuses, and for a
 *          delivery of nothing; 'not-found' for a product
 */
export async function deliveredLots(
  rows: Rows,
  shopId: string,
  lots: readonly LotIn[],
  on: Day,
): Promise<Outcome<ReceivedLot[]>> {
  if (lots.length === 0) return refuse({ code: 'faults', faults: [{ path: 'lots', message: NOTHING }] });
  const faults: Fault[] = [];
  const delivered: ReceivedLot[] = [];
  for (const [number, lot] of lots.entries()) {
    const received = await lotReceived(rows, shopId, lot, on);
    if (received.ok) delivered.push({ ...received.value, position: received.value.position + number });
    else if (received.refusal.code !== 'faults') return received;
    else faults.push(...received.refusal.faults.map((fault) => inLot(number, fault)));
  }
  const together = lots.reduce((sum, { count }) => sum + count, 0);
  if (faults.length === 0) faults.push(...(await shelfFaults(rows, shopId, together)).map((fault) => inLot(0, fault)));
  return faults.length > 0 ? refuse({ code: 'faults', faults }) : accept(delivered);
}

const inLot = (number: number, { path, message }: Fault): Fault => ({ path: `lots[${number}].${path}`, message });

const NOTHING = 'Nothing is counted yet. Write beside each pack how many came.';

/** One fault for each place: the first, which knows the product. */
const firstOfEach = (faults: Fault[]): Fault[] =>
  faults.filter(({ path }, at) => faults.findIndex((one) => one.path === path) === at);

/** A shelf of more containers than a shop file may hold could be exported and never brought in again. */
async function shelfFaults(rows: Rows, shopId: string, count: number): Promise<Fault[]> {
  const { _sum } = await rows.lot.aggregate({ where: { shopId }, _sum: { count: true } });
  if ((_sum.count ?? 0) + count <= MOST_CONTAINERS) return [];
  return [{ path: 'count', message: `No shelf holds more than ${MOST_CONTAINERS} containers. Write fewer.` }];
}

/** What the contract of the shop file would refuse of a lot. */
const lotFaults = ({ pack, count, expiresOn, keptIn }: LotIn, receivedOn: Day): Fault[] => [
  ...countFaults(count),
  ...heldTo(
    ['pack', PIECES.lot.pack, pack],
    ['expiresOn', PIECES.lot.expiresOn, expiresOn],
    ['keptIn', PIECES.lot.keptIn, keptIn],
    ['receivedOn', PIECES.lot.receivedOn, receivedOn],
  ),
];

const countFaults = (count: number): Fault[] =>
  Number.isInteger(count) && count >= 1 && count <= 10_000
    ? []
    : [{ path: 'count', message: 'Write a whole number of containers, from 1 to 10000.' }];
