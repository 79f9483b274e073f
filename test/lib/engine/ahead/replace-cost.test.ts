import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Replacement } from '@/lib/engine/ahead/replace-cost';
import { replacementIn } from '@/lib/engine/working/replace-figures';
import { workingOf } from '@/lib/engine/working/working';
import { sum } from '@/shared/quantity/amounts';
import { shareByValue } from '@/shared/quantity/rounding';
import type { WrittenShopFile } from '@/shared/shop-file/contract';
import { instantOf } from '@/shared/time/instant';
import { planOf, shopWith } from '../../../worked/plan-of';

const TODAY = '2026-03-03';
const NOW = instantOf(Date.UTC(2026, 2, 3, 12));

type Part = Pick<WrittenShopFile, 'suppliers' | 'offers' | 'lots'>;

const product = (id: string, form: 'liquid' | 'powder' = 'liquid') => ({ id, name: id, kind: 'other' as const, form });
const PRODUCTS = [product('a'), product('b'), product('c', 'powder')];
const received = { receivedOn: '2026-01-05' };

const shopOf = (part: Part) => shopWith({ products: PRODUCTS, ...part });
const replace = (part: Part): Replacement => replacementIn(planOf(shopOf(part), TODAY, 1));

const boughtOf = ({ lines }: Replacement) =>
  lines.map(({ product, buy, freight, cost }) => [product.id, buy?.offer.id, buy?.packs, buy?.goods, freight, cost]);

/*
 * By hand. Of a 700 mL are usable: two packs of 500 mL at 10 come to 20, one litre costs 21.
 * Of b 900 mL: one litre costs 30. Both from Hollow, 50 of goods, below 60, so 12 of freight: 12 × 20/50 = 4.80 and
 * 12 × 30/50 = 7.20. Of c 2 kg from Mill: 4 packs of 500 g, at 3 each from three on, 12; 5 of freight.
 */
const BY_HAND: Part = {
  suppliers: [
    { id: 'hollow', name: 'Hollow', freightPerOrder: '12', freeFreightOver: '60' },
    { id: 'mill', name: 'Mill', freightPerOrder: '5' },
  ],
  offers: [
    { id: 'a-half', supplier: 'hollow', product: 'a', pack: '500 mL', price: '10' },
    { id: 'a-litre', supplier: 'hollow', product: 'a', pack: '1 L', price: '21' },
    { id: 'b-litre', supplier: 'hollow', product: 'b', pack: '1 L', price: '30', since: '2026-02-03' },
    { id: 'b-away', supplier: 'mill', product: 'b', pack: '1 L', price: '1', archived: true },
    {
      id: 'c-half',
      supplier: 'mill',
      product: 'c',
      pack: '500 g',
      price: '4',
      breaks: [
        { atLeast: 3, price: '3' },
        { atLeast: 9, price: '2' },
      ],
    },
  ],
  lots: [
    { id: 'a1', product: 'a', pack: '1 L', remaining: '700 mL', ...received },
    { id: 'a2', product: 'a', pack: '1 L', expiresOn: '2026-03-02', ...received },
    { id: 'a3', product: 'a', pack: '1 L', receivedOn: '2026-03-04' },
    { id: 'b1', product: 'b', pack: '300 mL', count: 3, ...received },
    { id: 'c1', product: 'c', pack: '2 kg', ...received },
  ],
};

test('what is usable is bought again in whole packs where they cost least, and freight goes by value', () => {
  const replacement = replace(BY_HAND);
  expect(boughtOf(replacement)).toEqual([
    ['a', 'a-half', 2, 20_000_000, 4_800_000, 24_800_000],
    ['b', 'b-litre', 1, 30_000_000, 7_200_000, 37_200_000],
    ['c', 'c-half', 4, 12_000_000, 5_000_000, 17_000_000],
  ]);
  expect([replacement.total, replacement.unknown]).toEqual([79_000_000, 0]);
});

test.each([
  { over: '50', freight: 0 },
  { over: '50.000001', freight: 12_000_000 },
])('with no freight from $over on, goods of exactly 50 pay $freight', ({ over, freight }) => {
  const [hollow, mill] = BY_HAND.suppliers ?? [];
  const suppliers = [{ ...hollow, id: 'hollow', name: 'Hollow', freeFreightOver: over }, ...(mill ? [mill] : [])];
  expect(replace({ ...BY_HAND, suppliers }).orders[0]).toMatchObject({ goods: 50_000_000, freight });
});

test('more packs than needed are bought when a quantity break makes them cost less in all', () => {
  const offer = {
    id: 'o',
    supplier: 's',
    product: 'a',
    pack: '1 L',
    price: '10',
    breaks: [{ atLeast: 3, price: '6' }],
  };
  const part = (remaining: string): Part => ({
    suppliers: [{ id: 's', name: 'S', freightPerOrder: '0' }],
    offers: [offer],
    lots: [{ id: 'l', product: 'a', pack: '5 L', remaining, ...received }],
  });
  expect(boughtOf(replace(part('1 L')))).toEqual([['a', 'o', 1, 10_000_000, 0, 10_000_000]]);
  expect(boughtOf(replace(part('2 L')))).toEqual([['a', 'o', 3, 18_000_000, 0, 18_000_000]]);
});

test('a full quart is one quart or two pints, though each was rounded to a whole µL when it came', () => {
  const part = (pack: string, count: number): Part => ({
    suppliers: [{ id: 's', name: 'S', freightPerOrder: '0' }],
    offers: [{ id: 'o', supplier: 's', product: 'a', pack, price: '10' }],
    lots: [{ id: 'l', product: 'a', pack: '1 qt', count, ...received }],
  });
  const packs = (pack: string, count: number) => replace(part(pack, count)).lines[0]?.buy?.packs;
  expect([packs('1 qt', 1), packs('1 pt', 1), packs('1 gal', 4), packs('1 gal', 5), packs('1 qt', 7)]).toEqual([
    1, 2, 1, 2, 7,
  ]);
});

test('without an offer, or without a known freight, the cost is not known and never nothing', () => {
  const [hollow, mill] = BY_HAND.suppliers ?? [];
  const suppliers = [{ ...hollow, id: 'hollow', name: 'Hollow', freightPerOrder: null }, ...(mill ? [mill] : [])];
  const offers = BY_HAND.offers?.filter((offer) => offer.product !== 'c');
  const replacement = replace({ ...BY_HAND, suppliers, offers });
  expect(replacement.lines.map(({ cost }) => cost)).toEqual([null, null, null]);
  expect([replacement.total, replacement.unknown]).toEqual([0, 3]);

  const plan = planOf(shopOf({ ...BY_HAND, suppliers, offers }), TODAY, 1);
  const shown = (at: string) => workingOf({ plan, benches: [], now: NOW }, at)?.value;
  expect(shown('product/a/replaceCost')).toMatchObject({ because: expect.stringContaining('freight of Hollow') });
  expect(shown('product/c/replaceCost')).toMatchObject({ because: expect.stringContaining('No supplier offers it') });
  expect(shown('shelf/replaceCost')).toMatchObject({ kind: 'unknown' });
});

test('the working says which price holds, since when, and from how many packs', () => {
  const plan = planOf(shopOf(BY_HAND), TODAY, 1);
  const working = (at: string) => workingOf({ plan, benches: [], now: NOW }, at);
  expect(working('product/b/replaceCost')?.steps.map(({ from }) => from)).toContain('since Tue 3 February');
  expect(working('product/c/replaceCost')?.steps.map(({ from }) => from)).toContain(
    'since when it holds was never noted, from 3 packs on',
  );
  expect(working('shelf/replaceCost')?.value).toEqual({ kind: 'money', micros: 79_000_000 });
  expect(working('shelf/other')).toBeNull();
});

const anyShop = fc.record({
  freight: fc.option(fc.integer({ min: 0, max: 40_000_000 }), { nil: null }),
  over: fc.option(fc.integer({ min: 0, max: 90_000_000 }), { nil: null }),
  offers: fc.array(
    fc.record({
      supplier: fc.constantFrom('s', 't'),
      product: fc.constantFrom('a', 'b', 'c'),
      size: fc.integer({ min: 1, max: 5000 }),
      price: fc.integer({ min: 0, max: 30_000_000 }),
      atLeast: fc.integer({ min: 2, max: 9 }),
      less: fc.integer({ min: 0, max: 30_000_000 }),
      archived: fc.boolean(),
    }),
    { maxLength: 6 },
  ),
  lots: fc.array(
    fc.record({
      product: fc.constantFrom('a', 'b', 'c'),
      size: fc.integer({ min: 1, max: 9000 }),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    { maxLength: 5 },
  ),
});

const decimal = (micros: number) => `${Math.trunc(micros / 1e6)}.${String(micros % 1e6).padStart(6, '0')}`;
const sized = (product: string, size: number) => `${size} ${product === 'c' ? 'g' : 'mL'}`;

test('on any shelf, goods and freight of all lines add up to the orders to the micro, and enough is bought', () => {
  fc.assert(
    fc.property(anyShop, ({ freight, over, offers, lots }) => {
      const money = (micros: number | null) => (micros === null ? null : decimal(micros));
      const replacement = replace({
        suppliers: ['s', 't'].map((id) => ({
          id,
          name: id,
          freightPerOrder: money(freight),
          freeFreightOver: money(over),
        })),
        offers: offers.map(({ supplier, product, size, price, atLeast, less, archived }, place) => ({
          ...{ id: `o${place}`, supplier, product, pack: sized(product, size), price: decimal(price), archived },
          breaks: [{ atLeast, price: decimal(less) }],
        })),
        lots: lots.map(({ product, size, count }, place) => ({
          ...{ id: `l${place}`, product, pack: sized(product, size), count, ...received },
        })),
      });
      const known = replacement.orders.filter((order) => order.freight !== null);
      expect(replacement.total).toBe(sum(known.map((order) => order.goods + (order.freight ?? 0))));
      expect(replacement.total).toBe(sum(replacement.lines.map(({ cost }) => cost ?? 0)));
      for (const { usable, buy, cost } of replacement.lines) {
        if (!buy) expect(cost).toBeNull();
        else
          expect((buy.packs * Number(buy.offer.pack.over)) / Number(buy.offer.pack.under)).toBeGreaterThanOrEqual(
            usable,
          );
        expect(buy?.offer.archived ?? false).toBe(false);
      }
    }),
    { numRuns: 150 },
  );
});

test('an amount shared by value is shared whole, and nobody is a micro off their part', () => {
  const values = fc.array(fc.integer({ min: 0, max: 2 ** 45 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 45 }), values, (amount, values) => {
      const shares = shareByValue(amount, values);
      expect(sum(shares)).toBe(amount);
      const total = values.reduce((sum, value) => sum + BigInt(value), 0n);
      for (const [place, value] of values.entries()) {
        if (total === 0n) continue;
        const off = BigInt(shares[place] ?? -1) * total - BigInt(amount) * BigInt(value);
        expect(off > -total && off < total).toBe(true);
      }
    }),
    { numRuns: 200 },
  );
  expect(shareByValue(10, [1, 1, 1])).toEqual([4, 3, 3]);
  expect(shareByValue(0, [])).toEqual([]);
  expect(() => shareByValue(1, [])).toThrow(RangeError);
});

test('a plan is asked once for what its shelf costs to replace', () => {
  const plan = planOf(shopOf(BY_HAND), TODAY, 1);
  expect(replacementIn(plan)).toBe(replacementIn(plan));
});
