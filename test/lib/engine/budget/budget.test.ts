import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  BUDGET_COLUMNS,
  BUDGET_KEYS,
  type Budget,
  type BudgetKey,
  budgetOf,
  linesIn,
  perPlant,
  rowsBy,
} from '@/lib/engine/budget/budget';
import { budgetSum } from '@/lib/engine/budget/budget-line';
import { overBenches } from '@/lib/engine/budget/over-benches';
import type { Booked } from '@/lib/engine/budget/spent';
import { account } from '@/lib/engine/ledger/account';
import type { Movement, Side } from '@/lib/engine/ledger/movement';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { workingOf } from '@/lib/engine/working/working';
import { micros, stock } from '@/shared/quantity/amounts';
import type { WrittenShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { parsedOrThrow } from '../../data/any-shop-file';

const TODAY = Day.parse('2026-03-10');

function shopWith(more: Partial<WrittenShopFile>): Shop {
  return shopOfFile(
    parsedOrThrow({
      format: 'bench-and-bottle/shop@1',
      shop: { name: 'A shop', timeZone: 'UTC', currency: 'USD', fillCapacity: '2 gal', wagePerHour: '18.00' },
      suppliers: [{ id: 's', name: 'Supplier' }],
      products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', shelfLife: { unopenedDays: 400 } }],
      offers: [{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00', leadDays: 3 }],
      benches: [
        { id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 30, mlPerPlant: 20 }] },
        {
          id: 'c',
          name: 'Corner',
          plants: [
            { name: 'Palms', count: 10, mlPerPlant: 40 },
            { name: 'Figs', count: 4, mlPerPlant: 150 },
          ],
        },
      ],
      recipes: [{ id: 'r', name: 'Soap wash', ingredients: [{ product: 'p', dose: '10 mL/L' }] }],
      programs: [
        {
          ...{ id: 'g', recipes: ['r'], benches: ['b', 'c'], startsOn: '2026-03-17', startTime: '17:30', minutes: 40 },
          repeat: 'FREQ=WEEKLY;COUNT=3',
        },
      ],
      applications: [
        {
          id: 'a',
          recipe: 'r',
          benches: ['b', 'c'],
          startedAt: '2026-02-03T17:00:00Z',
          endedAt: '2026-02-03T17:20:00Z',
        },
        { id: 'told', recipe: 'r', benches: ['b'], startedAt: '2026-01-05T17:00:00Z', endedAt: null, cost: '2.50' },
        {
          id: 'blank',
          recipe: 'r',
          benches: ['c'],
          startedAt: '2026-01-06T17:00:00Z',
          endedAt: '2026-01-06T17:10:00Z',
        },
      ],
      ...more,
    }),
  );
}

const at = (day: string) => instantOf(Date.parse(`${day}T12:00:00Z`));
const moved = (id: string, to: Side, amount: number, day: string, from: Side = 'container'): Movement => ({
  ...{ id, from, to, amount: stock(amount), occurredAt: at(day), reverses: null },
  kind: to === 'container' ? 'received' : to === 'spray' ? 'drawn' : to === 'waste' ? 'discarded' : 'counted',
});

const bottle = (movements: Movement[], records: [string, string][] = [], paid: number | null = 40_000_000): Booked => ({
  ...{
    lot: 'l',
    place: 0,
    product: 'p',
    packText: '500 mL',
    size: stock(500_000),
    paid: paid === null ? null : micros(paid),
  },
  movements: [moved('in', 'container', 500_000, '2026-02-01', 'supplier'), ...movements],
  ...{ gone: new Set<string>(), records: new Map(records) },
});

const cost = (budget: Budget, key: BudgetKey, row: string | null, column: (typeof BUDGET_COLUMNS)[number]) =>
  budgetSum(linesIn(budget, key, row, column));

describe('what was spent', () => {
  const mixed = bottle(
    [moved('m', 'spray', 12_000, '2026-02-03'), moved('w', 'waste', 50_000, '2026-03-02')],
    [['m', 'a']],
  );
  const budget = budgetOf(shopWith({}), [mixed], TODAY);

  test('a draw counts on its day at what was paid for it, and what was thrown away as waste', () => {
    expect(cost(budget, 'month', '2026-02', 'actual-product')).toMatchObject({ cost: 960_000, unknown: 0 });
    expect(cost(budget, 'month', '2026-03', 'actual-waste').cost).toBe(4_000_000);
    expect(cost(budget, 'product', 'p', 'actual-product').cost).toBe(960_000);
  });

  test('a record that no bottle knows counts with its own cost, and one without a cost is unknown and not nothing', () => {
    expect(cost(budget, 'month', '2026-01', 'actual-product')).toMatchObject({ cost: 2_500_000, unknown: 1 });
    expect(cost(budget, 'bench', 'c', 'actual-product').unknown).toBe(1);
  });

  test('work is from start to end at the wage, its own column, and unknown without an end', () => {
    expect(cost(budget, 'month', '2026-02', 'actual-labour').cost).toBe(6_000_000);
    expect(cost(budget, 'month', '2026-01', 'actual-labour')).toMatchObject({ cost: 3_000_000, unknown: 1 });
  });

  test('a spraying of two benches is split by the spray that each takes', () => {
    // 600 mL and 400 + 600 mL of spray.
    expect(cost(budget, 'bench', 'b', 'actual-product').cost).toBe(360_000 + 2_500_000);
    expect(cost(budget, 'bench', 'c', 'actual-product').cost).toBe(600_000);
  });

  test('what is drawn from a bottle without a price is unknown', () => {
    const unpriced = budgetOf(shopWith({}), [bottle([moved('m', 'spray', 1, '2026-02-03')], [], null)], TODAY);
    expect(cost(unpriced, 'product', 'p', 'actual-product')).toEqual({ cost: null, unknown: 1, lines: 1 });
  });

  test('what was gone before the books began is in no month, and what was missing at a count is', () => {
    const counted = bottle([moved('m', 'count', 250_000, '2026-03-02')]);
    const missing = (gone: string[]) =>
      cost(budgetOf(shopWith({}), [{ ...counted, gone: new Set(gone) }], TODAY), 'product', 'p', 'actual-product').cost;
    expect([missing([]), missing(['m'])]).toEqual([20_000_000, 0]);
  });

  test('what stands there past its last usable day is waste on the day after it, once', () => {
    const lots = [
      { id: 'l', product: 'p', pack: '500 mL', paid: '40.00', receivedOn: '2026-02-01', expiresOn: '2026-03-08' },
    ];
    const expired = budgetOf(shopWith({ lots }), [bottle([])], TODAY);
    expect(linesIn(expired, 'month', null, 'actual-waste')).toMatchObject([{ on: '2026-03-09', cost: 40_000_000 }]);
    expect(cost(expired, 'month', null, 'planned-waste')).toMatchObject({ lines: 0 });
  });
});

describe('what is planned', () => {
  const budget = budgetOf(shopWith({}), [], TODAY);

  test('each spraying counts in its month, short amounts at the cheapest offer', () => {
    const product = cost(budget, 'month', '2026-03', 'planned-product').cost ?? 0;
    expect(product).toBeGreaterThan(0);
    expect(cost(budget, 'program', 'g', 'planned-product').cost).toBe(
      cost(budget, 'month', null, 'planned-product').cost,
    );
    expect(cost(budget, 'month', null, 'planned-labour').cost).toBe(3 * 12_000_000);
  });

  test('a plant costs its share of its bench by the spray it takes', () => {
    const bench = budget.shop.benches.find(({ id }) => id === 'c');
    const groups = bench && perPlant(budget, bench, 'planned-labour');
    // The corner takes 1,000 of 1,600 mL; the palms 400 of those and the figs 600.
    expect(groups?.map((one) => one.cost)).toEqual([9_000_000, 13_500_000]);
    expect(groups?.map((one) => one.each)).toEqual([900_000, 3_375_000]);
  });

  test('what one plant costs is unknown as soon as any of it is', () => {
    const without = budgetOf(shopWith({ offers: [] }), [], TODAY);
    const bench = without.shop.benches.find(({ id }) => id === 'c');
    expect(bench && perPlant(without, bench, 'planned-product')).toBeNull();
    expect(cost(without, 'program', 'g', 'planned-product')).toMatchObject({ cost: null, unknown: 3 });
  });
});

const amounts = fc.array(fc.nat(40_000), { maxLength: 12 });
const side = fc.constantFrom<Side>('spray', 'waste', 'count');

test('every total is the sum of its rows to the micro, however it is put together, and opens to that', () => {
  fc.assert(
    fc.property(amounts, fc.array(side, { minLength: 12, maxLength: 12 }), fc.nat(90_000_000), (taken, sides, paid) => {
      const movements = taken.map((amount, n) => moved(`m${n}`, sides[n] ?? 'spray', amount, `2026-02-${10 + n}`));
      const records = movements.flatMap(({ id, to }, n): [string, string][] =>
        to === 'spray' && n % 2 === 0 ? [[id, 'a']] : [],
      );
      const own = bottle(movements, records, paid);
      const budget = budgetOf(shopWith({}), [own], TODAY);
      for (const key of BUDGET_KEYS) {
        for (const column of BUDGET_COLUMNS) {
          const total = cost(budget, key, null, column).cost ?? 0;
          const rows = rowsBy(budget, key).map((row) => cost(budget, key, row, column).cost ?? 0);
          expect(rows.reduce((sum, one) => sum + one, 0)).toBe(total);
        }
      }
      const told = budget.lines.filter(({ piece }) => piece.startsWith('movement'));
      const spent = told.reduce((sum, line) => sum + (line.cost ?? 0), 0);
      expect(spent + account(micros(paid), own.size, own.movements).left).toBe(paid);
    }),
  );
});

const group = fc.record({ count: fc.integer({ min: 1, max: 300 }), mlPerPlant: fc.integer({ min: 1, max: 200 }) });

test('what each plant costs × the plants is what the bench costs, to half a micro a plant, in product and in work', () => {
  fc.assert(
    fc.property(
      fc.array(group, { minLength: 1, maxLength: 4 }),
      fc.array(group, { minLength: 1, maxLength: 2 }),
      (b, c) => {
        const bench = (id: string, groups: typeof b) => ({
          ...{ id, name: id },
          plants: groups.map((one, at) => ({ name: `${id}${at}`, ...one })),
        });
        const budget = budgetOf(shopWith({ benches: [bench('b', b), bench('c', c)], applications: [] }), [], TODAY);
        for (const column of ['planned-product', 'planned-labour'] as const) {
          const all = budget.shop.benches.map((one) => perPlant(budget, one, column) ?? []);
          const total = cost(budget, 'month', null, column).cost ?? 0;
          // To the micro for the groups; for one plant, rounded, so that its plants are at most half a micro each off.
          expect(all.flat().reduce((sum, one) => sum + one.cost, 0)).toBe(total);
          const plants = all.flat().reduce((sum, one) => sum + one.group.count, 0);
          const byPlant = all.flat().reduce((sum, one) => sum + (one.each ?? 0) * one.group.count, 0);
          expect(Math.abs(byPlant - total)).toBeLessThanOrEqual(plants / 2);
        }
      },
    ),
    { numRuns: 40 },
  );
});

test('every column comes to the same by month, by program, by bench and by product', () => {
  fc.assert(
    fc.property(amounts, fc.nat(90_000_000), fc.nat(9_000), (taken, paid, was) => {
      const movements = taken.map((amount, n) => moved(`m${n}`, 'spray', amount, `2026-02-${10 + n}`));
      const records = movements.flatMap(({ id }, n): [string, string][] => (n % 2 === 0 ? [[id, 'a']] : []));
      const shop = shopWith({});
      for (const one of shop.applications) one.plannedCost = one.id === 'blank' ? null : micros(was * 1_000);
      const budget = budgetOf(shop, [bottle(movements, records, paid)], TODAY);
      for (const column of BUDGET_COLUMNS) {
        const totals = BUDGET_KEYS.map((key) =>
          rowsBy(budget, key).reduce((sum, row) => sum + (cost(budget, key, row, column).cost ?? 0), 0),
        );
        expect(new Set(totals).size).toBe(1);
      }
      expect(cost(budget, 'program', 'g', 'foreseen-product')).toMatchObject({ unknown: 1 });
    }),
  );
});

test('a piece over benches is its lines to the micro, also where it is taken back', () => {
  const { benches } = shopWith({});
  fc.assert(
    fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), (cost) => {
      const piece = {
        side: 'actual',
        kind: 'product',
        on: TODAY,
        what: '',
        piece: '',
        product: null,
        program: null,
      } as const;
      const lines = overBenches({ ...piece, cost, benches });
      expect(lines.reduce((sum, line) => sum + (line.cost ?? 0), 0)).toBe(cost);
    }),
  );
});

test('what a mix drew and what was taken back of it again come to nothing', () => {
  const draw = moved('m', 'spray', 12_000, '2026-02-03');
  const back: Movement = { ...draw, id: 'n', kind: 'reversed', from: 'spray', to: 'container', reverses: 'm' };
  const budget = budgetOf(shopWith({}), [bottle([draw, back], [['m', 'a']])], TODAY);
  expect(cost(budget, 'program', 'g', 'actual-product')).toMatchObject({ cost: 0 + 2_500_000 });
  expect(cost(budget, 'product', 'p', 'actual-product')).toMatchObject({ cost: 0, lines: 4 });
});

test('every figure opens, and its steps add up to it', () => {
  const budget = budgetOf(shopWith({}), [bottle([moved('m', 'spray', 12_000, '2026-02-03')], [['m', 'a']])], TODAY);
  const figures = { plan: { shop: budget.shop } as never, benches: [], now: at('2026-03-10'), budget };
  for (const key of BUDGET_KEYS) {
    for (const row of rowsBy(budget, key)) {
      for (const column of BUDGET_COLUMNS) {
        const address = ['budget', key, row, column].map(encodeURIComponent).join('/');
        const working = workingOf(figures, address);
        const steps = working?.steps.map(({ value }) => (value.kind === 'money' ? value.micros : 0)) ?? [];
        expect(steps.reduce((sum, one) => sum + one, 0)).toBe(cost(budget, key, row, column).cost ?? 0);
      }
    }
  }
});
