import fc from 'fast-check';
import { all, create } from 'mathjs';
import { expect, test } from 'vitest';
import { readDose } from '@/shared/measure/dose';
import { readSize, readVolume } from '@/shared/measure/size';
import { toNumber } from '@/shared/quantity/exact';

/*
 * A general-purpose units library knows the same units, from a table that is none of ours. Every conversion here must
 * come out the same in both, to double precision.
 */
const math = create(all ?? {});
const theirs = (amount: number, unit: string, into: string): number => math.unit(amount, unit).toNumber(into);

const VOLUMES = {
  mL: 'mL',
  cc: 'cc',
  L: 'litre',
  µL: 'uL',
  gal: 'gallon',
  qt: 'quart',
  pt: 'pint',
  'fl oz': 'fluidounce',
  cup: 'cup',
  drops: 'drop',
};
const MASSES = { mg: 'mg', g: 'g', kg: 'kg', oz: 'oz', lb: 'lb' };

const near = (ours: number, other: number): void => expect(Math.abs(ours - other)).toBeLessThanOrEqual(1e-12 * other);

const ml = (text: string): number => {
  const reading = readVolume(text);
  if (!reading.ok) throw new Error(reading.message);
  return toNumber(reading.value);
};
const mg = (text: string): number => {
  const reading = readSize(text, 'powder');
  if (!reading.ok || reading.value.kind !== 'mass') throw new Error(`${text} is no weight`);
  return toNumber(reading.value.milligrams);
};

const amounts = fc.integer({ min: 1, max: 200_000 });

test('any volume comes out the same in a general-purpose units library', () => {
  fc.assert(
    fc.property(amounts, fc.constantFrom(...Object.entries(VOLUMES)), (amount, [ours, other]) => {
      near(ml(`${amount} ${ours}`), theirs(amount, other, 'mL'));
    }),
    { numRuns: 1000 },
  );
});

test('any weight comes out the same in a general-purpose units library', () => {
  fc.assert(
    fc.property(amounts, fc.constantFrom(...Object.entries(MASSES)), (amount, [ours, other]) => {
      near(mg(`${amount} ${ours}`), theirs(amount, other, 'mg'));
    }),
    { numRuns: 1000 },
  );
});

test('any dose of one unit in another comes out the same in a general-purpose units library', () => {
  const unit = fc.constantFrom(...Object.entries(VOLUMES));
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 200 }), unit, unit, (amount, [product, its], [spray, sprays]) => {
      const reading = readDose(`${amount} ${product} per 1000000000 ${spray}`, 'liquid');
      if (!reading.ok || reading.value.kind !== 'volume') throw new Error('a volume per volume is a dose');
      near(toNumber(reading.value.mlPerLitre), theirs(amount, its, 'mL') / theirs(1e9, sprays, 'litre'));
    }),
    { numRuns: 1000 },
  );
});

test('the two disagree on spoons, where theirs are metric ones of 5 and 15 mL and ours the sixth and half of a fluid ounce', () => {
  near(5, theirs(1, 'teaspoon', 'mL'));
  near(15, theirs(1, 'tablespoon', 'mL'));
  near(ml('1 tsp'), theirs(1, 'fluidounce', 'mL') / 6);
  near(ml('1 tbsp'), theirs(1, 'fluidounce', 'mL') / 2);
});
