import 'server-only';
import type { Clock } from '@/lib/clock';
import { zoneOf } from '@/lib/data/find-container';
import { newId } from '@/lib/data/new-id';
import { receiveLots } from '@/lib/data/save-lots';
import { productMeasures } from '@/lib/data/shop-facts';
import { write } from '@/lib/data/writer';
import { readSize, stockOf } from '@/shared/measure/size';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';

export type ReceiveLot = {
  commandId: string;
  shopId: string;
  actor?: string;
  product: string;
  /** What one container holds, as it was typed: "1 qt". */
  pack: string;
  count: number;
  /** For all of them together, without freight; null when it is not known. */
  paid: Micros | null;
  receivedOn: Day;
  expiresOn: Day | null;
  /** Where it will stand. */
  keptIn: string | null;
};

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
    const product = await productMeasures(rows, shopId, input.product);
    if (!product) return refuse({ code: 'not-found', what: 'product', id: input.product });
    const size = sizeOf(input.pack, product);
    const faults = [...size.faults, ...countFaults(input.count)];
    if (size.stock === null || faults.length > 0) return refuse({ code: 'faults', faults });
    const { pack, count, paid, receivedOn, expiresOn, keptIn } = input;
    const lot = {
      ...{ id: newId(), position: product.lots, productId: input.product, packText: pack, size: size.stock },
      ...{ form: product.form, count, remaining: size.stock, paid, receivedOn, openedOn: null, expiresOn, keptIn },
    };
    await receiveLots(rows, stamp, zone.value, [lot]);
    return accept({ lot: lot.id });
  });
}

type Measures = NonNullable<Awaited<ReturnType<typeof productMeasures>>>;

function sizeOf(pack: string, product: Measures): { stock: Stock | null; faults: Fault[] } {
  const size = readSize(pack, product.form);
  if (!size.ok) return { stock: null, faults: [{ path: 'pack', message: size.message }] };
  const stock = stockOf(size.value, product);
  if (stock !== null && stock > 0) return { stock, faults: [] };
  return { stock: null, faults: [{ path: 'pack', message: stock === 0 ? NOTHING : MISSING[product.form] }] };
}

const NOTHING = 'A container can hold something. Write its size.';

const MISSING = {
  liquid:
    'This product is a liquid, and its density is not known. Write a volume, such as "1 qt", or enter the density.',
  powder: 'This product is a powder, and what a teaspoon of it weighs is not known. Write a weight, such as "250 g".',
};

const countFaults = (count: number): Fault[] =>
  Number.isInteger(count) && count >= 1 && count <= 10_000
    ? []
    : [{ path: 'count', message: 'Write a whole number of containers, from 1 to 10000.' }];
