import 'server-only';
import type { Clock } from '@/lib/clock';
import type { Rows } from '@/lib/data/database';
import { zoneOf } from '@/lib/data/find-container';
import { newId } from '@/lib/data/new-id';
import { type ReceivedLot, receiveLots } from '@/lib/data/save-lots';
import { productMeasures } from '@/lib/data/shop-facts';
import { write } from '@/lib/data/writer';
import { readStock } from '@/shared/measure/read-stock';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { Micros } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';

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

/**
 * A lot as it will stand on the shelf, with a new id, after all that the shop has.
 *
 * Refuses  as `receiveLot` does
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
  });
}

const countFaults = (count: number): Fault[] =>
  Number.isInteger(count) && count >= 1 && count <= 10_000
    ? []
    : [{ path: 'count', message: 'Write a whole number of containers, from 1 to 10000.' }];
