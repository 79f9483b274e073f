import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asElement, asOxide } from '@/lib/engine/strength/elements';
import { exact } from '@/shared/quantity/exact';

test.each([
  ['P2O5', 'P', '43.642'],
  ['P₂O₅', 'P', '43.642'],
  ['p2o5 ', 'P', '43.642'],
  ['K2O', 'K', '83.015'],
  ['SiO2', 'Si', '46.744'],
  ['CaO', 'Ca', '71.47'],
  ['MgO', 'Mg', '60.304'],
  ['N', 'N', '100'],
  ['Fe', 'Fe', '100'],
  ['CA', 'Ca', '100'],
])('a hundred of %s is that much %s', (substance, element, amount) => {
  expect(asElement(substance, exact('100'))).toEqual({ element, amount: exact(amount) });
});

test.each(['spinosad', '', 'P2O', 'nitrogen fixing bacteria'])('"%s" is no nutrient', (substance) => {
  expect(asElement(substance, exact('100'))).toBeNull();
});

test('an element that labels state as it is has no oxide', () => {
  expect(asOxide('N', exact('1'))).toBeNull();
});

test('an oxide made into its element and back is the same amount', () => {
  fc.assert(
    fc.property(fc.constantFrom('P2O5', 'K2O', 'SiO2', 'CaO', 'MgO'), fc.nat(1_000_000), (oxide, thousandths) => {
      const amount = exact(thousandths / 1000);
      const element = asElement(oxide, amount);
      if (!element) throw new Error(`${oxide} holds an element`);
      expect(asOxide(element.element, element.amount)).toEqual({ oxide, amount });
    }),
    { numRuns: 1000 },
  );
});
