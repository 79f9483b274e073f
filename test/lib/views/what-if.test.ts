import { expect, test } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { drawStock } from '@/lib/commands/draw-stock';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { workingOf } from '@/lib/engine/working/working';
import { figuresOf } from '@/lib/views/figures';
import { type WhatIfSaid, whatIfAnswer, whatIfSaid } from '@/lib/views/what-if';
import { isSupposed, type WhatIfFields, whatIfIn } from '@/shared/forms/what-if';
import { stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { SMALL, smallShop, today } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

const TODAY = Day.parse('2026-04-14');
const shop = shopOfFile(demoShop(TODAY));
const figures = { plan: planAhead(shop, TODAY, 26), benches: [], now: instantOf(Date.UTC(2026, 3, 14, 12)) };
const said = (fields: Partial<WhatIfFields>) => whatIfSaid(figures.plan, figuresOf(figures), whatIfIn(fields));
const [program] = figures.plan.sprayings.map((spraying) => spraying.program.id);

const figuresIn = ({ sums, products }: WhatIfSaid) => [
  ...sums.flatMap(({ from, to, more }) => [from, to, more]),
  ...products.flatMap((one) =>
    [one.from, one.to].flatMap(({ weeksUntilReorder, orderBy, runsOutOn }) => [weeksUntilReorder, orderBy, runsOutOn]),
  ),
];

test('every figure of an answer is the value of the working that opens under it', () => {
  for (const fields of [
    { use: '160' },
    { price: '150' },
    { lost: TODAY },
    { extra: program, extraOn: '2026-04-20' },
    { bench: program, plants: '500', ml: '30' },
  ]) {
    const answer = said(fields);
    expect(figuresIn(answer).length).toBeGreaterThan(0);
    for (const { at, value } of figuresIn(answer)) expect(workingOf(figures, at)?.value, at).toEqual(value);
    // What is said to change does: as it is planned is one thing, and as it would be another.
    for (const { from, to } of answer.sums) expect(to.value, to.at).not.toEqual(from.value);
    for (const { from, to } of answer.products) {
      expect([to.orderBy.value, to.runsOutOn.value]).not.toEqual([from.orderBy.value, from.runsOutOn.value]);
    }
  }
});

test('supposing nothing says nothing, and is not taken for a supposition', () => {
  for (const fields of [{}, { price: '100', use: '100' }, { product: 'light-oil-98', price: ' 100 ' }]) {
    expect(isSupposed(whatIfIn(fields))).toBe(false);
    expect(said(fields)).toMatchObject({ isSupposed: false, sums: [], products: [], sooner: 0, later: 0, faults: [] });
  }
});

test('more use brings order days forward: the one to order first comes first, and each is counted', () => {
  const { products, sooner, later, sums } = said({ use: '200' });
  expect(sooner).toBeGreaterThan(1);
  expect(later).toBe(0);
  const days = products.map(({ to }) => (to.orderBy.value.kind === 'day' ? to.orderBy.value.day : '9999-12-31'));
  expect(days).toEqual(days.toSorted());
  for (const { from, to } of products) {
    if (from.weeks !== null && to.weeks !== null) expect(to.weeks).toBeLessThanOrEqual(from.weeks);
  }
  expect(sums.find(({ what }) => what === 'Product sprayed')).toMatchObject({ isMore: true });
});

test('less use puts them off', () => {
  expect(said({ use: '20' })).toMatchObject({ sooner: 0 });
  expect(said({ use: '20' }).later).toBeGreaterThan(0);
});

test('what the labels stop about a spraying more is said beside what it costs, and about nothing else', () => {
  const [first] = figures.plan.sprayings.filter(({ date }) => date > TODAY);
  if (!first) throw new Error('the demo shop sprays nothing later');
  const { stops, sums } = said({ extra: first.program.id, extraOn: first.date });
  expect(sums.length).toBeGreaterThan(0);
  expect(stops.length).toBeGreaterThan(0);
  expect(stops.every(({ severity, rule }) => severity === 'stop' && rule !== 'short')).toBe(true);
  const known = new Set(figures.plan.flags.map(({ message }) => message));
  expect(stops.some(({ message }) => !known.has(message))).toBe(true);
  for (const fields of [{ use: '300' }, { lost: TODAY }]) expect(said(fields).stops).toEqual([]);
});

const faultsOf = (fields: Partial<WhatIfFields>) => said(fields).faults.map(({ path }) => path);

test('what is half typed is asked for, what cannot be is said, and neither is supposed', () => {
  const wrong: [Partial<WhatIfFields>, string[]][] = [
    [{ extra: program }, ['extraOn']],
    [{ extraOn: '2026-04-20' }, ['extra']],
    [{ bench: program, plants: '20' }, ['ml']],
    [{ plants: '20', ml: '5' }, ['bench']],
    [{ extra: program, extraOn: '2026-04-13' }, ['extraOn']],
    [{ extra: program, extraOn: '2026-10-13' }, ['extraOn']],
    [{ extra: program, extraOn: '20 April' }, ['extraOn']],
    [{ lost: '2026-04-01' }, ['lost']],
    [{ lost: '2027-04-01' }, ['lost']],
    [{ use: '301' }, ['use']],
    [{ price: '-5' }, ['price']],
    [{ extra: 'gone', extraOn: '2026-04-20' }, ['extra']],
    [{ bench: 'gone', plants: '20', ml: '5' }, ['bench']],
    [{ product: 'gone', use: '200' }, ['product']],
  ];
  for (const [fields, paths] of wrong) {
    expect(faultsOf(fields), JSON.stringify(fields)).toEqual(paths);
    expect(said(fields), JSON.stringify(fields)).toMatchObject({ isSupposed: false, sums: [], products: [] });
  }
  // The last day that the weeks ahead reach, and a week that began before today and ends in it.
  for (const fields of [{ extra: program, extraOn: '2026-10-12' }, { lost: '2026-04-08' }]) {
    expect(said(fields), JSON.stringify(fields)).toMatchObject({ isSupposed: true, faults: [] });
  }
});

test('beside what is half typed the rest is supposed', () => {
  expect(said({ use: '200', extra: program })).toMatchObject({ isSupposed: true, faults: [{ path: 'extraOn' }] });
  expect(said({ use: '200', extra: program }).products.map(({ product }) => product)).toEqual(
    said({ use: '200' }).products.map(({ product }) => product),
  );
});

/** 12 plants of 18 mL every day take 0.7 mL of 500 mL; twenty times as much runs out within the weeks ahead. */
const DAILY = {
  ...SMALL,
  lots: SMALL.lots.slice(0, 1),
  programs: SMALL.programs.map((one) => ({ ...one, repeat: 'FREQ=DAILY' })),
};

const ask = async (shopId: string, clock = CLOCK) => {
  const answer = await whatIfAnswer({ ...whatIfIn({ use: '300' }), shop: shopId }, clock);
  if (!answer.ok) throw new Error(JSON.stringify(answer.refusal));
  const { sums, products } = answer.value;
  return [...sums, ...products.map(({ from, to }) => ({ from: from.runsOutOn, to: to.runsOutOn }))].map(
    ({ from, to }) => [from.value, to.value],
  );
};

test('an answer is about the shop as it stands when it is asked, also when the same was asked before', async () => {
  const shopId = await smallShop(DAILY);
  const before = await ask(shopId);
  expect(await ask(shopId)).toEqual(before);
  await drawStock({ commandId: 'd', shopId, lot: 'l', place: 0, amount: stock(495_000), drawnAt: today(8) }, CLOCK);
  const after = await ask(shopId);
  expect(after).not.toEqual(before);
  expect(await ask(shopId, clockPinnedTo('2026-08-31T09:00:00Z'))).not.toEqual(after);
});

test('of a shop that is not there nothing is said', async () => {
  await smallShop();
  expect(await whatIfAnswer({ ...whatIfIn({}), shop: 'gone' }, CLOCK)).toMatchObject({ ok: false });
});
