import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type MixAsked, mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import { MixAnswer } from '@/shared/api/answers';
import { readArea } from '@/shared/measure/area';
import { readVolume } from '@/shared/measure/size';
import type { Reading } from '@/shared/outcome';
import { day, type Fields, product, recipe, type SmallShop, smallShop } from '../rules/small-shop';

function known<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}

/** The document that the command prints for a small shop's first recipe. */
function printed(parts: SmallShop, volume: string, area: string | null = null) {
  const asked: MixAsked = {
    recipe: 'r1',
    ml: known(readVolume(volume)),
    area: area === null ? null : known(readArea(area)),
  };
  const outcome = mixAnswerOf(smallShop(parts), asked, day('2026-03-02'));
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  // Nothing but what the API promises is in it.
  return MixAnswer.parse(outcome.value);
}

const MEASURES = [
  { name: '10 mL cylinder', holds: '10 mL', step: '0.5 mL' },
  { name: '1 mL syringe', holds: '1 mL', step: '0.1 mL' },
  { name: 'scale', holds: '500 g', step: '0.1 g' },
];
const WATER = { alkalinityMgPerLCaCO3: 110, pH: 7.4 };
const gloves = { protectiveEquipment: ['gloves'] };

const SILICATE = product(
  'silicate',
  { reiHours: 4, ...gloves },
  {
    kind: 'nutrient',
    alkaliSilicate: true,
    densityGPerMl: 1.2,
    contents: [{ substance: 'K2O', amount: 5, basis: '% w/w' }],
  },
);
const OIL = product(
  'oil',
  { reiHours: 12, protectiveEquipment: ['Gloves', 'eye protection'] },
  {
    formulation: 'EC',
    densityGPerMl: 0.9,
    contents: [{ substance: 'azadirachtin', amount: 1, basis: '% w/v' }],
  },
);
const ACID = product('acid', gloves, {
  kind: 'pH adjuster',
  contents: [{ substance: 'phosphoric acid', amount: 100, basis: 'g/L' }],
});

const lot = (id: string, of: string, pack: string, paid: string, rest: Fields = {}): Fields => ({
  id,
  product: of,
  pack,
  paid,
  receivedOn: '2026-01-05',
  ...rest,
});

/** Four litres: 1.6 mL of silicate and 20 mL of oil, of which one bottle holds 5 mL more and dies first. */
const worked: SmallShop = {
  settings: { water: WATER, measures: MEASURES },
  products: [SILICATE, OIL, ACID],
  lots: [
    lot('l1', 'silicate', '1 L', '20.00'),
    lot('l2', 'oil', '100 mL', '30.00', { remaining: '5 mL', expiresOn: '2026-06-01' }),
    lot('l3', 'oil', '1 L', '150.00', { expiresOn: '2027-06-01' }),
  ],
  recipes: [
    { ...recipe('r1', { product: 'oil', dose: '5 mL/L' }, { product: 'silicate', dose: '0.4 mL/L' }), targetPh: 5.8 },
  ],
};

test('four litres, worked by hand', () => {
  const { steps, flags, pH, assumed, ...rest } = printed(worked, '4 L');
  // No product says how long it keeps once opened.
  expect(assumed.every(({ path }) => /^products\[\d\]\.shelfLife\.openedDays$/.test(path))).toBe(true);
  expect(steps).toEqual([
    {
      order: 1,
      product: 'silicate',
      amount: 1.6,
      unit: 'mL',
      measured: 1.6,
      measuredWith: '1 mL syringe, 1 full and 1 to 0.6 mL',
      errorPercent: 0,
      why: expect.stringContaining('plain water'),
    },
    {
      order: 2,
      product: 'oil',
      amount: 20,
      unit: 'mL',
      measured: 20,
      measuredWith: '10 mL cylinder, 2 full',
      errorPercent: 0,
      why: expect.stringContaining('Emulsifiable concentrates'),
    },
  ]);
  expect(rest).toEqual({
    ml: 4000,
    // 0.4 mL/L of 60 g/L; 5 mL/L of 10 g/L.
    strength: [
      { substance: 'azadirachtin', mgPerL: 50 },
      { substance: 'K2O', mgPerL: 24 },
    ],
    elements: [{ element: 'K', mgPerL: expect.closeTo(24 * 0.83015, 9) }],
    reiHours: 12,
    protectiveEquipment: ['Gloves', 'eye protection'],
    // 1.6 mL at 2 ct, 5 mL of the old oil at 30 ct, 15 mL of the new at 15 ct.
    cost: '3.782000',
  });
  expect(pH).toEqual({
    // Its label says nothing of the silica, which decides how high the pH goes.
    before: null,
    target: 5.8,
    acidMeqPerL: expect.closeTo(2.1853, 3),
    // 100 g/L are 1.02047 mol/L, each of 1.0382 equivalents at pH 5.8.
    acids: [{ product: 'acid', amount: expect.closeTo((2.1853 * 4) / (1.02047 * 1.0382), 2), unit: 'mL' }],
  });
  // Two fillings of a syringe that is read to 0.1 mL: 0.1 of 1.6 mL.
  expect(flags).toMatchObject([{ severity: 'warn', rule: 'measured-roughly', product: 'silicate' }]);
});

test('what is unknown is null and flagged, never zero', () => {
  const unknowns = printed(
    {
      ...worked,
      settings: {},
      products: [
        product('p1', { reiHours: null }, { form: 'powder', contents: [{ substance: 'N', amount: 10, basis: 'g/L' }] }),
      ],
      lots: [],
      recipes: [recipe('r1', { product: 'p1', dose: '1 tsp/L' })],
    },
    '4 L',
  );
  expect(unknowns).toMatchObject({
    steps: [{ amount: null, measured: null, measuredWith: null, errorPercent: null, unit: 'g' }],
    strength: [{ substance: 'N', mgPerL: null }],
    elements: [{ element: 'N', mgPerL: null }],
    pH: { before: null, target: null, acidMeqPerL: null, acids: [] },
    reiHours: null,
    cost: null,
  });
  expect(unknowns.flags.map(({ severity, rule, program, benches }) => [severity, rule, program, benches])).toEqual([
    ['stop', 'rei-unknown', null, []],
    ['note', 'unknown-cost', null, []],
  ]);
});

test('without anything to measure with, the amounts stand and the measured ones are null', () => {
  const { steps } = printed({ ...worked, settings: { water: WATER } }, '4 L');
  expect(steps).toMatchObject([
    { amount: 1.6, measured: null, measuredWith: null, errorPercent: null },
    { amount: 20, measured: null },
  ]);
});

test('the rules of the plan flag a mix, the gravest first, on the day it is asked for', () => {
  const products = [
    product('oil', { rates: [{ use: 'foliar', max: '4 mL/L' }], doNotMixWith: ['sulfur'] }),
    product('sulfur', { reiHours: null, sprayPh: { min: 7, max: 8 } }),
  ];
  const { flags, cost } = printed(
    { products, recipes: [{ ...recipe('r1', { product: 'oil', dose: '5 mL/L' }, 'sulfur'), targetPh: 6 }], lots: [] },
    '4 L',
  );
  expect(flags.map(({ severity, rule, on, product: about }) => `${severity} ${rule} ${on} ${about}`)).toEqual([
    'stop dose-outside-label 2026-03-02 oil',
    'stop must-not-mix 2026-03-02 oil',
    'stop rei-unknown 2026-03-02 sulfur',
    'stop short 2026-03-02 oil',
    'stop short 2026-03-02 sulfur',
    'warn ph-outside-range 2026-03-02 sulfur',
    'note unknown-cost 2026-03-02 oil',
    'note unknown-cost 2026-03-02 sulfur',
  ]);
  expect(cost).toBeNull();
});

test('what is short is priced at the cheapest offer, and counted', () => {
  const offers = [{ id: 'o1', supplier: 's1', product: 'oil', pack: '1 L', price: '100.00', leadDays: 1 }];
  const { cost, flags } = printed(
    {
      ...worked,
      suppliers: [{ id: 's1', name: 'Depot' }],
      offers,
      lots: [lot('l1', 'silicate', '1 L', '20.00'), lot('l2', 'oil', '100 mL', '30.00', { remaining: '5 mL' })],
    },
    '4 L',
  );
  // 1.6 mL at 2 ct, 5 mL at 30 ct, and 15 mL to buy at 10 ct.
  expect(cost).toBe('3.032000');
  expect(flags).toMatchObject([
    { severity: 'stop', rule: 'short', product: 'oil' },
    { severity: 'warn', rule: 'measured-roughly', product: 'silicate' },
  ]);
});

test('a dose per area asks for the ground, and takes the same however much water it is in', () => {
  const parts = { ...worked, recipes: [recipe('r1', { product: 'oil', dose: '2 mL/m2' })] };
  expect(printed(parts, '4 L').steps).toMatchObject([{ amount: null, measured: null }]);
  expect(printed(parts, '4 L').flags.map(({ message }) => message)).toEqual([
    expect.stringContaining('Enter the area of the ground that it is for.'),
  ]);
  for (const [volume, mgPerL] of [
    ['4 L', 25],
    ['8 L', 12.5],
  ] as const) {
    const { steps, strength } = printed(parts, volume, '5 m2');
    expect(steps).toMatchObject([{ amount: 10 }]);
    expect(strength).toEqual([{ substance: 'azadirachtin', mgPerL }]);
  }
});

test('k times the volume takes k times the amounts and k times the acid, in the same order, at the same strength', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 2, max: 9 }), (litres, k) => {
      const [one, more] = [printed(worked, `${litres} L`), printed(worked, `${litres * k} L`)];
      expect(more.strength).toEqual(one.strength);
      for (const [at, step] of one.steps.entries()) {
        expect(more.steps[at]).toMatchObject({
          product: step.product,
          amount: expect.closeTo((step.amount ?? 0) * k, 6),
        });
      }
      expect(more.pH.acids[0]?.amount).toBeCloseTo((one.pH.acids[0]?.amount ?? 0) * k, 6);
    }),
    { numRuns: 40 },
  );
});

test('there is no sheet without a recipe, or of nothing', () => {
  const shop = smallShop(worked);
  const asked = { recipe: 'r1', ml: known(readVolume('0 mL')), area: null };
  expect(mixAnswerOf(shop, asked, day('2026-03-02'))).toMatchObject({ ok: false, refusal: { code: 'faults' } });
  expect(mixAnswerOf(shop, { ...asked, recipe: 'r9' }, day('2026-03-02'))).toEqual({
    ok: false,
    refusal: { code: 'not-found', what: 'recipe', id: 'r9' },
  });
});
