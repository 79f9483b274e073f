import fc from 'fast-check';
import { expect, test } from 'vitest';
import { known } from '@/lib/engine/known';
import { measurableBatch, stockSolution } from '@/lib/engine/mix/measurable-batch';
import {
  fillings,
  isWithin,
  MOST_FILLINGS,
  markText,
  measured,
  measuredInDrops,
  measuredWith,
  type Wanted,
} from '@/lib/engine/mix/measuring';
import type { Measure } from '@/lib/engine/shop';
import { readDose } from '@/shared/measure/dose';

import { exact, multiply, toNumber } from '@/shared/quantity/exact';
import { smallShop } from '../rules/small-shop';

const tools = (...measures: [name: string, holds: string, step: string][]): Measure[] =>
  smallShop({ settings: { measures: measures.map(([name, holds, step]) => ({ name, holds, step })) } }).measures;

const SYRINGE = ['1 mL syringe', '1 mL', '0.1 mL'] as const;
const CYLINDER = ['10 mL cylinder', '10 mL', '0.5 mL'] as const;
const SCALE = ['scale', '500 g', '0.1 g'] as const;
const SPOON = ['teaspoon', '1 tsp', '1/4 tsp'] as const;
const ALL = tools([...SYRINGE], [...CYLINDER], [...SCALE], [...SPOON]);

/** µL of a liquid from mL, or mg of a powder from g. */
const wanted = (amount: number, form: Wanted['product']['form'] = 'liquid', rest: Partial<Wanted['product']> = {}) => ({
  amount: multiply(exact(amount), exact(1000n)),
  product: { form, gramsPerTeaspoon: null, ...rest },
  most: null,
});

/** What is measured, in mL or g, with what, and how far off in per cent. */
function read(want: Wanted, measures: Measure[]) {
  const found = measured(want, measures);
  return found && [toNumber(found.amount) / 1000, measuredWith(found), Math.round(toNumber(found.error) * 1e4) / 100];
}

test.each([
  [3.7, [SYRINGE], [3.7, '1 mL syringe, 3 full and 1 to 0.7 mL', 0]],
  [3.7, [CYLINDER], [3.5, '10 mL cylinder, to 3.5 mL', -5.41]],
  [3.8, [CYLINDER], [4, '10 mL cylinder, to 4 mL', 5.26]],
  [3.7, [CYLINDER, SYRINGE], [3.7, '1 mL syringe, 3 full and 1 to 0.7 mL', 0]],
  [20, [CYLINDER], [20, '10 mL cylinder, 2 full', 0]],
  [10, [SYRINGE, CYLINDER], [10, '10 mL cylinder, full', 0]],
  [0.02, [SYRINGE, CYLINDER], [0.1, '1 mL syringe, to 0.1 mL', 400]],
  // Twenty-four draws of the syringe would be exact, and nobody would count them.
  [23.7, [SYRINGE, CYLINDER], [23.5, '10 mL cylinder, 2 full and 1 to 3.5 mL', -0.84]],
  [30.04, [SYRINGE], [30, '1 mL syringe, 30 full', -0.13]],
] as const)('%f mL with what there is', (amount, measures, result) => {
  expect(read(wanted(amount), tools(...measures.map((one) => [...one] as [string, string, string])))).toEqual(result);
});

test('a powder is weighed, or spooned once a teaspoon of it was weighed; a syringe measures none of it', () => {
  const [syringe, , scale, spoon] = ALL;
  if (!syringe || !scale || !spoon) throw new Error('there are four');
  expect(read(wanted(4.2, 'powder'), [syringe, scale])).toEqual([4.2, 'scale, to 4.2 g', 0]);
  expect(read(wanted(4.2, 'powder'), [syringe, spoon])).toBeNull();
  const weighed = { gramsPerTeaspoon: 2.8 };
  expect(read(wanted(4.2, 'powder', weighed), [syringe, spoon])).toEqual([4.2, 'teaspoon, 1 full and 1 to 1/2 tsp', 0]);
  expect(read(wanted(4.2, 'powder', weighed), [syringe])).toBeNull();
  const even = wanted(0.7, 'powder', weighed);
  expect(read(even, [spoon, scale]), 'as near, a weight is surer').toEqual([0.7, 'scale, to 0.7 g', 0]);
  expect(read(wanted(4.2), [scale])).toBeNull();
});

test('without anything to measure with, nothing is measured', () => {
  expect(measured(wanted(3.7), [])).toBeNull();
});

test('measuring never goes over what the label allows while anything is below it', () => {
  const most = (mL: number) => ({ ...wanted(3.8), most: multiply(exact(mL), exact(1000n)) });
  const [cylinder] = tools([...CYLINDER]);
  if (!cylinder) throw new Error('there is one');
  expect(read(most(3.9), [cylinder])).toEqual([3.5, '10 mL cylinder, to 3.5 mL', -7.89]);
  expect(read(most(4), [cylinder])).toEqual([4, '10 mL cylinder, to 4 mL', 5.26]);
  expect(read({ ...wanted(0.2), most: multiply(exact(0.3), exact(1000n)) }, [cylinder])?.[0]).toBe(0.5);
});

const step = fc.constantFrom('0.1', '0.25', '0.5', '1', '2');
const tool = fc.record({ holds: fc.integer({ min: 1, max: 40 }), step }).map(({ holds, step }): Measure => {
  const [made] = tools([`${holds} by ${step}`, `${holds} mL`, `${Number(step) > holds ? holds : step} mL`]);
  if (!made) throw new Error('there is one');
  return made;
});

/** Every amount in mL that a measure gives, up to a good deal more than is wanted. */
function everyReading(measure: Measure, upTo: number): { ml: number; fillings: number; step: number }[] {
  const [holds, step] = [toNumber(measure.holds) / 1000, toNumber(measure.step) / 1000];
  const all: { ml: number; fillings: number; step: number }[] = [];
  for (let full = 0; full * holds <= upTo + holds; full += 1) {
    if (full > 0) all.push({ ml: full * holds, fillings: full, step });
    for (let mark = step; mark < holds; mark += step) all.push({ ml: full * holds + mark, fillings: full + 1, step });
  }
  return all;
}

/** How far a reading may be off, as a part: what its marks miss by, and half a step for each filling. */
const mayMiss = ({ ml, fillings, step }: { ml: number; fillings: number; step: number }, wantedMl: number) =>
  (Math.abs(ml - wantedMl) + (step / 2) * fillings) / wantedMl;

test('fewest fillings within five per cent, the tool’s own reading error included; else the surest', () => {
  fc.assert(
    fc.property(
      fc.array(tool, { minLength: 1, maxLength: 4 }),
      fc.integer({ min: 1, max: 5000 }),
      (measures, cents) => {
        const ml = cents / 100;
        const found = measured(wanted(ml), measures);
        if (!found) throw new Error('volumes measure a liquid');
        expect(toNumber(found.amount)).toBeGreaterThan(0);
        expect(toNumber(found.error)).toBeCloseTo((toNumber(found.amount) / 1000 - ml) / ml, 9);
        const its = { ml: toNumber(found.amount) / 1000, fillings: fillings(found) };
        const isOff = mayMiss({ ...its, step: toNumber(found.measure.step) / 1000 }, ml);
        if (its.fillings > MOST_FILLINGS) {
          // Only when even the last handy reading of the largest measure falls short.
          expect(Math.max(...measures.map(({ holds }) => toNumber(holds) / 1000)) * MOST_FILLINGS).toBeLessThan(ml);
          return;
        }
        const handy = measures
          .flatMap((measure) => everyReading(measure, ml))
          .filter((one) => one.fillings <= MOST_FILLINGS && one.ml > 0);
        const sure = handy.filter((one) => mayMiss(one, ml) <= 0.05 - 1e-9);
        for (const one of sure) expect(one.fillings).toBeGreaterThanOrEqual(its.fillings);
        if (sure.length > 0) expect(isOff).toBeLessThanOrEqual(0.05 + 1e-9);
        const near = handy.filter((one) => Math.abs(one.ml - ml) / ml <= 0.05 - 1e-9);
        const as = isOff <= 0.05 ? sure.filter((one) => one.fillings === its.fillings) : near;
        for (const one of as) expect(mayMiss(one, ml)).toBeGreaterThanOrEqual(isOff - 1e-9);
      },
    ),
    { numRuns: 200 },
  );
});

test('a tool’s own reading error counts: a small amount is the work of a small tool', () => {
  const syringe = ['1 mL syringe', '1 mL', '0.01 mL'] as const;
  const large = ['60 mL syringe', '60 mL', '1 mL'] as const;
  const all = tools([...large], [...SPOON], [...syringe], [...CYLINDER]);
  // A quarter teaspoon is 1.232 mL, but nobody reads it as finely as that.
  expect(read(wanted(1.23), all)?.[1]).toBe('1 mL syringe, 1 full and 1 to 0.23 mL');
  expect(read(wanted(2), all)?.[1]).toBe('1 mL syringe, 2 full');
  expect(read(wanted(1.23), tools([...SYRINGE], [...SPOON]))?.[1], 'the surer where none is sure').toBe(
    '1 mL syringe, 1 full and 1 to 0.2 mL',
  );
});

test('within five per cent one draw is better than several nearer ones', () => {
  expect(read(wanted(28.2), tools(['10 mL syringe', '10 mL', '0.2 mL'], ['60 mL syringe', '60 mL', '1 mL']))).toEqual([
    28,
    '60 mL syringe, to 28 mL',
    -0.71,
  ]);
});

test('a dose said in drops is counted in drops of the shop’s own dropper', () => {
  const dose = known(readDose('6 drops/gal', 'liquid', exact(40n)));
  const drops = (mL: number, drop: bigint, most: number | null = null) => {
    const its = { ...wanted(mL), most: most === null ? null : multiply(exact(most), exact(1000n)) };
    const found = measuredInDrops(its, dose, exact(drop));
    return found && [markText(found), toNumber(found.amount) / 1000, Math.round(toNumber(found.error) * 1e4) / 100];
  };
  expect(drops(0.5, 50n)).toEqual(['10 drops', 0.5, 0]);
  expect(drops(0.5, 40n), 'a lighter drop, so more of them').toEqual(['13 drops', 0.52, 4]);
  expect(drops(0.5, 40n, 0.5), 'never over the label').toEqual(['12 drops', 0.48, -4]);
  expect(drops(0.01, 50n), 'one at least').toEqual(['1 drop', 0.05, 400]);
  expect(drops(3.1, 50n), 'nobody counts sixty-two').toBeNull();
  expect(measuredInDrops(wanted(0.5), known(readDose('1 mL/gal', 'liquid')), exact(50n))).toBeNull();
});

test('the mark is what is printed on the tool', () => {
  const marks = (amount: number, ...list: (readonly [string, string, string])[]) => {
    const found = measured(wanted(amount), tools(...list.map((one) => [...one] as [string, string, string])));
    return found && markText(found);
  };
  expect(marks(1.232, SPOON)).toBe('1/4 tsp');
  expect(marks(7.393, SPOON)).toBe('1 1/2 tsp');
  expect(marks(8, CYLINDER)).toBe('8 mL');
  expect(marks(23.5, CYLINDER)).toBe('23.5 mL');
});

test('the proposed batch is the smallest larger one that is measured within five per cent', () => {
  fc.assert(
    fc.property(fc.array(tool, { minLength: 1, maxLength: 3 }), fc.integer({ min: 1, max: 60 }), (measures, cents) => {
      const [batchMl, amount] = [100, cents / 100];
      const want = wanted(amount);
      const now = measured(want, measures);
      fc.pre(now !== null && !isWithin(now));
      const batch = measurableBatch(want, measures, exact(batchMl));
      if (!batch) throw new Error('every measure has a mark above');
      const scaled = (ml: number) => ({ ...want, amount: multiply(want.amount, exact(ml / batchMl)) });
      const within = (ml: number) => {
        const found = measured(scaled(ml), measures);
        return found !== null && isWithin(found);
      };
      const ml = toNumber(batch);
      expect(within(ml), `${ml} mL`).toBe(true);
      for (let less = batchMl; less < ml; less += Math.max(1, Math.floor((ml - batchMl) / 50))) {
        expect(within(less), `${less} of ${ml} mL`).toBe(false);
      }
    }),
    { numRuns: 60 },
  );
});

test('at the label’s most, a larger batch is one that is measured without going over', () => {
  const want = { ...wanted(0.22), most: multiply(exact(0.22), exact(1000n)) };
  // 0.22 mL reads as 0.2; the next mark that is not over the label is 0.3, for a batch of 300/220 of a litre.
  expect(measurableBatch(want, tools([...SYRINGE]), exact(1000n))).toEqual(exact(1364n));
});

test('a stock solution measures several batches at once, and one batch by the full measure', () => {
  const small = stockSolution(wanted(0.03), tools([...SYRINGE], [...CYLINDER]));
  expect(
    small && [small.batches, toNumber(small.product.amount), toNumber(small.makeUpToMl), toNumber(small.useMl)],
  ).toEqual(
    // 0.3 mL made up to 10 mL, and 1 mL of that for a batch.
    [10, 300, 10, 1],
  );
  const powder = stockSolution(wanted(0.03, 'powder'), ALL);
  expect(powder && [powder.batches, measuredWith(powder.product), toNumber(powder.makeUpToMl)]).toEqual([
    10,
    'scale, to 0.3 g',
    10,
  ]);
  expect(stockSolution(wanted(0.03, 'powder'), tools([...SCALE])), 'nothing measures the solution').toBeNull();
  expect(stockSolution(wanted(0.0001), tools([...CYLINDER])), 'a hundred batches are not enough').toBeNull();
});
