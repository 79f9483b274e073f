import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { figureAddress, readAddress, type Working } from '@/lib/engine/working/shown';
import { type Figures, valueAt, workingOf } from '@/lib/engine/working/working';
import { type WhatIfFields, whatIfIn, whatIfText } from '@/shared/forms/what-if';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { anyPlan } from '../ahead/any-ahead';

const TODAY = Day.parse('2026-04-14');
const NOW = instantOf(Date.UTC(2026, 3, 14, 12));
const shop = shopOfFile(demoShop(TODAY));
const figures: Figures = { plan: planAhead(shop, TODAY, 26), benches: [], now: NOW };

const supposed = (fields: Partial<WhatIfFields>, ...figure: (string | number)[]) =>
  figureAddress('what-if', whatIfText(whatIfIn(fields)), ...figure);

function working(of: Figures, address: string): Working {
  const found = workingOf(of, address);
  if (!found) throw new Error(`nothing stands behind ${address}`);
  return found;
}

/** Open a figure, then what it is made of, and so on: everything opens, and money says the same wherever it is read. */
function openAll(of: Figures, address: string, deep: number, opened: Set<string>): void {
  if (deep === 0 || opened.has(address)) return;
  opened.add(address);
  const { steps, value } = working(of, address);
  expect(valueAt(of, address), address).toEqual(value);
  for (const step of steps) {
    if (step.figure === null) continue;
    const there = valueAt(of, step.figure);
    expect(there, `${address} → ${step.figure}`).not.toBeNull();
    // A draw's share of a price leads to the bottle that it comes out of.
    if (there?.kind === 'money') expect(there, `${address} → ${step.figure}`).toEqual(step.value);
    openAll(of, step.figure, deep - 1, opened);
  }
}

const [program] = figures.plan.sprayings.map((spraying) => spraying.program.id);

test.each<[string, Partial<WhatIfFields>]>([
  ['another price', { price: '150' }],
  ['another use', { use: '180', product: 'light-oil-98' }],
  ['a spraying more', { extra: program, extraOn: '2026-04-20' }],
  ['a lost week', { lost: '2026-04-14' }],
  ['a bench more', { bench: program, plants: '300', ml: '25' }],
])('every figure under %s opens down to what was typed, and says the same everywhere', (_, fields) => {
  const product = 'light-oil-98';
  const addresses = [
    ...['materialCost', 'toBuy', 'labourCost', 'wasteCost', 'sprayings', 'unknownCosts'].flatMap((figure) => [
      ['totals', figure],
      ['change', 'totals', figure],
    ]),
    ...['runsOutOn', 'orderBy', 'weeksUntilReorder', 'neededOn'].map((figure) => ['product', product, figure]),
  ];
  const opened = new Set<string>();
  for (const path of addresses) openAll(figures, supposed(fields, ...path), 4, opened);
  expect(opened.size).toBeGreaterThan(30);
});

test('what is supposed is said, and the figure as it is planned stands beside it', () => {
  const address = supposed({ use: '200', product: 'light-oil-98', price: '150' }, 'totals', 'materialCost');
  const { steps } = working(figures, address);
  const said = steps.filter(({ label }) => label === 'Supposed').map(({ value }) => JSON.stringify(value));
  expect(said).toHaveLength(2);
  expect(said.join()).toMatch(/150 %/);
  expect(said.join()).toMatch(/200 %/);
  expect(steps.at(-1)).toMatchObject({ figure: 'totals/materialCost', value: valueAt(figures, 'totals/materialCost') });
});

test('an amount that is supposed says of how much it is the part, and a price of which', () => {
  const spraying = figures.plan.sprayings.find(({ lines }) => lines.some(({ short }) => short > 0));
  const number = spraying?.lines.findIndex(({ short }) => short > 0) ?? 0;
  const line = spraying?.lines[number];
  if (!spraying || !line || line.amount === null) throw new Error('nothing of the demo shop is short');
  const path = ['spraying', spraying.program.id, spraying.date, 'line', number];
  const amount = working(figures, supposed({ use: '150' }, ...path, 'amount'));
  expect(amount.value).toMatchObject({ amount: Math.floor(line.amount * 1.5 + 0.5) });
  expect(amount.steps).toContainEqual(expect.objectContaining({ value: { kind: 'ratio', value: 150, unit: '%' } }));
  const cost = working(figures, supposed({ price: '120' }, ...path, 'cost'));
  expect(cost.steps.some(({ from }) => from.includes('120 % of the price'))).toBe(true);
});

test('more or less is the one figure less the other, in words', () => {
  const fields = { use: '200' };
  const micros = (address: string) => {
    const value = valueAt(figures, address);
    return value?.kind === 'money' ? value.micros : Number.NaN;
  };
  const by = micros(supposed(fields, 'totals', 'materialCost')) - micros('totals/materialCost');
  expect(by).toBeGreaterThan(0);
  const more = working(figures, supposed(fields, 'change', 'totals', 'materialCost'));
  expect(more.value).toEqual({ kind: 'text', text: `$${(by / 1e6).toFixed(2)} more, as far as it is known` });
  expect(working(figures, supposed({ use: '0' }, 'change', 'totals', 'materialCost')).value).toMatchObject({
    text: expect.stringMatching(/less/),
  });
});

test('nothing stands behind an address that nobody wrote', () => {
  for (const address of [
    'what-if',
    'what-if/use%3D200',
    'what-if/use%3D200/totals',
    'what-if/use%3D200/change/totals/nothing',
    'what-if/use%3D200/what-if/use%3D200/totals/materialCost',
    'what-if/use%3D200/change/what-if/use%3D200/totals/materialCost',
  ]) {
    expect(workingOf(figures, address), address).toBeNull();
  }
});

test('a supposition that cannot be read supposes nothing', () => {
  for (const asked of [
    'use=9999',
    'price=abc',
    'extra=gone&extraOn=2026-04-20',
    'product=gone&use=200',
    '%%%',
    'lost=2031-01-01',
  ]) {
    const address = figureAddress('what-if', asked, 'totals', 'materialCost');
    expect(valueAt(figures, address), asked).toEqual(valueAt(figures, 'totals/materialCost'));
  }
});

test('the address of a figure keeps what is supposed', () => {
  const percent = fc.integer({ min: 50, max: 200 }).map(String);
  fc.assert(
    fc.property(fc.record({ product: fc.string({ maxLength: 60 }), price: percent, use: percent }), (fields) => {
      const text = whatIfText(whatIfIn(fields));
      expect(readAddress(figureAddress('what-if', text, 'totals', 'toBuy'))).toEqual([
        'what-if',
        text,
        'totals',
        'toBuy',
      ]);
    }),
  );
});

test('what is left on a day is what was there, less what was taken and wasted by then', () => {
  fc.assert(
    fc.property(anyPlan({ dying: true }), fc.nat(55), (plan, days) => {
      const of: Figures = { plan, benches: [], now: NOW };
      const [first] = plan.shop.containers;
      if (!first) return;
      const day = new Date(Date.parse(plan.today) + days * 86_400_000).toISOString().slice(0, 10);
      const amount = (address: string) => {
        const value = valueAt(of, address);
        return value?.kind === 'stock' ? value.amount : Number.NaN;
      };
      const at = figureAddress('container', first.lot, first.place, 'left', day);
      const [there, ...gone] = working(of, at).steps.flatMap(({ value }) =>
        value.kind === 'stock' ? value.amount : [],
      );
      expect(amount(at)).toBe((there ?? 0) - gone.reduce<number>((sum, each) => sum + each, 0));
      const week = Math.trunc(days / 7);
      const closing = amount(figureAddress('product', first.product.id, 'week', week, 'closing'));
      const lastOfWeek = new Date(Date.parse(plan.today) + (7 * week + 6) * 86_400_000).toISOString().slice(0, 10);
      expect(amount(figureAddress('product', first.product.id, 'left', lastOfWeek))).toBe(closing);
    }),
  );
});
