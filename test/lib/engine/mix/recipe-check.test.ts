import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CheckedLine } from '@/lib/engine/mix/line-check';
import { type RecipeCheck, recipeCheck } from '@/lib/engine/mix/recipe-check';
import { BLANK_LINE, movedInOrder, type RecipeDraft, type RecipeLine } from '@/shared/forms/recipe';
import { product, smallShop } from '../rules/small-shop';

const FOLIAR = { use: 'foliar', min: '4 fl oz/100 gal', max: '16 fl oz/100 gal' };

const shop = smallShop({
  settings: { fillCapacity: '2 gal', water: { alkalinityMgPerLCaCO3: 120, pH: 7.6 } },
  products: [
    product('oil', { rates: [FOLIAR], reiHours: 4, protectiveEquipment: ['gloves'] }, { formulation: 'EC' }),
    product(
      'spin',
      { reiHours: null, sprayPh: { min: 5, max: 7 }, doNotMixWith: ['Product oil'], protectiveEquipment: ['gloves'] },
      { formulation: 'SC', contents: [{ substance: 'spinosad', amount: 240, basis: 'g/L' }] },
    ),
    product('wp', { reiHours: 12 }, { form: 'powder', formulation: 'WP' }),
    product('soap', {}, { kind: 'surfactant' }),
  ],
  suppliers: [{ id: 's', name: 'Bay Growers' }],
  offers: [
    { id: 'o1', supplier: 's', product: 'oil', pack: '1 L', price: '50.00' },
    { id: 'o2', supplier: 's', product: 'oil', pack: '2 L', price: '80.00' },
    { id: 'o3', supplier: 's', product: 'spin', pack: '500 mL', price: '100.00' },
    { id: 'o4', supplier: 's', product: 'wp', pack: '1 kg', price: '30.00' },
  ],
  recipes: [],
});

const draft = (...lines: Partial<RecipeLine>[]): RecipeDraft => ({
  name: 'Trial',
  targetPh: '',
  useWithinHours: '',
  lines: lines.map((line) => ({ ...BLANK_LINE, ...line })),
});

const check = (...lines: Partial<RecipeLine>[]): RecipeCheck => recipeCheck(shop, draft(...lines));

function readLine({ lines }: RecipeCheck, place = 0): CheckedLine {
  const line = lines[place];
  if (line?.kind !== 'read') throw new Error(JSON.stringify(line));
  return line;
}

test('a dose per 100 gallons reads per litre, per gallon and per fill, beside the range of its label', () => {
  const line = readLine(check({ product: 'oil', dose: '8 fl oz/100 gal', use: 'foliar' }));
  // 8 fl oz on 100 gal is 0.625 mL on a litre, and a sixteenth of a fluid ounce on each 128.
  expect(line.amount).toMatchObject({ perLitre: expect.closeTo(625, 6), perGallon: expect.closeTo(2365.882365, 6) });
  expect(line.amount).toMatchObject({ perFill: expect.closeTo(2 * 2365.882365, 6) });
  expect(line.label).toMatchObject({ fits: true, message: null });
  expect(line.label.ranges).toEqual(['4 fl oz/100 gal to 16 fl oz/100 gal for "foliar"']);
});

test('a dose above its label is a stop, and the sentence names the most', () => {
  const { label } = readLine(check({ product: 'oil', dose: '17 fl oz/100 gal', use: 'foliar' }));
  expect(label).toMatchObject({ fits: false, severity: 'stop' });
  expect(label.message).toContain('Use 16 fl oz/100 gal or less');
  expect(readLine(check({ product: 'oil', dose: '16 fl oz/100 gal', use: 'foliar' })).label.fits).toBe(true);
});

test('a litre costs what the cheapest offer asks, and the offer is named', () => {
  const { costPerLitre, lines } = check({ product: 'oil', dose: '5 mL/L' });
  expect(costPerLitre).toBe(200_000);
  expect(readLine({ lines } as RecipeCheck).cost.at).toEqual({
    pack: '2 L',
    price: 80_000_000,
    supplier: 'Bay Growers',
  });
});

test('one line without a price makes the whole cost unknown, and says what to enter', () => {
  const { costPerLitre, toKnowCost } = check({ product: 'oil', dose: '5 mL/L' }, { product: 'soap', dose: '1 mL/L' });
  expect(costPerLitre).toBeNull();
  expect(toKnowCost).toEqual(['Enter an offer for Product soap, with its price.']);
});

test('a spoon of a powder that was never weighed asks for the weight, and costs nothing known', () => {
  const spooned = check({ product: 'wp', dose: '1 tsp/gal' });
  expect(readLine(spooned)).toMatchObject({
    amount: null,
    missing: expect.stringContaining('Weigh one level teaspoon'),
  });
  expect(spooned.costPerLitre).toBeNull();
});

test('a dose by area is an amount on the ground, and has no cost per litre', () => {
  const byArea = check({ product: 'oil', dose: '2 mL/m2' });
  expect(readLine(byArea)).toMatchObject({ amount: { perSquareMetre: 2000 }, label: { fits: null, severity: 'note' } });
  expect(byArea).toMatchObject({ costPerLitre: null, toKnowCost: [expect.stringContaining('goes by area')] });
});

test('a dose that cannot be read says why, and the other lines are worked out all the same', () => {
  const { lines, costPerLitre } = check({ product: 'oil', dose: '8 oz/gal' }, { product: 'wp', dose: '2 g/L' }, {});
  expect(lines[0]).toMatchObject({ kind: 'fault', field: 'dose', message: expect.stringContaining('fl oz') });
  expect(lines[1]).toMatchObject({ kind: 'read', cost: { perLitre: 60_000 } });
  expect(lines[2]).toBeNull();
  expect(costPerLitre).toBeNull();
});

test('a dose in ppm of what the product does not hold is refused with what it holds', () => {
  expect(check({ product: 'spin', dose: '40 ppm neem' }).lines[0]).toMatchObject({
    message: expect.stringContaining('It holds spinosad.'),
  });
  expect(check({ product: 'spin', dose: '40 ppm spinosad' }).strength).toEqual([{ substance: 'spinosad', mgPerL: 40 }]);
});

test('products that must not meet, an unknown interval and the wrong pH are flagged while typing', () => {
  const { flags, reiMinutes, equipment } = check(
    { product: 'oil', dose: '1 %', use: 'foliar' },
    { product: 'spin', dose: '40 ppm spinosad' },
  );
  expect(flags.map(({ severity }) => severity)).toEqual(['stop', 'warn', 'stop']);
  expect(reiMinutes).toBeNull();
  expect(equipment).toEqual(['gloves']);
  expect(check({ product: 'oil', dose: '1 %' }, { product: 'wp', dose: '1 g/L' }).reiMinutes).toBe(12 * 60);
});

test('lines go in by their formulation, unless the recipe gives one a place of its own', () => {
  const names = ({ order }: RecipeCheck) => order.map(({ name, line, overriddenBy }) => [name, line, overriddenBy]);
  const [oil, wp] = [
    { product: 'oil', dose: '1 %' },
    { product: 'wp', dose: '1 g/L' },
  ];
  expect(names(check(oil, {}, wp))).toEqual([
    ['Product wp', 2, null],
    ['Product oil', 0, null],
  ]);
  expect(names(check({ ...oil, order: '1' }, {}, wp))).toEqual([
    ['Product oil', 0, 'recipe'],
    ['Product wp', 2, null],
  ]);
});

test('a line moved up or down stands where it was put, and moving it back changes nothing else', () => {
  const line = fc.record({
    product: fc.constantFrom('oil', 'spin', 'wp', 'soap'),
    dose: fc.constantFrom('1 mL/L', 'nonsense'),
    order: fc.constantFrom('', '', '1', '3'),
  });
  fc.assert(
    fc.property(fc.array(line, { minLength: 2, maxLength: 5 }), fc.nat(4), fc.constantFrom(-1, 1), (lines, at, by) => {
      const before = check(...lines).order;
      const from = at % Math.max(1, before.length);
      const [moved, other] = [before[from], before[from + by]];
      if (!moved || !other) return;
      const wanted = before.map((each) => (each === moved ? other.line : each === other ? moved.line : each.line));
      const after = check(...movedInOrder(draft(...lines).lines, before, from, by)).order;
      expect(after.map((each) => each.line)).toEqual(wanted);
    }),
  );
});

test('whatever is typed, the check answers, and a known total is the sum of its lines', () => {
  const typed = fc.oneof(
    fc.string({ maxLength: 20 }),
    fc.constantFrom('5 mL/L', '2 tsp/gal', '40 ppm spinosad', '1 g/L', '8 fl oz/100 gal', '4 fl oz/1000 sq ft'),
  );
  const line = fc.record({
    product: fc.constantFrom('oil', 'spin', 'wp', 'soap', 'gone', ''),
    dose: typed,
    use: fc.constantFrom('', 'foliar', 'drench'),
    order: fc.constantFrom('', '1', '2', 'x'),
  });
  const drafts = fc.record({
    name: typed,
    targetPh: fc.constantFrom('', '6', 'six'),
    useWithinHours: fc.constantFrom('', '8'),
    lines: fc.array(line, { maxLength: 5 }),
  });
  fc.assert(
    fc.property(drafts, (any) => {
      const { lines, costPerLitre, order } = recipeCheck(shop, any);
      expect(lines).toHaveLength(any.lines.length);
      const read = lines.flatMap((each) => (each?.kind === 'read' ? each : []));
      expect(new Set(order.map((each) => each.line)).size).toBe(read.length);
      if (costPerLitre === null) return;
      expect(costPerLitre).toBe(read.reduce((total, { cost }) => total + (cost.perLitre ?? Number.NaN), 0));
    }),
    { numRuns: 300 },
  );
});
