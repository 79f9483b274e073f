import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eyeStep, levelAtPart, levelBySteps, needsReason, percentOf } from '@/shared/measure/level';
import { priceOfPacks } from '@/shared/measure/price-break';
import { readLevel, readStock, stockText } from '@/shared/measure/read-stock';
import { micros, stock } from '@/shared/quantity/amounts';

const LIQUID = { form: 'liquid', densityGPerMl: null, gramsPerTeaspoon: null } as const;
const POWDER = { form: 'powder', densityGPerMl: null, gramsPerTeaspoon: 2.5 } as const;
const QUART = stock(946_353);

test.each([
  ['600 mL', 600_000],
  ['1/3', 315_451],
  ['⅓', 315_451],
  ['40 %', 378_541],
  ['40%', 378_541],
  ['100 %', 946_353],
  ['empty', 0],
  ['0', 0],
  ['0 mL', 0],
  ['Half', 473_177],
  ['full', 946_353],
])('"%s" in a bottle of a quart is %i µL', (text, amount) => {
  expect(readLevel(text, QUART, LIQUID)).toEqual({ ok: true, value: amount });
});

test.each(['1.5 qt', '101 %', '1 1/2', '0.4', '3', '', 'a bit', '-1 mL', '8 oz', '1 lb', 'half a gallon'])(
  '"%s" in a bottle of a quart is asked for again',
  (text) => {
    expect(readLevel(text, QUART, LIQUID)).toMatchObject({ ok: false, message: expect.stringMatching(/\.$|\?/) });
  },
);

test('an amount of nothing is refused where something has to move, and a spoon of powder is weighed', () => {
  expect(readStock('0 mL', LIQUID).ok).toBe(false);
  expect(readStock('2 tsp', POWDER)).toEqual({ ok: true, value: 5_000 });
  expect(readStock('2 tsp', { ...POWDER, gramsPerTeaspoon: null })).toMatchObject({
    ok: false,
    message: expect.stringContaining('what a teaspoon of it weighs is not known'),
  });
});

const size = fc.integer({ min: 1, max: 4_000_000_000 }).map(stock);

test('what a level is written as is read again as the same level', () => {
  fc.assert(
    fc.property(size, fc.double({ min: -1, max: 2, noNaN: true }), fc.boolean(), (full, part, isPowder) => {
      const level = levelAtPart(part, full);
      expect(level >= 0 && level <= full).toBe(true);
      const product = isPowder ? POWDER : LIQUID;
      expect(readLevel(stockText(level, product.form), full, product)).toEqual({ ok: true, value: level });
    }),
  );
});

test('keys go through every level of the eye, from one end to the other, and no further', () => {
  fc.assert(
    fc.property(size, fc.nat(10), (full, tens) => {
      expect(levelBySteps(stock(0), -1, full)).toBe(0);
      expect(levelBySteps(full, 1, full)).toBe(full);
      expect(levelAtPart(0, full)).toBe(0);
      expect(levelAtPart(1, full)).toBe(full);
      const up = levelBySteps(levelAtPart(tens / 10, full), 1, full);
      expect(up > levelAtPart(tens / 10, full) || up === full).toBe(true);
      expect(eyeStep(full) * 100 <= full || full < 100).toBe(true);
    }),
  );
  expect(levelBySteps(stock(104_000), 1, QUART)).toBe(105_000);
  expect(levelBySteps(stock(104_000), -1, QUART)).toBe(100_000);
  expect(percentOf(stock(104_000), QUART)).toBe(11);
});

test('a count needs a reason from just above a twentieth of the pack, more or less', () => {
  const full = stock(500_000);
  expect(needsReason(stock(475_000), full, full)).toBe(false);
  expect(needsReason(stock(474_999), full, full)).toBe(true);
  expect(needsReason(stock(125_001), stock(100_000), full)).toBe(true);
});

test('so many packs cost what the highest break that they reach says', () => {
  const offer = {
    price: micros(10_000_000),
    breaks: [
      { atLeast: 6, price: micros(8_000_000) },
      { atLeast: 3, price: micros(9_000_000) },
    ],
  };
  expect([1, 2, 3, 5, 6, 7].map((packs) => priceOfPacks(offer, packs) / 1_000_000)).toEqual([10, 20, 27, 45, 48, 56]);
});
