import { expect, test, vi } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { beginSearch, type PlanScreen, planProgress, planScreen, stopSearch } from '@/lib/views/purchase-plan';
import { Day } from '@/shared/time/day';
import { shopWith, type Written } from '../../worked/plan-of';
import { smallShop } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK } from '../data/fresh-database';
import { moneyIn, openAll, opened } from './opened-figures';

vi.mock('next/headers', () => ({ cookies: async () => ({ get: () => undefined }) }));

/*
 * 120 mL of one product on each of 52 Mondays, from 6 April 2026 to 29 March 2027, bought from an empty shelf on Tuesday
 * 31 March. An opened pack keeps 30 days: five Mondays.
 */
type Offered = { pack: string; price: string; leadDays?: number; supplier?: string; product?: string };

const HALF_LITRE: Offered = { pack: '500 mL', price: '40.00' };
const TWO_LITRES: Offered = { pack: '2 L', price: '110.00' };

async function bought(offers: Offered[], more: Partial<Written> = {}, seller: object = {}): Promise<PlanScreen> {
  await smallShop(
    parsedOrThrow(
      shopWith({
        suppliers: [{ id: 's', name: 'Seller', freightPerOrder: '0', ...seller }],
        products: [{ id: 'p', name: 'Product', kind: 'nutrient', form: 'liquid', shelfLife: { openedDays: 30 } }],
        benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'plants', count: 100, mlPerPlant: 100 }] }],
        recipes: [{ id: 'r', name: 'Recipe', ingredients: [{ product: 'p', dose: '12 mL/L' }] }],
        programs: [
          {
            ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-04-06', startTime: '08:00', minutes: 10 },
            repeat: 'FREQ=WEEKLY;BYDAY=MO',
          },
        ],
        ...more,
        shop: { capitalPerYear: 0, safetyDays: 0, ...more.shop },
        offers: offers.map((one, at) => ({ id: `o${at}`, supplier: 's', product: 'p', leadDays: 2, ...one })),
      }),
    ),
  );
  const screen = await planScreen(CLOCK, 52);
  if (!screen) throw new Error('there is a shop');
  return screen;
}

const dollars = (amount: number) => ({ kind: 'money', micros: Math.round(amount * 1_000_000) });

test('the plan, what it comes to, and the two habits beside it', async () => {
  // 6,240 mL are 13 half litres, 520.00. Of the last, opened on 22 March, 260 mL are left, and keep 23 days more, which
  // take 394: all of it is worth its part, 20.80. Of two litres each serves five Mondays, so there are eleven: 1,210.00.
  // Of the last 1,760 mL are left, of which 6,240 ÷ 364 × 23 are used yet: 110 × 394.2857 ÷ 2,000.
  const screen = await bought([HALF_LITRE, TWO_LITRES]);
  expect(Object.values(screen.cost).map(({ value }) => value)).toEqual([520, 0, 0, 20.8, 499.2, 0].map(dollars));
  expect(screen.habits.map(({ cost }) => cost.value)).toEqual([dollars(499.2), dollars(1188.314286)]);
  expect(screen.habits.map(({ more, isDearer }) => [more.value, isDearer])).toEqual([
    [dollars(0), false],
    [dollars(689.114286), true],
  ]);
  expect(screen.orders[0]).toMatchObject({ on: '2026-04-02', lines: [{ pack: '500 mL', count: 1 }] });
});

test('why a line is so: the larger pack is cheaper per mL, and so much of it would die', async () => {
  const screen = await bought([HALF_LITRE, TWO_LITRES]);
  const why = screen.orders[0]?.lines[0]?.why[0];
  // Opened on Monday 6 April it keeps to 6 May: five Mondays of 120 mL, and 1,400 of 2,000 mL die.
  expect(why?.words).toBe('The 2 L of Seller is cheaper per mL, but 70 % of it would die on Thursday 7 May.');
  const working = await opened(CLOCK, why?.figure?.at ?? '');
  expect(working).toMatchObject({ value: { kind: 'ratio', value: 70, unit: '%' }, rule: why?.words });
  expect(working.steps.slice(2).map(({ value }) => value)).toEqual([
    { kind: 'stock', amount: 2_000_000, form: 'liquid' },
    { kind: 'day', day: '2026-04-06' },
    { kind: 'day', day: '2026-05-06' },
    { kind: 'stock', amount: 600_000, form: 'liquid' },
    { kind: 'stock', amount: 1_400_000, form: 'liquid' },
  ]);
});

test('what no order comes in time for opens to the spraying that is short and to when each order would be there', async () => {
  // Ten working days from Tuesday 31 March are Tuesday 14 April: the 6th and the 13th are late.
  const screen = await bought([{ ...HALF_LITRE, leadDays: 10 }]);
  expect(screen.late.map(({ on, amount }) => [on, amount.value])).toEqual(
    ['2026-04-06', '2026-04-13'].map((on) => [on, { kind: 'stock', amount: 120_000, form: 'liquid' }]),
  );
  const working = await opened(CLOCK, screen.late[0]?.amount.at ?? '');
  expect(working.steps).toMatchObject([
    { label: 'Recipe', value: { kind: 'stock', amount: 120_000 } },
    { label: '500 mL of Seller, ordered today', value: { kind: 'day', day: '2026-04-14' } },
    { label: 'Safety days', value: { kind: 'count', value: 0 } },
  ]);
  expect(screen.orders[0]).toMatchObject({ isToday: true });
});

test('what nobody offers is not said to be ordered', async () => {
  const screen = await bought([]);
  expect([screen.orders, screen.late]).toEqual([[], []]);
  // 52 × 120 mL from the first Monday on, told once.
  expect(screen.unoffered).toMatchObject([
    { product: 'Product', on: '2026-04-06', amount: { value: { amount: 6_240_000 } } },
  ]);
  await openAll(CLOCK, screen.unoffered);
});

test('a plan that is proven says so; another says what none can be below, and what could be saved at most', async () => {
  const proven = await bought([HALF_LITRE, TWO_LITRES]);
  expect(proven.proof).toMatchObject({
    isProven: true,
    bound: { value: dollars(499.2) },
    saved: { value: dollars(0) },
  });
  // With freight to be saved by the search, which nobody has begun, only what the packs cost is certain.
  const open = await bought([HALF_LITRE], {}, { freightPerOrder: '9.00' });
  const [total, bound, saved] = [open.cost.total, open.proof.bound, open.proof.saved].map(moneyIn);
  expect(open.proof.isProven).toBe(false);
  expect(bound).toBeGreaterThanOrEqual(499_200_000);
  expect(bound).toBeLessThan(total ?? 0);
  expect(saved).toBe((total ?? 0) - (bound ?? 0));
  const steps = (await opened(CLOCK, open.proof.bound.at)).steps.map(moneyIn);
  expect(steps.reduce((sum, one) => sum + one, 0)).toBe(bound);
});

/** A shop in which every kind of reason comes up: what is shared, what makes freight free, breaks, a minimum. */
const rich = (): Promise<PlanScreen> =>
  bought(
    [
      { ...HALF_LITRE, price: '20.00' },
      { ...TWO_LITRES, leadDays: 9 },
      { product: 'q', pack: '700 mL', price: '15.00' },
      { product: 'q', supplier: 't', pack: '1 L', price: '30.00', leadDays: 1 },
    ],
    {
      shop: {
        name: 'Rich',
        timeZone: 'UTC',
        currency: 'USD',
        fillCapacity: '10 L',
        capitalPerYear: 0.1,
        safetyDays: 2,
      },
      suppliers: [
        { id: 's', name: 'Seller', freightPerOrder: '12.00', freeFreightOver: '60.00', minimumOrder: '30.00' },
        { id: 't', name: 'Other', freightPerOrder: null },
      ],
      products: ['p', 'q'].map((id) => ({
        ...{ id, name: id.toUpperCase(), kind: 'nutrient' as const, form: 'liquid' as const },
        shelfLife: { openedDays: id === 'p' ? 40 : null, unopenedDays: 200 },
      })),
      recipes: [
        {
          ...{ id: 'r', name: 'Recipe' },
          ingredients: [
            { product: 'p', dose: '12 mL/L' },
            { product: 'q', dose: '3 mL/L' },
          ],
        },
      ],
      lots: [{ id: 'l', product: 'q', pack: '500 mL', paid: '20.00', receivedOn: '2026-03-01' }],
    },
  );

/** Figures that are the sum of their steps; and those that are the first three of them less the fourth. */
const SUMS =
  /^buying\/52\/(habit\/\w+\/)?(packs|freight|capital|left|ofWhichWaste|order\/\d+\/(goods|total)|part\/\w+\/\w+)$/;
const TOTALS = /^buying\/52\/(total|habit\/\w+)$/;

test('every figure opens to the value that it has, down to what was typed in, and sums are their steps', async () => {
  const workings = await openAll(CLOCK, await rich());
  expect(workings.size).toBeGreaterThan(60);
  const all = [...workings].map(([at, working]) => ({
    at,
    steps: working.steps.map(moneyIn),
    value: moneyIn(working),
  }));
  const sums = all.filter(({ at }) => SUMS.test(at));
  const totals = all.filter(({ at }) => TOTALS.test(at));
  expect([sums.length > 40, totals.length]).toEqual([true, 3]);
  for (const { at, steps, value } of sums) expect([at, steps.reduce((sum, one) => sum + one, 0)]).toEqual([at, value]);
  for (const { at, steps, value } of totals) {
    const [packs = 0, freight = 0, capital = 0, left = 0] = steps;
    expect([at, packs + freight + capital - left]).toEqual([at, value]);
  }
});

test('every figure of the demo shop’s plan opens', async () => {
  await smallShop(demoShop(Day.parse('2026-03-31')));
  const screen = await planScreen(CLOCK, 26);
  expect((await openAll(CLOCK, screen)).size).toBeGreaterThan(40);
});

test('a search is told of, can be stopped, and what it has found is shown', async () => {
  const before = await rich();
  const asked = { shop: before.shopId, weeks: 52 };
  expect((await planProgress(asked, CLOCK)).ok).toBe(true);
  expect(await beginSearch({ ...asked, seconds: 60 }, CLOCK)).toMatchObject({ ok: true, value: { kind: 'running' } });
  expect(await stopSearch(asked, CLOCK)).toMatchObject({ ok: true, value: { kind: 'running', isStopped: true } });
  await vi.waitFor(async () => {
    expect(await planProgress(asked, CLOCK)).toMatchObject({ value: { state: { kind: 'done' } } });
  }, 40_000);
  const after = await planScreen(CLOCK, 52);
  expect(after).toMatchObject({ isSearched: true, state: { kind: 'done' } });
  expect(moneyIn(after?.cost.total ?? before.cost.total)).toBeLessThanOrEqual(moneyIn(before.cost.total));
  expect(await beginSearch({ shop: 'none', weeks: 52, seconds: 5 }, CLOCK)).toMatchObject({
    ok: false,
    refusal: { code: 'not-found' },
  });
});
