import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import type { WrittenShopFile } from '@/shared/shop-file/contract';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK, freshDatabase } from '../data/fresh-database';

/** Two suppliers of Monday to Friday with what they ask of an order, and what they sell. The tests' day is a Tuesday. */
const FILE: WrittenShopFile = {
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal', contact: '555 0100' },
  suppliers: [
    { id: 's', name: 'Supplier', freightPerOrder: '10.00', freeFreightOver: '100.00', minimumOrder: '50.00' },
    { id: 't', name: 'Other' },
  ],
  products: [
    { id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid' },
    { id: 'q', name: '=Sulfur', kind: 'fungicide', form: 'powder' },
  ],
  offers: [
    {
      ...{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00', leadDays: 3, since: '2026-01-05' },
      breaks: [{ atLeast: 3, price: '36.00' }],
    },
    { id: 'big', supplier: 's', product: 'p', pack: '2 L', price: '90.00', leadDays: 5 },
    { id: 'far', supplier: 't', product: 'q', pack: '1 kg', price: '12.50' },
  ],
};

/** That shop with more in it, in a fresh database. Gives its id. */
export async function orderingShop(more: Partial<WrittenShopFile> = {}): Promise<string> {
  await freshDatabase();
  const file = parsedOrThrow({ ...FILE, ...more });
  const outcome = await importShopFile({ commandId: newId(), file, into: { isDemo: false } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value.shopId;
}

/** A lot that came of an order. */
export const lot = (id: string, order: string, receivedOn: string, more: object = {}) => ({
  ...{ id, product: 'p', pack: '500 mL', order, offer: 'o', count: 1, paid: '40.00', receivedOn },
  ...more,
});
