import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { projectionOf } from '@/lib/engine/ahead/projection';
import { type Supposed, supposedProjection, whatIf } from '@/lib/engine/ahead/what-if';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { ShopFile } from '@/shared/shop-file/contract';
import { addDays, Day } from '@/shared/time/day';

const TODAY = Day.parse('2026-04-14');
const shop = shopOfFile(ShopFile.parse(demoShop(TODAY)));
const as = projectionOf(shop, TODAY, 26);
const NOTHING: Supposed = {
  product: null,
  pricePercent: 100,
  usePercent: 100,
  extra: null,
  lostFrom: null,
  bench: null,
};
const oil = shop.products.find(({ id }) => id === 'light-oil-98');
const program = shop.programs.find(({ id }) => as.sprayings.some((spraying) => spraying.program.id === id));
if (!oil || !program) throw new Error('the demo shop has no oil, or sprays nothing');

const needOf = (projection: typeof as, id: string) =>
  projection.products
    .filter(({ product }) => product.id === id)
    .flatMap(({ weeks }) => weeks)
    .reduce((sum, { need }) => sum + need, 0);

test('supposing nothing changes nothing', () => {
  const { products, ...sums } = whatIf(as, NOTHING);
  expect(products).toEqual([]);
  for (const { from, to } of Object.values(sums)) expect(to).toBe(from);
});

test('twice the use of one product is twice its need, and of no other', () => {
  const next = supposedProjection(as, { ...NOTHING, product: oil, usePercent: 200 });
  for (const { product } of as.products) {
    expect(needOf(next, product.id), product.id).toBe(needOf(as, product.id) * (product === oil ? 2 : 1));
  }
});

test('another price changes only what has still to be bought, and by as much', () => {
  const { toBuy, material, waste } = whatIf(as, { ...NOTHING, pricePercent: 200 });
  expect(toBuy.from).toBeGreaterThan(0);
  expect(Math.abs(toBuy.to - 2 * toBuy.from)).toBeLessThan(1_000);
  expect(material.to - material.from).toBe(toBuy.to - toBuy.from);
  expect(waste.to).toBe(waste.from);
});

test('in a lost week nothing is sprayed, and every other spraying stays', () => {
  const lost = as.sprayings.filter(({ date }) => date >= TODAY && date < addDays(TODAY, 7)).length;
  expect(lost).toBeGreaterThan(0);
  const { sprayings } = whatIf(as, { ...NOTHING, lostFrom: TODAY });
  expect(sprayings).toEqual({ from: as.sprayings.length, to: as.sprayings.length - lost });
});

test('a spraying more is one more; a bench more takes more spray each time, also then', () => {
  const on = addDays(TODAY, 9);
  expect(whatIf(as, { ...NOTHING, extra: { program, on } }).sprayings.to).toBe(as.sprayings.length + 1);
  const bench = { program, plants: 400, mlPerPlant: 20 };
  const next = supposedProjection(as, { ...NOTHING, bench, extra: { program, on } });
  const more = next.sprayings.filter((one) => one.program.id.startsWith(program.id));
  const before = as.sprayings.find((one) => one.program === program);
  for (const { plants } of more) expect(plants).toBe((before?.plants ?? 0) + 400);
});
