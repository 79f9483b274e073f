import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import type { Projection } from '@/lib/engine/ahead/plan';
import { projectionOf } from '@/lib/engine/ahead/projection';
import { NOTHING_SUPPOSED, type Supposed } from '@/lib/engine/ahead/supposed';
import { supposedProjection, whatIf } from '@/lib/engine/ahead/what-if';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { sum } from '@/shared/quantity/amounts';
import { ShopFile } from '@/shared/shop-file/contract';
import { addDays, Day } from '@/shared/time/day';
import { anyPlan, WEEKS } from './any-ahead';

const TODAY = Day.parse('2026-04-14');
const shop = shopOfFile(ShopFile.parse(demoShop(TODAY)));
const as = projectionOf(shop, TODAY, 26);
const oil = shop.products.find(({ id }) => id === 'light-oil-98');
const program = shop.programs.find(({ id }) => as.sprayings.some((spraying) => spraying.program.id === id));
if (!oil || !program) throw new Error('the demo shop has no oil, or sprays nothing');

const supposing = (of: Projection, part: Partial<Supposed>): Projection =>
  supposedProjection(of, { ...NOTHING_SUPPOSED, ...part });
const ifSo = (of: Projection, part: Partial<Supposed>) => whatIf(of, supposing(of, part));

const LASTING = anyPlan({ dying: false });
const DYING = anyPlan({ dying: true });
const percent = (min: number, max: number) => fc.integer({ min, max });
const within = fc.integer({ min: 0, max: 7 * WEEKS - 1 });

const needOf = (projection: Projection, id: string) =>
  projection.products
    .filter(({ product }) => product.id === id)
    .flatMap(({ weeks }) => weeks)
    .reduce((total, { needAtLeast }) => total + needAtLeast, 0);

test('twice the use of one product is twice its need, and of no other', () => {
  const next = supposing(as, { product: oil, usePercent: 200 });
  for (const { product } of as.products) {
    expect(needOf(next, product.id), product.id).toBe(needOf(as, product.id) * (product === oil ? 2 : 1));
  }
});

test('of one product another price changes what has still to be bought of it, and of no other', () => {
  const short = as.products.find(({ runsOutOn, reorder }) => runsOutOn !== null && reorder !== null);
  if (!short) throw new Error('nothing of the demo shop runs out');
  const toBuyOf = ({ sprayings }: Projection, isOf: (id: string) => boolean) =>
    sum(
      sprayings
        .flatMap(({ lines }) => lines)
        .filter(({ ingredient }) => isOf(ingredient.product.id))
        .flatMap(({ shortCost }) => shortCost ?? []),
    );
  const next = supposing(as, { product: short.product, pricePercent: 150 });
  const { id } = short.product;
  expect(toBuyOf(as, (one) => one === id)).toBeGreaterThan(0);
  expect(toBuyOf(next, (one) => one === id)).toBeGreaterThan(toBuyOf(as, (one) => one === id));
  expect(toBuyOf(next, (one) => one !== id)).toBe(toBuyOf(as, (one) => one !== id));
});

test('what is supposed of one product alone comes out as if all of it had been worked out anew', () => {
  fc.assert(
    fc.property(DYING, percent(50, 200), percent(0, 300), fc.nat(2), (plan, pricePercent, usePercent, at) => {
      const product = plan.shop.products[at] ?? null;
      const part = { product, pricePercent, usePercent };
      // A lost week long ago takes nothing away, and everything is worked out.
      const whole = supposing(plan, { ...part, lostFrom: addDays(plan.today, -30) });
      expect(supposing(plan, part)).toEqual(whole);
    }),
  );
});

test('in a lost week nothing is sprayed, and every other spraying stays', () => {
  const lost = as.sprayings.filter(({ date }) => date >= TODAY && date < addDays(TODAY, 7)).length;
  expect(lost).toBeGreaterThan(0);
  const { sprayings, labour } = ifSo(as, { lostFrom: TODAY });
  expect(sprayings).toEqual({ from: as.sprayings.length, to: as.sprayings.length - lost });
  expect(labour.to).toBeLessThan(labour.from);
});

test('a spraying more is one more; a bench more takes more spray each time, also then', () => {
  const on = addDays(TODAY, 9);
  expect(ifSo(as, { extra: { program, on } }).sprayings.to).toBe(as.sprayings.length + 1);
  const bench = { program, plants: 400, mlPerPlant: 20 };
  const next = supposing(as, { bench, extra: { program, on } });
  const more = next.sprayings.filter((one) => one.program.id.startsWith(program.id));
  const before = as.sprayings.find((one) => one.program === program);
  for (const { plants } of more) expect(plants).toBe((before?.plants ?? 0) + 400);
});

test('what is supposed of one product holds beside a lost week, a spraying more and a bench more', () => {
  const part = { product: oil, usePercent: 200 };
  const [lostFrom, on] = [TODAY, addDays(TODAY, 9)];
  const bench = { program, plants: 400, mlPerPlant: 20 };
  expect(ifSo(as, { ...part, lostFrom }).sprayings).toEqual(ifSo(as, { lostFrom }).sprayings);
  expect(ifSo(as, { ...part, extra: { program, on } }).sprayings.to).toBe(as.sprayings.length + 1);
  for (const beside of [{ lostFrom }, { extra: { program, on } }, { bench }]) {
    const [both, alone] = [supposing(as, { ...part, ...beside }), supposing(as, beside)];
    for (const { product } of as.products) {
      expect(needOf(both, product.id), product.id).toBe(needOf(alone, product.id) * (product === oil ? 2 : 1));
    }
    expect(alone.sprayings.map(({ plants }) => plants)).not.toEqual(as.sprayings.map(({ plants }) => plants));
  }
});

/** The day each product runs out, or has to be ordered; one after all others where there is none. */
const daysOf = ({ products }: Projection) =>
  products.flatMap(({ runsOutOn, reorder }) => [runsOutOn ?? '9999-12-31', reorder?.by ?? '9999-12-31']);

const isNowhereLater = (next: Projection, before: Projection): boolean => {
  const days = daysOf(before);
  return daysOf(next).every((day, at) => day <= (days[at] ?? ''));
};

test('supposing nothing changes nothing', () => {
  fc.assert(
    fc.property(DYING, (plan) => {
      const next = supposing(plan, {});
      const { products, ...sums } = whatIf(plan, next);
      expect(products).toEqual([]);
      for (const { from, to } of Object.values(sums)) expect(to).toBe(from);
      expect(next.products).toEqual(plan.products);
    }),
  );
});

test('whatever is supposed, the plan stays as it was', () => {
  fc.assert(
    fc.property(DYING, percent(50, 200), percent(0, 300), within, (plan, pricePercent, usePercent, days) => {
      const before = structuredClone(
        plan.products.map(({ weeks, wastes }) => [weeks, wastes.map(({ amount }) => amount)]),
      );
      const [first] = plan.shop.programs;
      if (!first) return;
      const on = addDays(plan.today, days);
      const bench = { program: first, plants: 40, mlPerPlant: 30 };
      supposing(plan, { pricePercent, usePercent, lostFrom: on, extra: { program: first, on }, bench });
      expect(plan.products.map(({ weeks, wastes }) => [weeks, wastes.map(({ amount }) => amount)])).toEqual(before);
      expect(plan.shop.programs.every(({ benches }) => benches.length <= 2)).toBe(true);
    }),
  );
});

test('another price changes what has to be bought in proportion, and no day, no use and no waste', () => {
  fc.assert(
    fc.property(DYING, percent(50, 200), (plan, pricePercent) => {
      const { toBuy, material, waste, labour, sprayings, unknownCosts, products } = ifSo(plan, { pricePercent });
      const lines = plan.sprayings.flatMap((spraying) => spraying.lines).length;
      // Each line is rounded once to a micro before and once after.
      expect(Math.abs(100 * toBuy.to - pricePercent * toBuy.from)).toBeLessThanOrEqual(lines * (50 + pricePercent / 2));
      if (unknownCosts.from === 0) expect(material.to - material.from).toBe(toBuy.to - toBuy.from);
      for (const { from, to } of [waste, labour, sprayings, unknownCosts]) expect(to).toBe(from);
      expect(products).toEqual([]);
    }),
  );
});

test('more use never runs out later and never has to be ordered later; less use never before', () => {
  fc.assert(
    fc.property(LASTING, percent(100, 300), (plan, usePercent) => {
      expect(isNowhereLater(supposing(plan, { usePercent }), plan)).toBe(true);
    }),
  );
  fc.assert(
    fc.property(LASTING, percent(0, 100), (plan, usePercent) => {
      expect(isNowhereLater(plan, supposing(plan, { usePercent }))).toBe(true);
    }),
  );
});

test('without any use nothing runs out, and nothing has to be bought', () => {
  fc.assert(
    fc.property(DYING, (plan) => {
      const next = supposing(plan, { usePercent: 0 });
      expect(next.products.every(({ runsOutOn, reorder }) => runsOutOn === null && reorder === null)).toBe(true);
      expect(whatIf(plan, next).toBuy.to).toBe(0);
    }),
  );
});

test('a lost week takes away its own sprayings alone, and nothing runs out before because of it', () => {
  fc.assert(
    fc.property(LASTING, within, (plan, days) => {
      const lostFrom = addDays(plan.today, days);
      const next = supposing(plan, { lostFrom });
      const isLost = (date: Day) => date >= lostFrom && date < addDays(lostFrom, 7);
      const turns = ({ sprayings }: Projection) => sprayings.map(({ program: { id }, date }) => `${id} ${date}`);
      expect(turns(next)).toEqual(turns({ ...plan, sprayings: plan.sprayings.filter(({ date }) => !isLost(date)) }));
      expect(isNowhereLater(plan, next)).toBe(true);
    }),
  );
});

test('a spraying more, or a bench more, never lets anything last longer', () => {
  fc.assert(
    fc.property(LASTING, within, fc.boolean(), (plan, days, isBench) => {
      const [first] = plan.shop.programs;
      if (!first) return;
      const next = supposing(
        plan,
        isBench
          ? { bench: { program: first, plants: 40, mlPerPlant: 30 } }
          : { extra: { program: first, on: addDays(plan.today, days) } },
      );
      expect(isNowhereLater(next, plan)).toBe(true);
    }),
  );
});

test('the supposed weeks keep the balance: opening + received − used − wasted = closing', () => {
  fc.assert(
    fc.property(DYING, percent(0, 300), within, (plan, usePercent, days) => {
      for (const { weeks } of supposing(plan, { usePercent, lostFrom: addDays(plan.today, days) }).products) {
        for (const { opening, received, used, wasted, need, short, closing } of weeks) {
          expect(opening + received - used - wasted).toBe(closing);
          expect(used + short).toBe(need);
        }
      }
    }),
  );
});
