import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { isTooLarge } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import type { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { runs } from '@/test/runs';
import { changed, type Json, placesIn, smallShop, valueAt } from '../../shared/shop-file/small-shop';

function read(file: Json): ShopFile {
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.file;
}

const shop = shopOfFile(read(smallShop()));

test('references are followed to the very things they name', () => {
  const [leafGuard, greenFeed] = shop.products;
  expect(shop.recipes[0]?.ingredients.map(({ product }) => product)).toEqual([leafGuard, greenFeed]);
  expect(shop.recipes[0]?.ingredients[0]?.product).toBe(leafGuard);
  expect(shop.offers[0]?.supplier).toBe(shop.suppliers[0]);
  expect(shop.programs[0]?.recipes[0]).toBe(shop.recipes[0]);
  expect(shop.programs[0]?.benches[1]).toBe(shop.benches[1]);
  // The record says what went in; one that says nothing, or the same, shares the recipe as it stands.
  expect(shop.applications[0]?.recipe.ingredients.map(({ product }) => product)).toEqual([leafGuard]);
  const asToday = shopOfFile(read(changed(smallShop(), ['applications', 0, 'products'], [])));
  expect(asToday.applications[0]?.recipe).toBe(asToday.recipes[0]);
});

test('an opened quart stands there with what is left in it and all of its price', () => {
  expect(shop.containers[0]).toMatchObject({
    lot: 'l1',
    place: 0,
    packText: '1 qt',
    size: 946_353,
    remaining: 600_000,
    paid: 74_000_000,
    openedOn: '2026-02-10',
  });
});

test('a lot of three is three full containers that share its price to the micro', () => {
  const three = shop.containers.filter(({ lot }) => lot === 'l2');
  expect(three.map(({ place, size, remaining, paid }) => [place, size, remaining, paid])).toEqual([
    [0, 250_000, 250_000, 3_333_334],
    [1, 250_000, 250_000, 3_333_333],
    [2, 250_000, 250_000, 3_333_333],
  ]);
});

test('an interval is rounded up to whole minutes, the time a spray keeps down', () => {
  const interval = (reiHours: number) =>
    shopOfFile(read(changed(smallShop(), ['products', 0, 'label', 'reiHours'], reiHours))).products[0]?.label.rei;
  expect([interval(12.5), interval(0.01), interval(0)]).toEqual([750, 1, 0]);
  const keeps = (hours: number) =>
    shopOfFile(read(changed(smallShop(), ['recipes', 0, 'useWithinHours'], hours))).recipes[0]?.useWithin;
  expect([keeps(8), keeps(0.99)]).toEqual([480, 59]);
});

test('an interval that nobody typed in stays unknown', () => {
  const file = read(changed(smallShop(), ['products', 0, 'label'], undefined));
  expect(shopOfFile(file).products[0]?.label).toMatchObject({ rei: null, rates: [] });
});

test('settings become the quantities that the calculations take', () => {
  expect(shop).toMatchObject({ zone: 'America/New_York', wagePerHour: 18_000_000, safetyDays: 3 });
  expect(shop.sprayer).toMatchObject({
    capacity: exact('7570.823568'),
    lossPerFill: exact(100),
    measuringStep: exact(500),
  });
  expect(shop.openingHours.mon).toEqual([
    [540, 720],
    [780, 1080],
  ]);
  expect(shop.openingHours.fri).toEqual([[540, 1440]]);
});

test('openings are put in order, however the file lists them', () => {
  const hours = [
    ['13:00', '18:00'],
    ['09:00', '12:00'],
  ];
  expect(shopOfFile(read(changed(smallShop(), ['shop', 'openingHours', 'mon'], hours))).openingHours.mon).toEqual([
    [540, 720],
    [780, 1080],
  ]);
});

test('a weight of a liquid is kept by volume, a spoon of a powder by weight', () => {
  let file = changed(smallShop(), ['offers', 0, 'pack'], '950 g');
  file = changed(file, ['lots', 1, 'pack'], '10 tsp');
  const both = shopOfFile(read(file));
  expect(both.offers[0]?.pack).toEqual(exact(1_000_000));
  expect(both.containers[1]?.size).toBe(42_000);
});

test('a file that never passed is a fault of ours, not a shop', () => {
  const file = read(smallShop());
  expect(() => shopOfFile({ ...file, products: [] })).toThrow(RangeError);
});

const whole = smallShop();
const leaves = placesIn(whole).filter((path) => typeof valueAt(whole, path) !== 'object' && path[0] !== 'format');
const extremes = fc.constantFrom<Json>(
  ...[0, 1, 1e-300, 0.001, 13.999, 100, 366, 10_080, 36_500, 99_999, 1_000_000, null, true, false],
  ...['0', '0.000001', '100000000', '0 mL', '0.001 mL', '1 mL', '1000 L', '1000000 L', '1 mg', '1000 kg', '5 lb'],
  ...['999 mL/L', '0.0000001 %', '100 %', '1000000 ppm pyrethrins', '0.001 ppm N', '999 g/L', '1 tsp/gal'],
  ...['1971-01-01', '2999-12-31', '2026-03-02', '1971-01-01T00:00:00Z', '2999-12-31T11:59:59-12:00'],
  ...['00:00', '23:59', '24:00', 'FREQ=DAILY', 'FREQ=MONTHLY;BYMONTHDAY=31', 'powder', 'liquid', 'metric', '% v/v'],
  ...['Asia/Kathmandu', 'Pacific/Apia', 'JPY', 'g/kg', 'pH adjuster'],
);

test('whatever shop passes the reader can be planned, printed and kept out of', () => {
  const edits = fc.array(fc.tuple(fc.constantFrom(...leaves), extremes), { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(edits, (all) => {
      const parsed = parseShopFile(JSON.stringify(all.reduce((file, [at, value]) => changed(file, at, value), whole)));
      if (!parsed.ok) return;
      const ours = shopOfFile(parsed.file);
      expect(keepOut(ours, instantOf(Date.UTC(2026, 2, 2)))).toHaveLength(2);
      for (const today of ['2000-01-01', '2026-03-02', '2999-12-31'] as Day[]) {
        try {
          expect(planDocument(planAhead(ours, today, 3)).products).toHaveLength(2);
        } catch (error) {
          // Figures past the largest exact whole number are refused by the command, with a sentence.
          if (!isTooLarge(error)) throw error;
        }
      }
    }),
    { numRuns: runs(400, 10_000) },
  );
});
