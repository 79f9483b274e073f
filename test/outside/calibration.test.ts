import { expect, test } from 'vitest';
import { sprayByTrials } from '@/lib/engine/bench/spray-trials';
import { sprayFor } from '@/lib/engine/bench/spray-volume';
import { ratePerMl } from '@/lib/engine/strength/dose-in-stock';
import { readDose } from '@/shared/measure/dose';
import { exact, toNumber } from '@/shared/quantity/exact';
import { amountFor, GALLON_ML, grams, near, printedAs } from './published';

/*
 * From the calibrated sprayer to what goes into a tank, against published worked examples. `seen` was read in a copy of
 * the source. How spray is shared over several fills is common practice without a source: see common-practice.test.ts.
 */

const FLUID_OUNCE = 29.5735295625;
const GARDEN =
  'a grower answering from an extension leaflet, lists.ibiblio.org/sympa/nomenu/arc/nafex/2009-03/msg00314.html';

test(`1.5 gal on 1,000 square feet are 65 gal on an acre (seen, ${GARDEN})`, () => {
  const perAcre = amountFor({
    product: { form: 'liquid' },
    dose: '1.5 gal/1000 sq ft',
    sprayMl: 70 * GALLON_ML,
    area: '1 acre',
  });
  printedAs(perAcre / GALLON_ML, '65');
});

test(`3 pt on an acre that gets 65 gal are 0.74 fl oz or 1.5 tbsp in each gallon of spray (seen, ${GARDEN})`, () => {
  const onAcre = amountFor({ product: { form: 'liquid' }, dose: '3 pt/acre', sprayMl: 65 * GALLON_ML, area: '1 acre' });
  printedAs(onAcre / 65 / FLUID_OUNCE, '0.74');
  printedAs(onAcre / 65 / (FLUID_OUNCE / 2), '1.5');
  // The same as a strength of the spray: mL in each litre.
  const dose = readDose('3 pt/acre', 'liquid');
  const ground = { area: exact('4046.8564224'), sprayMl: exact((65 * GALLON_ML).toFixed(6)) };
  const product = { form: 'liquid' as const, densityGPerMl: null, gramsPerTeaspoon: null, contents: [] };
  const rate = dose.ok ? ratePerMl(dose.value, product, ground) : null;
  printedAs(((rate ? toNumber(rate) : 0) * GALLON_ML) / 1000 / FLUID_OUNCE, '0.74');
});

const MONTANA = 'Montana State University, Calibration of Sprayer, MT 2000-14, scribd.com/document/421822868';

test(`3 lb of active on an acre from 8 lb/gal are 0.375 gal: 3 pt (seen, ${MONTANA})`, () => {
  const ppm = (3 * 453_592.37) / (30 * 3.785411784);
  const amount = amountFor({
    product: { form: 'liquid', contents: [{ substance: 'active', amount: 8, basis: 'lb/gal' }] },
    dose: `${ppm.toFixed(6)} ppm active`,
    sprayMl: 30 * GALLON_ML,
  });
  printedAs(amount / GALLON_ML, '0.375');
  printedAs(amount / 473.176473, '3.0');
});

test(`7.5 acres at a quart take 7.5 qt, from half a pound of active and 2 lb/gal (seen, ${MONTANA})`, () => {
  const amount = amountFor({
    product: { form: 'liquid' },
    dose: '1 qt/acre',
    sprayMl: 200 * GALLON_ML,
    area: '7.5 acres',
  });
  printedAs(amount / 946.352946, '7.5');
});

/** How many fills of a sprayer an area takes that gets so many gallons an acre. */
const fillsFor = (acres: number, gallonsPerAcre: number, tankGallons: number): number | undefined =>
  sprayFor(
    [
      {
        coverage: 1,
        plants: [{ name: 'ground', pot: null, count: 1, mlPerPlant: acres * gallonsPerAcre * GALLON_ML }],
      },
    ],
    {
      ...{ capacity: exact((tankGallons * GALLON_ML).toFixed(6)), lossPerFill: exact(0n), measuringStep: exact(0n) },
    } as Parameters<typeof sprayFor>[1],
  )?.fills;

test(`500 gal at 30 gal/acre spray 16.6 acres, and 250 gal 8.3: one fill, and two for a little more (seen, ${MONTANA})`, () => {
  expect([16.6, 16.7, 33.3, 33.4].map((acres) => fillsFor(acres, 30, 500))).toEqual([1, 2, 2, 3]);
  expect([8.3, 8.4].map((acres) => fillsFor(acres, 30, 250))).toEqual([1, 2]);
});

const TANK = 'a worked answer on unit-area calibration, qammunity.org/20931393';

test(`a gallon covers 200 square feet, so a tank of 10 gal covers 2,000 and takes 4 oz at 2 oz/1000 sq ft (seen, ${TANK})`, () => {
  const acres = 2000 / 43_560;
  expect(fillsFor(acres, 43_560 / 200, 10)).toBe(1);
  expect(fillsFor(acres * 1.001, 43_560 / 200, 10)).toBe(2);
  const amount = amountFor({
    product: { form: 'powder' },
    dose: '2 oz/1000 sq ft',
    sprayMl: 10 * GALLON_ML,
    area: '2000 sq ft',
  });
  printedAs(amount / grams('1 oz'), '4.0');
});

const LAWN = 'obsessedlawn.com/how-to-calibrate-your-liquid-applications';

test(`2 fl oz/1000 sq ft on 4,000 square feet are 8 fl oz in 4 gal (seen, ${LAWN})`, () => {
  const amount = amountFor({
    product: { form: 'liquid' },
    dose: '2 fl oz/1000 sq ft',
    sprayMl: 4 * GALLON_ML,
    area: '4000 sq ft',
  });
  printedAs(amount / FLUID_OUNCE, '8.0');
});

const COUNTY =
  'Mesa County, How to Calibrate a Handgun, mesacounty.us/pest/controlling-weeds/sprayer-calibration-methods';

test(`a tank of 25 gal at 150 gal/acre sprays a sixth of an acre, and takes a sixth of its rate (seen, ${COUNTY})`, () => {
  expect(fillsFor(1 / 6, 150, 25)).toBe(1);
  const amount = amountFor({
    product: { form: 'liquid' },
    dose: '6 pt/acre',
    sprayMl: 25 * GALLON_ML,
    area: '7260 sq ft',
  });
  near(amount / 473.176473, 1, 1e-5);
});

const KANSAS = 'Kansas State University, Hand Sprayer Calibration Steps Worksheet, studylib.net/doc/18419275';

test(`31 fl oz on 1/128 acre are 31 gal on an acre (seen, ${KANSAS})`, () => {
  const amount = amountFor({
    product: { form: 'liquid' },
    dose: '31 fl oz/340.3125 sq ft',
    sprayMl: 40 * GALLON_ML,
    area: '1 acre',
  });
  near(amount / GALLON_ML, 31, 1e-6);
});

const STEWARDSHIP =
  'How do I calibrate a hose-end sprayer, pesticidestewardship.org/homeowner/Pages/Hose-endSprayerCalibration.aspx';

test(`one tree takes 2 qt, so 6 trees take 12 qt, 3 gal (seen, ${STEWARDSHIP})`, () => {
  const tried = sprayByTrials([{ plants: '1', putIn: '4 qt', left: '2 qt' }]);
  if (!tried.ok) throw new Error(tried.message);
  printedAs(tried.value.mlPerPlant / 946.352946, '2.0');
  const spray = sprayFor(
    [{ coverage: 1, plants: [{ name: 'trees', pot: null, count: 6, mlPerPlant: 2 * 946.352946 }] }],
    {
      ...{ capacity: exact(100_000n), lossPerFill: exact(0n), measuringStep: exact(0n) },
    } as Parameters<typeof sprayFor>[1],
  );
  near(spray ? toNumber(spray.total) / GALLON_ML : 0, 3, 1e-12);
});

test('three trials of one plant each weigh alike: 2 qt, 1 qt and 3 qt are 2 qt a plant (as above, and arithmetic)', () => {
  const trial = (quarts: number) => ({ plants: '1', putIn: '4 qt', left: `${4 - quarts} qt` });
  const tried = sprayByTrials([trial(2), trial(1), trial(3)]);
  near(tried.ok ? tried.value.mlPerPlant : 0, 1892.71, 1e-5);
});
