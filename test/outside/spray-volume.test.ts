import { expect, test } from 'vitest';
import { plantsPerSquareMetre, sprayPerPlantByGround } from '@/lib/engine/bench/spray-per-plant';
import { readArea } from '@/shared/measure/area';
import { readVolume } from '@/shared/measure/size';
import { divide, type Exact, toNumber } from '@/shared/quantity/exact';

/*
 * Spray by ground and by spacing, against published figures. `seen` was read in a copy of the source; `memory` was
 * recalled and not looked up again; `derived` was computed from a published input. `within` is the relative difference
 * allowed.
 */

const near = (ours: number, published: number, within: number): void =>
  expect(Math.abs(ours - published) / published).toBeLessThanOrEqual(within);

function known(reading: ReturnType<typeof readVolume>): Exact {
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}
const ml = (text: string) => known(readVolume(text));
const squareMetres = (text: string) => known(readArea(text));

const MSU =
  'Michigan State University authors in a trade article, "Spray… Versus Sprench… Versus Drench" (2010), www.gpnmag.com/spray%E2%80%A6-versus-sprench%E2%80%A6-versus-drench';

test.each([
  { quarts: 2, perSquareMetre: 203.73 },
  { quarts: 3, perSquareMetre: 305.59 },
])(`V01 (seen in quarts, ${MSU}; mL derived): $quarts qt on 100 sq ft are $perSquareMetre mL/m²`, (row) => {
  near(toNumber(divide(ml(`${row.quarts} qt`), squareMetres('100 sq ft'))), row.perSquareMetre, 0.001);
});

test('V03 (memory, derived from V01): at six inches of spacing a plant takes 4.7318 mL of 203.73 mL/m²', () => {
  const each = sprayPerPlantByGround(ml('2 qt'), squareMetres('100 sq ft'), 15.24, 'square');
  near(each.ok ? each.value : Number.NaN, 4.7318, 0.001);
});

test.each([
  { inches: 4, perSquareFoot: 9 },
  { inches: 6, perSquareFoot: 4 },
  { inches: 8, perSquareFoot: 2.25 },
  { inches: 12, perSquareFoot: 1 },
])(
  'V04 (memory, geometry): at $inches inches $perSquareFoot plants stand on a square foot, staggered 15.47 % more',
  (row) => {
    const perSquareMetre = plantsPerSquareMetre(row.inches * 2.54, 'square');
    near(perSquareMetre * toNumber(squareMetres('1 sq ft')), row.perSquareFoot, 1e-12);
    near(plantsPerSquareMetre(row.inches * 2.54, 'staggered') / perSquareMetre, 1.1547, 1e-5);
  },
);

/*
 * Left out, because nothing here computes them: V02, drenches by the size of the pot, which would hold the fluid ounce alone.
 */
