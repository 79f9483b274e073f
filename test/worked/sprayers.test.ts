import { expect, test } from 'vitest';
import { askedMix } from '@/lib/engine/mix/asked-mix';
import { figureAddress } from '@/lib/engine/working/shown';
import { workingOf } from '@/lib/engine/working/working';
import { readMixQuery } from '@/shared/forms/mix-query';
import { draftOfProgram, fieldsOfProgram, programInFields, programOfDraft } from '@/shared/forms/program';
import { toNumber } from '@/shared/quantity/exact';
import { parseShopFile } from '@/shared/shop-file/parse';
import { instantOf } from '@/shared/time/instant';
import { planOf, shopWith, sprayingFigures } from './plan-of';

/*
 * A shop that names its sprayers and says nothing else of what a fill holds. Worked by hand:
 *
 * Spray    100 plants × 20 mL = 2,000 mL.
 * Small    holds 1,100 mL, loses 100, so 1,000 usable: 2 fills of 1,000 + 100 = 1,100 mL, 2,200 mL in all.
 * Large    holds 5 L, loses 200 mL, read to 0.5 L: 1 fill of 2,200 up to 2,500 mL.
 */
const SMALL = { name: 'small', capacity: '1100 mL', lossPerFill: '100 mL' };
const LARGE = { name: 'large', capacity: '5 L', lossPerFill: '200 mL', measuringStep: '0.5 L' };

const file = (sprayer?: string) =>
  shopWith({
    shop: { fillCapacity: undefined, sprayers: [SMALL, LARGE] },
    products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
    benches: [{ id: 'b1', name: 'Bench', plants: [{ name: 'plants', count: 100, mlPerPlant: 20 }] }],
    recipes: [{ id: 'r1', name: 'Recipe', ingredients: [{ product: 'p1', dose: '5 mL/L' }] }],
    programs: [
      {
        ...{ id: 'g1', recipes: ['r1'], benches: ['b1'], startsOn: '2026-05-04', startTime: '10:00', minutes: 40 },
        ...(sprayer === undefined ? {} : { sprayer }),
      },
    ],
  });

test.each([
  { sprayer: undefined, fills: 2, fillMl: 1100, sprayMl: 2200, amount: 11 },
  { sprayer: 'small', fills: 2, fillMl: 1100, sprayMl: 2200, amount: 11 },
  { sprayer: 'large', fills: 1, fillMl: 2500, sprayMl: 2500, amount: 12.5 },
])('sprayed with $sprayer: the plan, its sheet and the working', ({ sprayer, fills, fillMl, sprayMl, amount }) => {
  const plan = planOf(file(sprayer), '2026-05-04', 1);
  expect(sprayingFigures(plan)).toMatchObject([{ fills, fillMl, sprayMl, lines: [{ amount }] }]);
  const sheet = sheetOf(plan.shop, [
    ['program', 'g1'],
    ['on', '2026-05-04'],
  ]);
  expect(toNumber(sheet.batch.spray.total)).toBe(sprayMl);
  const chosen = sheetOf(plan.shop, [
    ['program', 'g1'],
    ['on', '2026-05-04'],
    ['sprayer', '1'],
  ]);
  expect(toNumber(chosen.batch.spray.total)).toBe(2500);
});

type Shop = ReturnType<typeof planOf>['shop'];

function sheetOf(shop: Shop, pairs: [string, string][]) {
  const asked = readMixQuery(pairs);
  const mix = asked.ok ? askedMix(shop, instantOf(Date.UTC(2026, 4, 1)), asked.value, '') : asked;
  if (!mix.ok) throw new Error(mix.message);
  return mix.value;
}

const faultsOf = (written: unknown) => {
  const parsed = parseShopFile(JSON.stringify(written));
  return parsed.ok ? [] : parsed.faults;
};

test('a sprayer that a program names is one of the shop, and without any a fill has to be known', () => {
  expect(faultsOf(file('large'))).toEqual([]);
  expect(faultsOf(file('larg'))).toEqual([
    { path: 'programs[0].sprayer', message: 'There is no sprayer "larg" in this shop. Did you mean "large"?' },
  ]);
  const none = file();
  expect(faultsOf({ ...none, shop: { ...none.shop, sprayers: [] } })).toMatchObject([{ path: 'shop.fillCapacity' }]);
});

test('each sprayer is judged by itself, and a program by its own', () => {
  const wrong = file('large');
  const leaks = { ...wrong, shop: { ...wrong.shop, sprayers: [SMALL, { ...LARGE, lossPerFill: '5 L' }] } };
  expect(faultsOf(leaks)).toMatchObject([{ path: 'shop.sprayers[1].lossPerFill' }]);
  // 1,000,000 plants × 20 mL: too much for 10,000 fills of a litre, and for any sprayer of more than 10,000 L.
  const lake = {
    ...wrong,
    benches: [{ id: 'b1', name: 'B', plants: [{ name: 'x', count: 600_000, mlPerPlant: 20 }] }],
  };
  expect(faultsOf(lake)).toMatchObject([{ path: 'programs[0].benches' }]);
});

test('the working of the fills names the sprayer that it went by', () => {
  const plan = planOf(file('large'), '2026-05-04', 1);
  const now = instantOf(Date.UTC(2026, 4, 1));
  const working = workingOf({ plan, benches: [], now }, figureAddress('spraying', 'g1', '2026-05-04', 'fills'));
  const holds = working?.steps.find(({ label }) => label === 'The sprayer holds');
  expect(holds).toMatchObject({ value: { kind: 'volume', ml: 5000 }, from: 'Setup, large' });
});

test('a form keeps the sprayer of a program, and empty means the first', () => {
  const [program] = parsed(file('large')).programs;
  if (!program) throw new Error('there is a program');
  const draft = programInFields(fieldsOfProgram(draftOfProgram(program, '2026-05-04')));
  expect(programOfDraft('g1', draft, program)).toMatchObject({ program: { sprayer: 'large' }, faults: [] });
  expect(programOfDraft('g1', { ...draft, sprayer: '' }, program)).toMatchObject({ program: { sprayer: null } });
});

function parsed(written: unknown) {
  const reading = parseShopFile(JSON.stringify(written));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.file;
}
