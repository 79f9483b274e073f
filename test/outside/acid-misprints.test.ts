import { expect, test } from 'vitest';
import type { Product } from '@/lib/engine/shop';
import {
  FLUID_OUNCE,
  liquid,
  mlFor,
  near,
  nutrientIn,
  ONE_PROTON,
  PHOSPHORIC_75,
  perMole,
  SULFURIC_93,
  TRAINING,
  UMASS,
} from './acid-tables';

/*
 * Published figures of acid that are wrong in print: the program must give the right one, and each test says why the
 * printed one is not. `seen` was read in a copy of the source. The densities of acids are from memory of a chemist's
 * handbook, where no source prints one.
 */

test(`A13 (seen, ${TRAINING}): 50 ppm in 100 gal take 1.06 fl oz of 75 % phosphoric acid at one proton, where 0.94 is printed`, () => {
  near(mlFor(PHOSPHORIC_75, 50, 100, ONE_PROTON) / FLUID_OUNCE, 1.062, 0.005);
  near(mlFor(PHOSPHORIC_75, 50, 100, 5.8) / FLUID_OUNCE, 1.023, 0.005);
  // 0.94 credits 1.13 protons, which the acid gives only where the water stays near pH 6.4.
  near(mlFor(PHOSPHORIC_75, 50, 100, 6.37) / FLUID_OUNCE, 0.94, 0.01);
});

// The two columns of the table say the same in two ways and disagree: 29.57 ÷ 136 is 0.217, printed as 0.23.
test.each([
  { id: 'A16', product: SULFURIC_93, perPpm: 0.218, printed: 0.23 },
  { id: 'A17', product: PHOSPHORIC_75, perPpm: 0.628, printed: 0.7 },
])(
  `$id (seen, ${UMASS}): a ppm in 100 gal takes $perPpm mL, and not the $printed that is printed`,
  ({ product, perPpm, printed }) => {
    const ours = mlFor(product, 1, 100, ONE_PROTON);
    near(ours, perPpm, 0.005);
    expect(printed / ours).toBeGreaterThan(1.05);
  },
);

test(`A19 (seen, ${UMASS}): from 250 to 150 mg/L takes 21.8 mL of 93 % sulfuric acid in 100 gal, where 23 mL is printed`, () => {
  const ours = mlFor(SULFURIC_93, 250 - 150, 100, 5.8);
  near(ours, 21.8, 0.005);
  near(ours / FLUID_OUNCE, 0.737, 0.005);
  // It was worked with the 0.23 mL of the table above: 6 % high.
  near(23, ours, 0.08);
});

test(`A20 (seen, ${UMASS}): a fl oz of 75 % phosphoric acid brings 100 gal 29.1 ppm P, where 25.6 is printed`, () => {
  near(nutrientIn(PHOSPHORIC_75, 1, 100), 29.1, 0.005);
  // The table works phosphoric acid with 1.381, the density that it prints for nitric acid.
  near(nutrientIn({ ...PHOSPHORIC_75, densityGPerMl: 1.381 }, 1, 100), 25.6, 0.005);
});

test('A23 (seen, UF/IFAS, citrus microirrigation maintenance, Table A-2-1): phosphoric acid takes three times what is printed, since it gives one proton of three', () => {
  const ml = (product: Product) => mlFor(product, 100, 100, 6);
  const [sulfuric, hydrochloric, phosphoric] = [
    liquid(93, 'sulfuric acid', 1.83),
    liquid(32, 'hydrochloric acid', 1.159),
    liquid(85, 'phosphoric acid', 1.685),
  ].map(ml);
  // Printed: 8.7, 29.6 and 6.8 of each for the same water. The first two agree with each other.
  near((hydrochloric ?? 0) / (sulfuric ?? 1), 29.6 / 8.7, 0.02);
  const printed = ((sulfuric ?? 0) * 6.8) / 8.7;
  expect((phosphoric ?? 0) / printed).toBeGreaterThan(2.6);
  // All three protons would make the printed figure, and they are given off at no pH of a spray.
  near(((phosphoric ?? 0) * perMole('phosphoric acid', 6)) / 3, printed, 0.02);
});
