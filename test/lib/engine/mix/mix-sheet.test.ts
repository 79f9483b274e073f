import { expect, test } from 'vitest';
import { batchFor, type MixFor } from '@/lib/engine/mix/batch';
import { JAR_STANDS_MINUTES, jarAmount } from '@/lib/engine/mix/jar-test';
import { measuredWith } from '@/lib/engine/mix/measuring';
import { mixSheet } from '@/lib/engine/mix/mix-sheet';
import type { Shop, Sprayer } from '@/lib/engine/shop';
import { type Exact, exact, fraction, toNumber } from '@/shared/quantity/exact';
import { application, bench, day, type Fields, product, recipe, type SmallShop, smallShop } from '../rules/small-shop';

const TODAY = day('2026-03-02');
const volume = (ml: number, area: Exact | null = null): MixFor => ({ kind: 'volume', ml: exact(ml), area });

function sheetOf(parts: SmallShop, what: (shop: Shop) => MixFor, sprayer: (shop: Shop) => Sprayer | null = () => null) {
  const shop = smallShop(parts);
  const batch = batchFor(what(shop), sprayer(shop));
  const [first] = shop.recipes;
  if (!batch.ok || !first) throw new Error(batch.ok ? 'there is a recipe' : batch.message);
  return mixSheet(shop, first, batch.value, TODAY, exact(30n));
}

/** A sprayer of 10 L that keeps 200 mL of each fill, marked by half litres. */
const SPRAYERS = [
  { name: 'knapsack', capacity: '10 L', lossPerFill: '200 mL', measuringStep: '0.5 L' },
  { name: 'hand sprayer', capacity: '2 L' },
];
const MEASURES = [
  { name: '10 mL cylinder', holds: '10 mL', step: '0.5 mL' },
  { name: 'scale', holds: '500 g', step: '0.1 g' },
];
const settings = { sprayers: SPRAYERS, measures: MEASURES, wagePerHour: '18.00' };

test('these benches: equal fills with their loss, the pours of one fill, and the cost of all of it', () => {
  const parts = {
    settings,
    benches: [bench('b1', { plants: [{ name: 'ferns', count: 600, mlPerPlant: 20 }] })],
    lots: [{ id: 'l1', product: 'p1', pack: '1 L', paid: '100.00', receivedOn: '2026-01-01' }],
  };
  const { batch, steps, waterFirst, cost, flags } = sheetOf(
    parts,
    ({ benches }) => ({ kind: 'benches', benches }),
    ({ sprayer }) => sprayer,
  );
  // 12 L over fills of at most 9.8 L: two of 6 L and 200 mL, up to 6.5 L. 2 mL/L is 13 mL in each.
  expect([batch.spray.fills, toNumber(batch.spray.fill), toNumber(batch.spray.total), batch.plants]).toEqual([
    2, 6500, 13000, 600,
  ]);
  const [step] = steps;
  expect(step && [step.line.amount, step.perFill && toNumber(step.perFill)]).toEqual([26_000, 13_000]);
  expect(step?.measured && measuredWith(step.measured)).toBe('10 mL cylinder, 1 full and 1 to 3 mL');
  expect([toNumber(waterFirst.least), toNumber(waterFirst.most)]).toEqual([3250, 4875]);
  // 26 mL at ten cents, over 13 L and 600 plants; half an hour at 18.
  expect(cost).toEqual({ material: 2_600_000, perLitre: 200_000, perPlant: 4_333, labour: 9_000_000 });
  expect(step?.line.draws).toMatchObject([{ amount: 26_000, container: { lot: 'l1' } }]);
  expect(flags).toEqual([]);
});

test('just these fourteen plants, with the sprayer of choice', () => {
  const plants = [{ name: 'orchids', pot: null, count: 14, mlPerPlant: 15 }];
  const { batch, cost } = sheetOf(
    { settings },
    () => ({ kind: 'plants', plants, coverage: 1, area: null }),
    ({ sprayers }) => sprayers[1] ?? null,
  );
  expect([batch.spray.fills, toNumber(batch.spray.fill), batch.plants]).toEqual([1, 210, 14]);
  expect(cost.perPlant).toBe(6);
});

test('a volume is the finished one: one vessel without a sprayer, its fills with one, and no plants', () => {
  const one = sheetOf({ settings }, () => volume(5000));
  expect([one.batch.spray.fills, toNumber(one.batch.spray.fill), one.cost.perPlant]).toEqual([1, 5000, null]);
  const split = sheetOf(
    { settings },
    () => volume(5000),
    ({ sprayers }) => sprayers[1] ?? null,
  );
  expect([split.batch.spray.fills, toNumber(split.batch.spray.total)]).toEqual([3, 5000]);
  expect(split.steps[0]?.perFill).toEqual(fraction(10_000n, 3n));
});

test.each([
  [{ kind: 'volume', ml: exact(0), area: null }, /no spray at all/],
  [
    { kind: 'plants', plants: [{ name: 'orchids', pot: null, count: 3, mlPerPlant: null }], coverage: 1, area: null },
    /^Enter the mL per plant of orchids/,
  ],
  [{ kind: 'plants', plants: [], coverage: 1, area: null }, /nothing to spray/],
] as const)('a batch of nothing, or of nobody knows how much, is refused with a sentence', (what, says) => {
  const { sprayer } = smallShop({ settings });
  const batch = batchFor(what.kind === 'plants' ? { ...what, plants: [...what.plants] } : what, sprayer);
  expect(batch).toEqual({ ok: false, message: expect.stringMatching(says) });
  expect(batchFor({ kind: 'benches', benches: [] }, null)).toMatchObject({
    ok: false,
    message: expect.stringMatching(/sprayer/),
  });
});

test('water goes in first, but leaves room for what is poured after it', () => {
  const strong = sheetOf({ settings, recipes: [recipe('r1', { product: 'p1', dose: '400 mL/L' })] }, () =>
    volume(1000),
  );
  expect([toNumber(strong.waterFirst.least), toNumber(strong.waterFirst.most)]).toEqual([500, 600]);
  const neat = sheetOf({ settings, recipes: [recipe('r1', { product: 'p1', dose: '100 %' })] }, () => volume(1000));
  expect([toNumber(neat.waterFirst.least), toNumber(neat.waterFirst.most)]).toEqual([0, 0]);
});

test('an amount that is measured more than five per cent off comes with a larger fill and a stock solution', () => {
  const tiny = { settings, recipes: [recipe('r1', { product: 'p1', dose: '0.03 mL/L' })] };
  const [step] = sheetOf(tiny, () => volume(1000)).steps;
  expect(step?.measured && toNumber(step.measured.amount)).toBe(500);
  // 0.5 mL is within five per cent of 0.4762 mL, which is in 15.874 L.
  expect(step?.better?.fillMl).toEqual(exact(15874n));
  expect(step?.better?.solution).toMatchObject({ batches: 50, makeUpToMl: exact(500n), useMl: exact(10n) });
  expect(sheetOf(tiny, () => volume(16_000)).steps[0]?.better).toBeNull();
});

test('an amount that the shelf would keep as nothing is still measured, and not as nothing', () => {
  const trace = { settings, recipes: [recipe('r1', { product: 'p1', dose: '0.1 µL/L' })] };
  const [step] = sheetOf(trace, () => volume(1000)).steps;
  expect(step?.line.amount).toBe(0);
  expect(step?.perFill).toEqual(fraction(1n, 10n));
  expect(step?.measured && toNumber(step.measured.amount)).toBe(500);
});

test('at the label’s most, measuring rounds down and not over it', () => {
  const at = (max: string, dose: string) => {
    const labelled = product('p1', { rates: [{ use: 'foliar', max }] });
    const parts = { settings, products: [labelled], recipes: [recipe('r1', { product: 'p1', dose })] };
    const [step] = sheetOf(parts, () => volume(1000)).steps;
    return step?.measured && toNumber(step.measured.amount) / 1000;
  };
  expect(at('4.8 mL/L', '4.8 mL/L')).toBe(4.5);
  expect(at('5 mL/L', '4.8 mL/L')).toBe(5);
});

test.each([
  [product('p1', {}, { form: 'powder' }), '1 g/L', /^Enter a scale, .*or weigh a level teaspoon/],
  [product('p1'), '1 mL/L', /^Enter what the shop measures liquids with/],
])('without anything that measures it, the step says what to enter', (one, dose, says) => {
  const parts = { products: [one], recipes: [recipe('r1', { product: 'p1', dose })] };
  expect(sheetOf(parts, () => volume(1000)).steps[0]).toMatchObject({
    measured: null,
    missing: expect.stringMatching(says),
  });
});

const three: Fields[] = [
  product('a', { reiHours: 4, signalWord: 'CAUTION', protectiveEquipment: ['gloves', 'boots'] }),
  product('b', { reiHours: 24, signalWord: 'Danger', protectiveEquipment: ['Gloves', 'respirator'] }),
  product('c', { reiHours: 0, signalWord: 'warning' }),
];

test('what to wear is all that any label asks for, the signal word the gravest, the interval the longest', () => {
  const parts = { products: three, recipes: [{ ...recipe('r1', 'a', 'b', 'c'), useWithinHours: 8 }] };
  const { wearing, rei, useWithin } = sheetOf(parts, () => volume(1000));
  expect(wearing).toMatchObject({
    equipment: ['gloves', 'boots', 'respirator'],
    equipmentUnknown: [{ id: 'c' }],
    signalWord: 'Danger',
  });
  expect([rei, useWithin]).toEqual([1440, 480]);
  const unknown = [...three, product('d', { reiHours: null, signalWord: 'DANGER: POISON' })];
  const other = sheetOf({ products: unknown, recipes: [recipe('r1', 'a', 'd')] }, () => volume(1000));
  expect([other.rei, other.wearing.signalWord]).toEqual([null, 'DANGER: POISON']);
});

test('pairs that were never in one tank are to be tried in a jar first, in the recipe’s own proportion', () => {
  const recipes = [recipe('r1', 'a', 'b', 'c'), recipe('old', 'c', 'a')];
  const record = application('x', '2026-02-01T10:00:00Z', '2026-02-01T11:00:00Z', { recipe: 'old' });
  const sheet = sheetOf({ products: three, recipes, applications: [record] }, () => volume(1000));
  expect(sheet.untried.map((pair) => pair.map(({ id }) => id))).toEqual([
    ['a', 'b'],
    ['b', 'c'],
  ]);
  const [first] = sheet.steps;
  // 2 mL/L in half a litre.
  expect(first && jarAmount(first.ingredient, { area: null, sprayMl: null })).toEqual(exact(1000n));
  expect(JAR_STANDS_MINUTES).toBe(15);
});

const words = (ids: Fields[], places: Record<string, number> = {}) => {
  const lines = ids.map(({ id }) => ({ product: id, dose: '1 mL/L', order: places[String(id)] ?? null }));
  return sheetOf({ products: ids, recipes: [recipe('r1', ...lines)] }, () => volume(1000)).cautions.map(
    ({ message }) => message,
  );
};
const silicate = product('silicate', {}, { alkaliSilicate: true, kind: 'nutrient' });
const acid = product('acid', {}, { kind: 'pH adjuster' });
const calcium = product(
  'calcium',
  {},
  { kind: 'nutrient', contents: [{ substance: 'CaO', amount: 10, basis: '% w/w' }] },
);

test('a silicate is kept from acid, calcium and magnesium, and said aloud when a recipe puts it late', () => {
  expect(words([silicate])).toEqual([]);
  expect(words([acid, silicate])).toEqual([
    'Product silicate goes first, into plain water, and Product acid last, well diluted and little by little: silicate gels where acid meets it undiluted.',
  ]);
  expect(words([calcium, silicate])).toEqual([expect.stringMatching(/^Product calcium brings calcium or magnesium/)]);
  expect(words([acid, silicate], { acid: 1 })[0]).toMatch(/does not go in first here/);
});
