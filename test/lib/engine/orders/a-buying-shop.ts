import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { WrittenShopFile } from '@/shared/shop-file/contract';
import { parsedOrThrow } from '../../data/any-shop-file';

/** A shop with one supplier of Monday to Friday and two packs of one soap, with orders and lots as they are given. */
export function buyingShop(more: Partial<WrittenShopFile>): Shop {
  return shopOfFile(
    parsedOrThrow({
      format: 'bench-and-bottle/shop@1',
      shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
      suppliers: [{ id: 's', name: 'Supplier', freightPerOrder: '10.00', freeFreightOver: '100.00' }],
      products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid' }],
      offers: [
        {
          ...{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00', leadDays: 3, since: '2026-01-05' },
          breaks: [{ atLeast: 3, price: '36.00' }],
        },
        { id: 'big', supplier: 's', product: 'p', pack: '2 L', price: '90.00', leadDays: 5 },
      ],
      ...more,
    }),
  );
}
