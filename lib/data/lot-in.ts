import 'server-only';
import { readStock } from '@/shared/measure/read-stock';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { Micros } from '@/shared/quantity/amounts';
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
  const faults = [...(size.ok ? [] : [{ path: 'pack', message: size.message }]), ...countFaults(lot.count)];
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
  return faults.length > 0 ? refuse({ code: 'faults', faults }) : accept(delivered);
}

const inLot = (number: number, { path, message }: Fault): Fault => ({ path: `lots[${number}].${path}`, message });

const NOTHING = 'Nothing is counted yet. Write beside each pack how many came.';

const countFaults = (count: number): Fault[] =>
  Number.isInteger(count) && count >= 1 && count <= 10_000
    ? []
    : [{ path: 'count', message: 'Write a whole number of containers, from 1 to 10000.' }];
