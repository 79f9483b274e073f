import { expect, test } from 'vitest';
import { planOf, productFigures, shopWith, sprayingFigures, type Written } from './plan-of';

/*
 * From bench to bottle. Source of every figure here: worked by hand from the definitions of the shop file.
 */

const bench = (...plants: [count: number, ml: number][]) => ({
  id: 'b1',
  name: 'Bench',
  plants: plants.map(([count, mlPerPlant], index) => ({ name: `group ${index}`, count, mlPerPlant })),
});

const once = (benches = ['b1']) => ({
  id: 'g1',
  recipes: ['r1'],
  benches,
  startsOn: '2026-05-04',
  startTime: '10:00',
  minutes: 40,
});

const recipe = (...ingredients: [product: string, dose: string][]) => ({
  id: 'r1',
  name: 'Recipe',
  ingredients: ingredients.map(([product, dose]) => ({ product, dose })),
});

test('one bench and one product, without loss, three weeks running', () => {
  /*
   * Spray     100 plants × 20 mL = 2,000 mL; 2,000 ÷ 10,000 is one fill, no step: 2,000 mL.
   * Amount    5 mL/L × 2 L = 10 mL.
   * Cost      1 L was paid 30.00, so each 10 mL is 30.00 × 10 ÷ 1,000 = 0.30, three times.
   * Labour    40 minutes at 18.00 an hour = 12.00.
   * Shelf     1,000 mL, then 990, 980, 970.
   */
  const plan = planOf(
    shopWith({
      shop: { wagePerHour: '18.00' },
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
      lots: [
        { id: 'l1', product: 'p1', pack: '1 L', paid: '30.00', receivedOn: '2026-05-01', expiresOn: '2027-05-01' },
      ],
      benches: [bench([100, 20])],
      recipes: [recipe(['p1', '5 mL/L'])],
      programs: [{ ...once(), repeat: 'FREQ=WEEKLY;BYDAY=MO' }],
    }),
    '2026-05-04',
    3,
  );
  expect(sprayingFigures(plan)).toEqual(
    ['2026-05-04', '2026-05-11', '2026-05-18'].map((date) => ({
      date,
      recipe: 'r1',
      startsAt: `${date}T10:00:00+00:00`,
      endsAt: `${date}T10:40:00+00:00`,
      reopensAt: `${date}T10:40:00+00:00`,
      fills: 1,
      fillMl: 2000,
      sprayMl: 2000,
      plants: 100,
      lines: [{ product: 'p1', amount: 10, cost: '0.300000' }],
      materialCost: '0.300000',
      labourCost: '12.000000',
    })),
  );
  expect(productFigures(plan, 'p1')).toEqual({
    onHand: 1000,
    usable: 1000,
    runsOutOn: null,
    orderBy: null,
    weeksUntilReorder: null,
    wasteCost: '0.000000',
    weeks: [
      [10, 10, 0, 0, 0, 990],
      [10, 10, 0, 0, 0, 980],
      [10, 10, 0, 0, 0, 970],
    ],
  });
  expect(plan.totals).toEqual({
    materialCost: 900_000,
    labourCost: 36_000_000,
    wasteCost: 0,
    unknownCosts: 0,
    unknownLabour: 0,
    unknownWaste: 0,
  });
  expect(plan.flags).toEqual([]);
});

test('three fills with a loss and a measuring step, drawn from a quart in four telescoping draws', () => {
  /*
   * Capacity  2 gal = 7,570.823568 mL; less 100 mL of loss = 7,470.823568 mL.
   * Spray     250 × 55 × 1.1 = 15,125 mL on the first bench, 96 × 28 = 2,688 mL on the second: 17,813 mL.
   * Fills     17,813 ÷ 7,470.823568 = 2.38, up to 3. Each 17,813 ÷ 3 + 100 = 6,037.67 mL, up to 6,500. Spray 19,500 mL.
   * Amount    2 tsp/gal: a gallon is 768 tsp, so 2/768 = 1/384. 19,500 ÷ 384 = 50.78125 mL = 50,781.25 µL → 50,781 µL.
   * Shelf     1 qt = 3,785,411.784 ÷ 4 = 946,352.946 µL, entered as 946,353 µL.
   * Cost      40.00 × n × 50,781 ÷ 946,353, rounded over what has left the bottle, is in micros
   *             n = 1   2,146,387.24 → 2,146,387                    first draw   2.146387
   *             n = 2   4,292,774.47 → 4,292,774   less 2,146,387   second draw  2.146387
   *             n = 3   6,439,161.71 → 6,439,162   less 4,292,774   third draw   2.146388
   *             n = 4   8,585,548.94 → 8,585,549   less 6,439,162   fourth draw  2.146387
   */
  const plan = planOf(
    shopWith({
      shop: { fillCapacity: '2 gal', lossPerFill: '100 mL', measuringStep: '0.5 L' },
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
      lots: [
        { id: 'l1', product: 'p1', pack: '1 qt', paid: '40.00', receivedOn: '2026-05-01', expiresOn: '2027-05-01' },
      ],
      benches: [
        { ...bench([250, 55]), coverage: 1.1 },
        { ...bench([96, 28]), id: 'b2' },
      ],
      recipes: [recipe(['p1', '2 tsp/gal'])],
      programs: [{ ...once(['b1', 'b2']), repeat: 'FREQ=DAILY;COUNT=4' }],
    }),
    '2026-05-04',
    1,
  );
  const figures = sprayingFigures(plan);
  expect(figures.map(({ fills, fillMl, sprayMl, plants }) => [fills, fillMl, sprayMl, plants])).toEqual(
    Array.from({ length: 4 }, () => [3, 6500, 19500, 346]),
  );
  expect(figures.flatMap(({ lines }) => lines.map(({ amount, cost }) => [amount, cost]))).toEqual([
    [50.781, '2.146387'],
    [50.781, '2.146387'],
    [50.781, '2.146388'],
    [50.781, '2.146387'],
  ]);
  // Wage unknown: labour is unknown, not free.
  expect(figures.map(({ labourCost }) => labourCost)).toEqual([null, null, null, null]);
  // 946.353 − 4 × 50.781 = 743.229 mL.
  expect(productFigures(plan, 'p1').weeks).toEqual([[203.124, 203.124, 0, 0, 0, 743.229]]);
});

test.each([
  {
    // 149 × 50 = 7,450 mL, one fill. With 100 mL of loss 7,550, up to 8,000 by the step: more than the sprayer holds,
    // so it is filled to its 7,570.823568 mL, which is 2 gal. At 2 tsp/gal that takes 4 tsp = 4 × 4.92892159375 =
    // 19.715686 mL.
    name: 'the step may not take a fill over what the sprayer holds',
    sprayer: { fillCapacity: '2 gal', lossPerFill: '100 mL', measuringStep: '0.5 L' },
    plants: [149, 50],
    dose: '2 tsp/gal',
    expected: [1, 7570.823568, 7570.823568, 19.716],
  },
  {
    // 8 L less 200 mL holds 7,800 mL on the plants; 312 × 50 = 15,600 mL is exactly two of them, each 8,000 mL.
    // 1 mL/L × 16 L = 16 mL.
    name: 'exactly two fills are two',
    sprayer: { fillCapacity: '8 L', lossPerFill: '200 mL', measuringStep: '0.5 L' },
    plants: [312, 50],
    dose: '1 mL/L',
    expected: [2, 8000, 16000, 16],
  },
  {
    // 15,601 mL: three fills of 5,200.33 + 200 = 5,400.33, up to 5,500. 16.5 mL.
    name: 'one millilitre more is three',
    sprayer: { fillCapacity: '8 L', lossPerFill: '200 mL', measuringStep: '0.5 L' },
    plants: [15601, 1],
    dose: '1 mL/L',
    expected: [3, 5500, 16500, 16.5],
  },
])('$name', ({ sprayer, plants: [count = 0, ml = 0], dose, expected }) => {
  const plan = planOf(
    shopWith({
      shop: sprayer,
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
      benches: [bench([count, ml])],
      recipes: [recipe(['p1', dose])],
      programs: [once()],
    }),
    '2026-05-04',
    1,
  );
  const [figures] = sprayingFigures(plan);
  expect([figures?.fills, figures?.fillMl, figures?.sprayMl, figures?.lines[0]?.amount]).toEqual(expected);
});

/** 2.5 L of spray: 100 plants at 25 mL. */
function amountIn(product: Written['products'], dose: string): number | null | undefined {
  const plan = planOf(
    shopWith({
      products: product,
      benches: [bench([100, 25])],
      recipes: [recipe(['p1', dose])],
      programs: [once()],
    }),
    '2026-05-04',
    1,
  );
  return sprayingFigures(plan)[0]?.lines[0]?.amount;
}

type Made = {
  form: 'liquid' | 'powder';
  contents?: [amount: number, basis: '% w/w' | '% w/v' | 'g/L' | 'g/kg' | 'lb/gal'];
  density?: number;
};

const made = ({ form, contents, density }: Made) => [
  {
    id: 'p1',
    name: 'P1',
    kind: 'insecticide' as const,
    form,
    densityGPerMl: density ?? null,
    contents: contents ? [{ substance: 'quassin', amount: contents[0], basis: contents[1] }] : [],
    label: { reiHours: 0 },
  },
];

test.each<Made & { dose: string; amount: number | null; why: string }>([
  { form: 'liquid', contents: [0.5, '% w/v'], dose: '60 ppm quassin', amount: 30, why: '5 mg/mL: 12 mL/L × 2.5 L' },
  {
    form: 'liquid',
    contents: [22, '% w/w'],
    density: 1.05,
    dose: '100 ppm quassin',
    amount: 1.082,
    why: '0.22 × 1.05 = 231 mg/mL: 100 ÷ 231 × 2.5 = 1.082251 mL',
  },
  {
    form: 'liquid',
    contents: [22, '% w/w'],
    dose: '100 ppm quassin',
    amount: null,
    why: '% w/w of a liquid needs its density',
  },
  {
    form: 'liquid',
    contents: [300, 'g/L'],
    dose: '75 ppm quassin',
    amount: 0.625,
    why: '300 mg/mL: 0.25 mL/L × 2.5 L',
  },
  {
    form: 'liquid',
    contents: [2, 'lb/gal'],
    dose: '60 ppm quassin',
    amount: 0.626,
    why: '907,184.74 mg in 3,785.411784 mL = 239.652855 mg/mL: 60 ÷ 239.652855 × 2.5 = 0.625905 mL',
  },
  { form: 'powder', contents: [85, '% w/w'], dose: '170 ppm quassin', amount: 0.5, why: '850 mg/g: 0.2 g/L × 2.5 L' },
  { form: 'powder', contents: [500, 'g/kg'], dose: '50 ppm quassin', amount: 0.25, why: '500 mg/g: 0.1 g/L × 2.5 L' },
  { form: 'liquid', dose: '0.5 %', amount: 12.5, why: '5 mL/L of a liquid' },
  { form: 'powder', dose: '0.5 %', amount: 12.5, why: '5 g/L of a powder' },
  {
    form: 'liquid',
    dose: '8 fl oz/100 gal',
    amount: 1.563,
    why: '100 gal are 12,800 fl oz, so 1/1,600: 1,562.5 µL exactly, and a half goes up',
  },
  { form: 'liquid', dose: '6 drops/gal', amount: 0.198, why: '300 µL per 3.785411784 L × 2.5 L = 198.129 µL' },
  { form: 'liquid', dose: '1.5 g/L', density: 1.2, amount: 3.125, why: '1.5 ÷ 1.2 = 1.25 mL/L × 2.5 L' },
  { form: 'liquid', dose: '1.5 g/L', amount: null, why: 'mass of a liquid needs its density' },
])('$dose of a $form in 2.5 L: $why', ({ dose, amount, ...product }) => {
  expect(amountIn(made(product), dose)).toBe(amount);
});
