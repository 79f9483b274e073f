import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Basis, Product } from '@/lib/engine/shop';
import { equivalentDose, mgPerLitre } from '@/lib/engine/strength/equivalent-dose';
import { exact } from '@/shared/quantity/exact';

type Strong = Pick<Product, 'form' | 'densityGPerMl' | 'contents'>;

const product = (
  form: 'liquid' | 'powder',
  amount: number,
  basis: Basis,
  densityGPerMl: number | null = null,
): Strong => ({
  form,
  densityGPerMl,
  contents: [{ substance: 'spinosad', amount, basis }],
});

test('half the strength takes twice the dose', () => {
  const [strong, weak] = [product('liquid', 240, 'g/L'), product('liquid', 12, '% w/v')];
  expect(equivalentDose(exact('0.5'), strong, weak, 'Spinosad')).toEqual(exact('1'));
});

test('a powder stands in for a liquid, in grams for its millilitres', () => {
  const [liquid, powder] = [product('liquid', 20, '% w/w', 1.2), product('powder', 80, '% w/w')];
  expect(equivalentDose(exact('2'), liquid, powder, 'spinosad')).toEqual(exact('0.6'));
});

test.each([
  ['is not listed in the other', product('liquid', 240, 'g/L'), { ...product('liquid', 240, 'g/L'), contents: [] }],
  ['needs a density that was never entered', product('liquid', 24, '% w/w'), product('liquid', 240, 'g/L')],
  ['is listed as nothing', product('liquid', 240, 'g/L'), product('liquid', 0, 'g/L')],
  ['is nothing in this one', product('liquid', 0, 'g/L'), product('liquid', 240, 'g/L')],
])('no dose is equivalent when the substance %s', (_, from, to) => {
  expect(equivalentDose(exact('1'), from, to, 'spinosad')).toBeNull();
});

test('what a rate brings into the spray is mg of the substance a litre', () => {
  expect(mgPerLitre(exact('2'), product('liquid', 1.2, '% w/v'), 'spinosad')).toEqual(exact('24'));
  expect(mgPerLitre(exact('2'), product('liquid', 1.2, '% w/w'), 'spinosad')).toBeNull();
  expect(mgPerLitre(exact('2'), product('liquid', 1.2, '% w/v'), 'pyrethrins')).toBeNull();
});

const hundredths = fc.integer({ min: 1, max: 10_000 }).map((n) => n / 100);
const strong = fc
  .record({
    form: fc.constantFrom('liquid' as const, 'powder' as const),
    amount: hundredths,
    basis: fc.constantFrom<Basis>('% w/w', '% w/v', 'g/L', 'g/kg', 'lb/gal'),
    density: fc.integer({ min: 60, max: 200 }).map((n) => n / 100),
  })
  .map(({ form, amount, basis, density }) => product(form, amount, basis, density));

const equal = (rate: ReturnType<typeof exact>, from: Strong, to: Strong) => {
  const found = equivalentDose(rate, from, to, 'spinosad');
  if (found === null) throw new Error('both strengths are known');
  return found;
};

test('equivalence goes back where it came from, and the way round by a third product is the same', () => {
  fc.assert(
    fc.property(hundredths, strong, strong, strong, (dose, a, b, c) => {
      const rate = exact(dose);
      expect(equal(equal(rate, a, b), b, a)).toEqual(rate);
      expect(equal(equal(rate, a, b), b, c)).toEqual(equal(rate, a, c));
      expect(equal(rate, a, a)).toEqual(rate);
    }),
    { numRuns: 1000 },
  );
});

test('equivalent doses bring the same mg of the substance into each litre', () => {
  fc.assert(
    fc.property(hundredths, strong, strong, (dose, a, b) => {
      const rate = exact(dose);
      expect(mgPerLitre(equal(rate, a, b), b, 'spinosad')).toEqual(mgPerLitre(rate, a, 'spinosad'));
    }),
    { numRuns: 1000 },
  );
});
