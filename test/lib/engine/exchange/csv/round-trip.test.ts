import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { canonical } from '@/lib/engine/exchange/canonical';
import { COLLECTIONS } from '@/lib/engine/exchange/compare';
import { CSV_LISTS } from '@/lib/engine/exchange/csv/column';
import { csvOfShop } from '@/lib/engine/exchange/csv/csv-of-shop';
import { guarded } from '@/shared/csv/write-rows';
import { Day } from '@/shared/time/day';
import { anyShopFile, parsedOrThrow } from '../../../data/any-shop-file';
import { exported, planned, resultOf } from './planned';

test('a list that goes out and comes in again changes nothing, whatever is in the shop', () => {
  fc.assert(
    fc.property(anyShopFile, fc.constantFrom(...CSV_LISTS), (file, list) => {
      const shop = canonical(file);
      const { faults, result } = planned(shop, list, exported(shop, list));
      expect(faults).toEqual([]);
      for (const collection of COLLECTIONS) {
        const { added, changed } = result?.comparison.collections[collection] ?? { added: ['none'], changed: [] };
        expect({ collection, added, changed }).toEqual({ collection, added: [], changed: [] });
      }
    }),
    { numRuns: 150 },
  );
});

test('the demo shop goes out and comes in again unchanged', () => {
  const shop = canonical(parsedOrThrow(demoShop(Day.parse('2026-03-31'))));
  for (const list of CSV_LISTS) {
    const { faults, result } = planned(shop, list, exported(shop, list));
    expect(faults).toEqual([]);
    expect(result?.comparison.collections[list]).toMatchObject({ added: [], changed: [], leftAlone: [] });
    expect(result?.comparison.collections[list].unchanged).toHaveLength(shop[list].length);
  }
});

test('a list of products says all that a product is, but for what a stock solution is made from', () => {
  const nothing = { offers: [], lots: [], recipes: [], programs: [], applications: [], orders: [] };
  fc.assert(
    fc.property(anyShopFile, (file) => {
      const shop = canonical(file);
      const bare = parsedOrThrow({
        ...{ ...shop, ...nothing },
        products: shop.products.map(({ id, name, kind, form }) => ({ id, name, kind, form })),
      });
      const { products } = resultOf(bare, 'products', exported(shop, 'products'));
      expect(products).toEqual(shop.products.map((product) => ({ ...product, madeFrom: [] })));
    }),
    { numRuns: 60 },
  );
});

test('what a stock solution is made from, and the order that a lot came with, stay where a list does not tell them', () => {
  const demo = parsedOrThrow(demoShop(Day.parse('2026-03-31')));
  const [offer] = demo.offers;
  const [source, solution] = demo.products.filter(({ id }) => id === offer?.product || id === 'citric-acid');
  if (!offer || !source || !solution) throw new Error('the demo shop has an offer and two such products');
  const made = source.id === offer.product ? solution : source;
  const order = {
    id: 'order',
    supplier: offer.supplier,
    placedOn: '2026-03-02',
    lines: [{ offer: offer.id, count: 1 }],
  };
  const shop = parsedOrThrow({
    ...demo,
    products: demo.products.map((product) =>
      product === made ? { ...product, madeFrom: [{ product: offer.product, dose: '10 %' }] } : product,
    ),
    orders: [...demo.orders, order],
    lots: [
      ...demo.lots,
      {
        id: 'came',
        product: offer.product,
        pack: offer.pack,
        receivedOn: '2026-03-09',
        order: 'order',
        offer: offer.id,
      },
    ],
  });
  const products = resultOf(shop, 'products', `id,signal word\n${made.id},CAUTION\n`).products;
  expect(products.find(({ id }) => id === made.id)).toMatchObject({
    label: { signalWord: 'CAUTION' },
    madeFrom: [{ product: offer.product, dose: '10 %' }],
  });
  const lots = resultOf(shop, 'lots', 'id,kept in\ncame,shed\n').lots;
  expect(lots.find(({ id }) => id === 'came')).toMatchObject({ keptIn: 'shed', order: 'order', offer: offer.id });
});

test('another reader of CSV finds the same cells in what goes out', () => {
  fc.assert(
    fc.property(anyShopFile, fc.constantFrom(...CSV_LISTS), (file, list) => {
      const rows = csvOfShop(canonical(file), list);
      const texts = rows.map((cells) =>
        cells.map((cell) => (typeof cell === 'string' ? guarded(cell) : String(cell ?? ''))),
      );
      expect(parse(exported(canonical(file), list))).toEqual(texts);
    }),
    { numRuns: 60 },
  );
});
