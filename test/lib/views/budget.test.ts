import { expect, test, vi } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { budgetScreen } from '@/lib/views/budget';
import type { BudgetScreen } from '@/lib/views/budget-seen';
import type { Fig } from '@/lib/views/figures';
import { Day } from '@/shared/time/day';
import { shopWith } from '../../worked/plan-of';
import { smallShop } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK } from '../data/fresh-database';
import { moneyIn, openAll, opened } from './opened-figures';

vi.mock('next/headers', () => ({ cookies: async () => ({ get: () => undefined }) }));

/*
 * 1.6 L of spray on two benches, 600 mL on the one and 400 + 600 mL on the other, with 16 mL of a product at 40.00 for half
 * a litre, 1.28 each time; 40 minutes at 18.00 an hour, 12.00. On three Tuesdays ahead, and once in February.
 */
const record = (id: string, day: string, minutes: string, more: object = {}) => ({
  ...{ id, recipe: 'r', benches: ['b', 'c'], startedAt: `${day}T17:00:00Z`, endedAt: `${day}T17:${minutes}:00Z` },
  ...more,
});

const SHOP = shopWith({
  shop: { wagePerHour: '18.00' },
  suppliers: [{ id: 's', name: 'Supplier' }],
  products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid' }],
  offers: [{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00', leadDays: 3 }],
  benches: [
    { id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 30, mlPerPlant: 20 }] },
    {
      ...{ id: 'c', name: 'Corner' },
      plants: [
        { name: 'Palms', count: 10, mlPerPlant: 40 },
        { name: 'Figs', count: 4, mlPerPlant: 150 },
      ],
    },
  ],
  recipes: [{ id: 'r', name: 'Wash', ingredients: [{ product: 'p', dose: '10 mL/L' }] }],
  programs: [
    {
      ...{ id: 'g', recipes: ['r'], benches: ['b', 'c'], startsOn: '2026-04-07', startTime: '17:30', minutes: 40 },
      repeat: 'FREQ=WEEKLY;COUNT=3',
    },
  ],
  applications: [
    record('a', '2026-02-03', '20', { cost: '2.50', plannedCost: '2.00' }),
    record('blank', '2026-01-06', '10'),
  ],
});

const KEYS = ['month', 'program', 'bench', 'product'] as const;

async function budgets(): Promise<BudgetScreen[]> {
  const found = await Promise.all(KEYS.map((by) => budgetScreen(CLOCK, { by })));
  return found.flatMap((screen) => screen ?? []);
}

async function worked(by: (typeof KEYS)[number]): Promise<BudgetScreen> {
  await smallShop(parsedOrThrow(SHOP));
  const screen = await budgetScreen(CLOCK, { by });
  if (!screen) throw new Error('there is a shop');
  return screen;
}

/** Every figure of a row, in dollars; – where there is nothing, ? where it is not known. */
function row({ rows }: BudgetScreen, id: string): Record<string, number | string> {
  const cells = rows.find((one) => one.row === id)?.cells;
  return Object.fromEntries(
    Object.entries<Fig | null>(cells ?? {}).flatMap(([column, figure]) => {
      if (!figure) return [];
      return [[column, figure.value.kind === 'money' ? figure.value.micros / 1_000_000 : '?']];
    }),
  );
}

test('by month: what was spent beside what was planned for it, and what is planned', async () => {
  const screen = await worked('month');
  expect(row(screen, '2026-02')).toEqual({
    ...{ 'actual-product': 2.5, 'actual-labour': 6, 'foreseen-product': 2, 'foreseen-labour': 12 },
  });
  expect(row(screen, '2026-04')).toEqual({ 'planned-product': 3 * 1.28, 'planned-labour': 36 });
  // Neither what went in nor what was to go in was noted in January: not known, and never nothing.
  expect(row(screen, '2026-01')).toEqual({
    ...{ 'actual-product': '?', 'actual-labour': 3, 'foreseen-product': '?', 'foreseen-labour': 12 },
  });
  expect(screen.rows.find((one) => one.row === '2026-01')?.unknown?.value).toMatchObject({ kind: 'count', value: 2 });
});

test('by program, bench and product: the same, split by the spray that each bench takes', async () => {
  expect(row(await worked('program'), 'g')).toEqual({
    ...{ 'actual-product': 2.5, 'actual-labour': 9, 'foreseen-product': 2, 'foreseen-labour': 24 },
    ...{ 'planned-product': 3.84, 'planned-labour': 36 },
  });
  expect(row(await worked('bench'), 'c')).toMatchObject({
    ...{ 'actual-product': 1.5625, 'foreseen-product': 1.25, 'planned-product': 2.4, 'planned-labour': 22.5 },
  });
  expect(row(await worked('product'), 'p')).toEqual({ 'planned-product': 3.84 });
});

test('what one plant costs, in product, in work and in both', async () => {
  const { plants } = await worked('month');
  expect(plants.map(({ group, ...one }) => [group.name, ...[one.product, one.labour, one.all].map(moneyIn)])).toEqual([
    // 1.44 and 13.50 for thirty ferns; of 2.40 and 22.50 two fifths for ten palms and three fifths for four figs.
    ['Ferns', 48_000, 450_000, 498_000],
    ['Palms', 96_000, 900_000, 996_000],
    ['Figs', 360_000, 3_375_000, 3_735_000],
  ]);
});

test('what is not known is told by name, and opens to the days of it', async () => {
  const { unknown, unknownInAll } = await worked('month');
  expect(unknown.map(({ name, side }) => [name, side])).toEqual([
    ['Wash: no bottle and no cost noted', 'spent'],
    ['Wash: what it was to cost was never noted', 'was planned'],
  ]);
  expect(unknownInAll?.value).toMatchObject({ kind: 'count', value: 2 });
  const working = await opened(CLOCK, unknown[0]?.times.at ?? '');
  expect(working).toMatchObject({ value: { value: 1 }, steps: [{ label: 'Tue 6 January', from: 'Bench, Corner' }] });
});

test('the budget comes to the same, to the micro, however it is put together, and every figure opens', async () => {
  await smallShop(demoShop(Day.parse('2026-03-31')));
  const all = await budgets();
  const [first] = all;
  expect(all).toHaveLength(4);
  for (const { by, rows, sums, plants } of all) {
    expect(Object.values(sums).map((one) => one?.value)).toEqual(
      Object.values(first?.sums ?? {}).map((one) => one?.value),
    );
    for (const [column, sum] of Object.entries(sums)) {
      const cells = rows.map(({ cells }) => cells[column as keyof typeof cells]);
      const total = cells.reduce((all, one) => all + (one ? moneyIn(one) : 0), 0);
      expect([by, column, total]).toEqual([by, column, sum ? moneyIn(sum) : 0]);
    }
    expect(plants.length).toBeGreaterThan(10);
  }
  expect(new Set(Object.values(first?.sums ?? {}).map((one) => one?.value.kind))).toEqual(new Set(['money']));
  const workings = await openAll(CLOCK, [
    first?.rows.slice(8, 14),
    first?.plants.slice(0, 4),
    all[2]?.rows.slice(0, 2),
  ]);
  for (const [at, { steps, value }] of workings) {
    if (!/\/(actual|foreseen|planned)-\w+$|\/all$/.test(at) || /plant.*-/.test(at) || value.kind !== 'money') continue;
    expect([at, steps.map(moneyIn).reduce((sum, one) => sum + one, 0)]).toEqual([at, value.micros]);
  }
});
