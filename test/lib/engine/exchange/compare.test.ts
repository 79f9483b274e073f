import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonical } from '@/lib/engine/exchange/canonical';
import { COLLECTIONS, compare, merged } from '@/lib/engine/exchange/compare';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { runs } from '@/test/runs';
import { anyShopFile, parsedOrThrow } from '../../data/any-shop-file';

const FILE = parsedOrThrow({
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
  suppliers: [{ id: 's', name: 'Supplier', freightPerOrder: '12' }],
  products: [
    { id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', densityGPerMl: 1.02, label: { reiHours: 12 } },
    { id: 'q', name: 'Sulfur', kind: 'fungicide', form: 'powder' },
  ],
  offers: [{ id: 'o', supplier: 's', product: 'p', pack: '1 qt', price: '40.00', leadDays: 3 }],
  lots: [
    {
      id: 'l',
      product: 'p',
      pack: '1 qt',
      remaining: '600 mL',
      paid: '74.00',
      receivedOn: '2026-02-02',
      openedOn: '2026-02-10',
    },
    { id: 'm', product: 'p', pack: '1 lb', count: 3, paid: null, receivedOn: '2026-02-02' },
  ],
  benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 12, mlPerPlant: 18 }] }],
  recipes: [{ id: 'r', name: 'Recipe', ingredients: [{ product: 'p', dose: '12 mL/gal' }] }],
  programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-03', startTime: '17:30', minutes: 45 }],
  applications: [
    { id: 'a', recipe: 'r', benches: ['b'], startedAt: '2026-02-24T22:30:00Z', endedAt: '2026-02-24T23:10:00Z' },
  ],
});

/** The file with something else in it. */
const changed = (change: (file: ShopFile) => void): ShopFile => {
  const copy = structuredClone(FILE);
  change(copy);
  return copy;
};

/** The first of a list that has one. */
const first = <T>([item]: T[]): T => {
  if (item === undefined) throw new Error('nothing there');
  return item;
};

const faultPaths = (file: ShopFile, current = FILE) => compare(current, file).faults.map(({ path }) => path);

test('into a new shop, everything is added', () => {
  const { collections, settings, faults } = compare(null, FILE);
  expect(COLLECTIONS.map((name) => collections[name].added.length)).toEqual([1, 2, 1, 2, 1, 1, 1, 1, 0]);
  expect({ settings, faults }).toEqual({ settings: [], faults: [] });
});

test('the same shop changes nothing, however its amounts are written', () => {
  const same = changed((file) => {
    first(file.suppliers).freightPerOrder = '12.000';
    first(file.lots).remaining = '0.6 L';
    first(file.applications).startedAt = '2026-02-24T23:30:00+01:00';
  });
  const { collections, settings, faults } = compare(FILE, same);
  for (const name of COLLECTIONS) expect(collections[name]).toMatchObject({ added: [], changed: [], leftAlone: [] });
  expect({ settings, faults }).toEqual({ settings: [], faults: [] });
});

test('a change is told by its field, from what and to what', () => {
  const other = changed((file) => {
    file.shop.safetyDays = 5;
    first(file.products).label.reiHours = 24;
    first(file.lots).remaining = null;
    file.benches.push({ ...first(file.benches), id: 'c', name: 'Another bench' });
    file.offers = [];
  });
  const { collections, settings, faults } = compare(FILE, other);
  expect(faults).toEqual([]);
  expect(settings).toEqual([{ field: 'safetyDays', from: 0, to: 5 }]);
  expect(first(collections.products.changed).fields).toEqual([{ field: 'label.reiHours', from: 12, to: 24 }]);
  expect(first(collections.lots.changed).fields).toEqual([{ field: 'remaining', from: '600 mL', to: null }]);
  expect(collections.benches.added).toEqual([{ id: 'c', name: 'Another bench' }]);
  expect(collections.offers).toEqual({ added: [], changed: [], unchanged: [], leftAlone: [{ id: 'o', name: null }] });
});

test.each([
  {
    what: 'product',
    change: { product: 'q', pack: '1 lb', remaining: null },
    paths: ['lots[0].product', 'lots[0].pack'],
  },
  { what: 'pack', change: { pack: '1 gal' }, paths: ['lots[0].pack'] },
  { what: 'price', change: { paid: '75.00' }, paths: ['lots[0].paid'] },
  { what: 'price, forgotten', change: { paid: null }, paths: ['lots[0].paid'] },
  { what: 'day it came', change: { receivedOn: '2026-02-03' }, paths: ['lots[0].receivedOn'] },
  { what: 'count', change: { count: 2, remaining: null, openedOn: null }, paths: ['lots[0].count'] },
])('what was received is not rewritten by a file: $what', ({ change, paths }) => {
  expect(faultPaths(changed((file) => Object.assign(first(file.lots), change)))).toEqual(paths);
});

test('days on a lot, what is left in it, and a price nobody knew may be written', () => {
  const file = changed(({ lots }) => {
    Object.assign(first(lots), { openedOn: '2026-02-11', expiresOn: '2027-01-01', remaining: '0 mL' });
    Object.assign(lots[1] ?? {}, { paid: '30.00' });
  });
  expect(faultPaths(file)).toEqual([]);
});

test('a product keeps its form, and a density that its lots were measured by', () => {
  expect(faultPaths(changed((file) => Object.assign(first(file.products), { densityGPerMl: 1.5 })))).toEqual([
    'products[0].densityGPerMl',
  ]);
  const form = changed((file) => {
    Object.assign(file.products[1] ?? {}, { form: 'liquid' });
  });
  expect(faultPaths(form)).toEqual(['products[1].form']);
});

test('a record of what was sprayed is amended in the log, not by a file', () => {
  const file = changed((file) => Object.assign(first(file.applications), { endedAt: '2026-02-24T23:11:00Z' }));
  expect(faultPaths(file)).toEqual(['applications[0].endedAt']);
});

test('containers that the shop has in other parts are not received a second time', () => {
  const opened = changed((file) => {
    const lot = file.lots.pop();
    if (!lot) throw new Error('nothing there');
    file.lots.push({ ...lot, count: 2 }, { ...lot, id: 'm~2', count: 1, openedOn: '2026-03-01' });
  });
  expect(faultPaths(FILE, opened)).toEqual(['lots[1].count']);
  expect(faultPaths(opened, FILE)).toEqual(['lots[1].count', 'lots[2].id']);
  const apart = changed((file) => {
    const lot = file.lots.pop();
    if (lot)
      file.lots.push({ ...lot, id: 'm~1', count: 1 }, { ...lot, id: 'm~2', count: 1 }, { ...lot, id: 'm~3', count: 1 });
  });
  expect(faultPaths(FILE, apart)).toEqual(['lots[1].id']);
});

test('the plain form of a file is a file, and its own plain form', { timeout: 120_000 }, () => {
  fc.assert(
    fc.property(anyShopFile, (file) => {
      const plain = canonical(file);
      const parsed = parseShopFile(JSON.stringify(plain));
      expect(parsed.ok && parsed.file).toEqual(plain);
      expect(canonical(plain)).toEqual(plain);
    }),
    { numRuns: runs(250, 5_000) },
  );
});

test('importing any shop into any other leaves everything that was there, and says so', { timeout: 120_000 }, () => {
  fc.assert(
    fc.property(anyShopFile, anyShopFile, (current, incoming) => {
      const { collections, faults } = compare(current, incoming);
      const together = merged(current, incoming);
      for (const name of COLLECTIONS) {
        const { added, changed, unchanged, leftAlone } = collections[name];
        expect(added.length + changed.length + unchanged.length).toBe(incoming[name].length);
        expect(changed.length + unchanged.length + leftAlone.length).toBe(current[name].length);
        expect(together[name].length).toBe(incoming[name].length + leftAlone.length);
      }
      if (faults.length === 0) expect(parseShopFile(JSON.stringify(together)).ok).toBe(true);
    }),
    { numRuns: runs(100, 3_000) },
  );
});
