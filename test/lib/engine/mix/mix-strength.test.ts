import { expect, test } from 'vitest';
import { mixStrength } from '@/lib/engine/mix/mix-strength';
import { exact } from '@/shared/quantity/exact';
import { dosed, holding, powder } from './some-products';

const feed = holding('feed', ['20 % w/w N', '10 % w/w P2O5', '20 % w/w K2O'], powder);
const kelp = holding('kelp', ['30 g/L k2o', '2 g/L alginate']);

test('a mix says each substance, each nutrient as element and as oxide, in the order of recipe and label', () => {
  const { strength, elements } = mixStrength([dosed(feed, '1 g/L')]);
  expect(strength).toEqual([
    { substance: 'N', mgPerL: 200 },
    { substance: 'P2O5', mgPerL: 100 },
    { substance: 'K2O', mgPerL: 200 },
  ]);
  // 100 × 0.43642 and 200 × 0.83015.
  expect(elements).toEqual([
    { element: 'N', mgPerL: 200, oxide: null },
    { element: 'P', mgPerL: 43.642, oxide: { oxide: 'P2O5', mgPerL: 100 } },
    { element: 'K', mgPerL: 166.03, oxide: { oxide: 'K2O', mgPerL: 200 } },
  ]);
});

test('what several products and lines bring adds up under the first name', () => {
  const { strength, elements } = mixStrength([dosed(feed, '1 g/L'), dosed(kelp, '2 mL/L'), dosed(kelp, '1 mL/L')]);
  expect(strength).toEqual([
    { substance: 'N', mgPerL: 200 },
    { substance: 'P2O5', mgPerL: 100 },
    { substance: 'K2O', mgPerL: 290 },
    { substance: 'alginate', mgPerL: 6 },
  ]);
  expect(elements.at(-1)).toEqual({ element: 'K', mgPerL: 290 * 0.83015, oxide: { oxide: 'K2O', mgPerL: 290 } });
});

test('a label that states one thing twice brings it once, by the first statement that can be worked out', () => {
  const twice = holding('twice', ['11 % w/w spinosad', '120 g/L Spinosad', '10 g/L K', '12.046 g/L K2O']);
  const { strength, elements } = mixStrength([dosed(twice, '1 mL/L')]);
  expect(strength.slice(0, 1)).toEqual([{ substance: 'spinosad', mgPerL: 120 }]);
  expect(elements).toMatchObject([{ element: 'K', mgPerL: 10 }]);
});

test('one unknown part makes a sum unknown, and leaves the others alone', () => {
  const dense = holding('dense', ['5 % w/w K2O', '10 g/L Fe']);
  const { strength, elements } = mixStrength([dosed(feed, '1 g/L'), dosed(dense, '1 mL/L')]);
  expect(strength).toEqual([
    { substance: 'N', mgPerL: 200 },
    { substance: 'P2O5', mgPerL: 100 },
    { substance: 'K2O', mgPerL: null },
    { substance: 'Fe', mgPerL: 10 },
  ]);
  expect(elements[2]).toEqual({ element: 'K', mgPerL: null, oxide: { oxide: 'K2O', mgPerL: null } });
});

test('a dose that cannot be turned into an amount makes everything of it unknown', () => {
  const { strength } = mixStrength([dosed(feed, '1 tsp/gal')]);
  expect(strength.map(({ mgPerL }) => mgPerL)).toEqual([null, null, null]);
});

test('a dose in ppm says how much of that substance there is, whatever else is unknown', () => {
  const unknown = holding('u', ['5 % w/w spinosad', '3 g/L N']);
  expect(mixStrength([dosed(unknown, '60 ppm Spinosad')]).strength).toEqual([
    { substance: 'spinosad', mgPerL: 60 },
    { substance: 'N', mgPerL: null },
  ]);
});

test('a dose per area is a strength once the ground and its spray are known', () => {
  const line = dosed(kelp, '10 mL/m2');
  expect(mixStrength([line]).strength[0]).toEqual({ substance: 'k2o', mgPerL: null });
  // 10 mL on each of 20 m² in 40 L of spray is 5 mL/L.
  const ground = { area: exact(20), sprayMl: exact(40_000) };
  expect(mixStrength([{ ...line, ground }]).strength[0]).toEqual({ substance: 'k2o', mgPerL: 150 });
});

test('a mix of nothing has no strength', () => {
  expect(mixStrength([])).toEqual({ strength: [], elements: [] });
});
