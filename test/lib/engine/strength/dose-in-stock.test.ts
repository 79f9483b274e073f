import { expect, test } from 'vitest';
import type { Content } from '@/lib/engine/shop';
import { type Dosed, type Ground, ratePerMl, stockPerSquareMetre } from '@/lib/engine/strength/dose-in-stock';
import { readDose } from '@/shared/measure/dose';
import { exact, fraction } from '@/shared/quantity/exact';

const product = (form: 'liquid' | 'powder', known: Partial<Dosed> = {}): Dosed => ({
  form,
  densityGPerMl: null,
  gramsPerTeaspoon: null,
  contents: [],
  ...known,
});
const spinosad = (amount: number, basis: Content['basis']) => ({
  contents: [{ substance: 'spinosad', amount, basis }],
});

const rate = (text: string, dosed: Dosed) => {
  const dose = readDose(text, dosed.form);
  if (!dose.ok) throw new Error(dose.message);
  return ratePerMl(dose.value, dosed);
};

test.each([
  { text: '5 mL/L', dosed: product('liquid'), each: exact('5') },
  { text: '1 fl oz/gal', dosed: product('liquid'), each: fraction(1000n, 128n) },
  { text: '0.5 %', dosed: product('liquid'), each: exact('5') },
  { text: '6 g/L', dosed: product('liquid', { densityGPerMl: 1.2 }), each: exact('5') },
  { text: '6 g/L', dosed: product('liquid'), each: null },
  { text: '1.5 g/L', dosed: product('powder'), each: exact('1.5') },
  { text: '0.5 %', dosed: product('powder'), each: exact('5') },
  { text: '1 tsp/L', dosed: product('powder', { gramsPerTeaspoon: 2.8 }), each: exact('2.8') },
  {
    text: '3 tsp/gal',
    dosed: product('powder', { gramsPerTeaspoon: 3 }),
    each: fraction(9_000n * 10n ** 6n, 3_785_411_784n),
  },
  { text: '1 tsp/L', dosed: product('powder', { densityGPerMl: 0.6 }), each: null },
  { text: '40 ppm Spinosad', dosed: product('liquid', spinosad(2, '% w/v')), each: exact('2') },
  {
    text: '40 ppm spinosad',
    dosed: product('liquid', { ...spinosad(2, '% w/w'), densityGPerMl: 1.25 }),
    each: exact('1.6'),
  },
  { text: '40 ppm spinosad', dosed: product('powder', spinosad(80, '% w/w')), each: exact('0.05') },
  { text: '40 ppm spinosad', dosed: product('liquid', spinosad(2, '% w/w')), each: null },
  { text: '40 ppm spinosad', dosed: product('liquid', spinosad(2, '% v/v')), each: null },
  { text: '40 ppm spinosad', dosed: product('liquid', spinosad(0, '% w/v')), each: null },
  { text: '40 ppm pyrethrins', dosed: product('liquid', spinosad(2, '% w/v')), each: null },
])('$text of a $dosed.form, in µL or mg for each mL of spray', ({ text, dosed, each }) => {
  expect(rate(text, dosed)).toEqual(each);
});

const perSquareMetre = (text: string, dosed: Dosed) => {
  const dose = readDose(text, dosed.form);
  if (!dose.ok || dose.value.kind !== 'perArea') throw new Error(`${text} is no dose per area`);
  return stockPerSquareMetre(dose.value, dosed);
};

test.each([
  { text: '2 mL/m2', dosed: product('liquid'), each: exact('2000') },
  { text: '6 g/m2', dosed: product('liquid', { densityGPerMl: 1.2 }), each: exact('5000') },
  { text: '6 g/m2', dosed: product('liquid'), each: null },
  { text: '1.5 g/m2', dosed: product('powder'), each: exact('1500') },
  { text: '1 tsp/m2', dosed: product('powder', { gramsPerTeaspoon: 2.8 }), each: exact('2800') },
  { text: '1 tsp/m2', dosed: product('powder'), each: null },
])('$text of a $dosed.form, in µL or mg on each m²', ({ text, dosed, each }) => {
  expect(perSquareMetre(text, dosed)).toEqual(each);
});

test('a dose per area is a share of the spray only where the ground and its spray are known', () => {
  const dose = readDose('2 mL/m2', 'liquid');
  if (!dose.ok) throw new Error(dose.message);
  const on = (ground?: Ground) => ratePerMl(dose.value, product('liquid'), ground);
  const [area, sprayMl] = [exact(12n), exact(4_000n)];
  expect(on({ area, sprayMl }), '24 mL in 4 L').toEqual(exact('6'));
  for (const ground of [undefined, { area: null, sprayMl }, { area, sprayMl: null }, { area, sprayMl: exact(0n) }]) {
    expect(on(ground)).toBeNull();
  }
});
