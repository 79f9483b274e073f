import { expect, test } from 'vitest';
import type { Content } from '@/lib/engine/shop';
import { gramsPerGram, gramsPerMl, sameSubstance, strengthIn } from '@/lib/engine/strength/strength-of';
import { exact, fraction } from '@/shared/quantity/exact';

const content = (amount: number, basis: Content['basis'], substance = 'spinosad'): Content => ({
  substance,
  amount,
  basis,
});

test.each([
  [content(10, '% w/v'), null, 0.1],
  [content(250, 'g/L'), null, 0.25],
  [content(2, 'lb/gal'), null, (2 * 453.59237) / 3785.411784],
  [content(1.4, '% w/w'), 0.95, 0.0133],
  [content(500, 'g/kg'), 1.2, 0.6],
  [content(1.4, '% w/w'), null, null],
  [content(500, 'g/kg'), null, null],
  [content(20, '% v/v'), 1.1, null],
  [content(0, '% w/v'), null, 0],
])('a liquid with $amount $basis', (made, densityGPerMl, grams) => {
  const found = gramsPerMl(made, { densityGPerMl });
  if (grams === null) expect(found).toBeNull();
  else expect(found).toBeCloseTo(grams, 14);
});

test.each([
  [content(80, '% w/w'), null, 0.8],
  [content(800, 'g/kg'), null, 0.8],
  [content(80, '% w/v'), 1.6, 0.5],
  [content(800, 'g/L'), 1.6, 0.5],
  [content(80, '% w/v'), null, null],
  [content(2, 'lb/gal'), null, null],
  [content(20, '% v/v'), 1.6, null],
])('a powder with $amount $basis', (made, densityGPerMl, grams) => {
  const found = gramsPerGram(made, { densityGPerMl });
  if (grams === null) expect(found).toBeNull();
  else expect(found).toBeCloseTo(grams, 14);
});

test('a substance is found whatever the case its name is typed in', () => {
  const contents = [content(1, '% w/v', 'pyrethrins'), content(2, '% w/v', 'Spinosad')];
  expect(strengthIn({ form: 'liquid', densityGPerMl: null, contents }, ' SPINOSAD ')).toEqual(exact('0.02'));
  expect(sameSubstance('spinosad', 'spinosad A')).toBe(false);
});

test('a substance that the product does not list has no known strength', () => {
  expect(strengthIn({ form: 'liquid', densityGPerMl: null, contents: [] }, 'spinosad')).toBeNull();
});

test('one substance said in two bases is not counted twice, and the basis that can be worked out is taken', () => {
  const contents = [content(11, '% w/w'), content(1, 'lb/gal')];
  const liquid = { form: 'liquid' as const, contents };
  expect(strengthIn({ ...liquid, densityGPerMl: null }, 'spinosad')).toEqual(fraction(453_592_370n, 3_785_411_784n));
  expect(strengthIn({ ...liquid, densityGPerMl: 1.1 }, 'spinosad')).toEqual(exact('0.121'));
});
