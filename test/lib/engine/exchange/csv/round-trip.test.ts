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
import { exported, planned } from './planned';

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
