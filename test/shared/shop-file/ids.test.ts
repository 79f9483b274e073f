import { expect, test } from 'vitest';
import { parseShopFile } from '@/shared/shop-file/parse';

const SHOP = { name: 'A shop', timeZone: 'UTC', currency: 'USD', fillCapacity: '2 gal' };
const LISTS = {
  suppliers: { name: 'S' },
  products: { name: 'P', kind: 'other', form: 'liquid' },
  offers: { supplier: 's', product: 'p', pack: '1 L', price: '1' },
  lots: { product: 'p', pack: '1 L', receivedOn: '2026-01-01' },
  benches: { name: 'B' },
  recipes: { name: 'R', ingredients: [] },
  programs: { recipes: ['r'], benches: ['b'], startsOn: '2026-01-01', startTime: '08:00', minutes: 10 },
  orders: { supplier: 's', orderedOn: '2026-01-01', lines: [] },
  applications: { recipe: 'r', benches: ['b'], startedAt: '2026-01-01T00:00:00Z' },
};

test.each(Object.entries(LISTS))(
  '"." and ".." are no ids in the list of %s: no address could name them',
  (list, thing) => {
    for (const id of ['.', '..']) {
      const parsed = parseShopFile(
        JSON.stringify({ format: 'bench-and-bottle/shop@1', shop: SHOP, [list]: [{ ...thing, id }] }),
      );
      expect(parsed.ok ? [] : parsed.faults).toContainEqual({
        path: `${list}[0].id`,
        message: expect.stringContaining(`"${id}" cannot be in an address`),
      });
    }
  },
);
