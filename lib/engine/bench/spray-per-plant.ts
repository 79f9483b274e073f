import { type Reading, read, unreadable } from '@/shared/outcome';
import { compare, divide, type Exact, exact, subtract, toNumber, ZERO } from '@/shared/quantity/exact';

/**
 * The spray that one plant takes, by trial: spray some plants, and note what is gone.
 *
 *   mL per plant = (put into the sprayer − left in it) ÷ plants sprayed
 *
 * Takes    mL, exact, and how many plants were sprayed
 * Gives    mL per plant
 * Refuses  no plants; more left than was put in; nothing gone
 */
export function sprayPerPlantTried(putInMl: Exact, leftMl: Exact, plants: number): Reading<number> {
  if (plants < 1) return unreadable('No plants were sprayed. Write how many were.');
  const gone = compare(putInMl, leftMl);
  if (gone < 0) return unreadable('More is left than was put in. Check both, and add what was filled up on the way.');
  if (gone === 0) return unreadable('Nothing is gone from the sprayer. Spray a few plants, then measure what is left.');
  return read(toNumber(divide(subtract(putInMl, leftMl), exact(plants))));
}

/** How much spray stays on a leaf until it runs off, and who measured that. */
export type Retention = { mlPerSquareMetre: number; source: string };

/** What one plant takes, and what that rests on. */
export type SprayPerPlant = { mlPerPlant: number; rests: string };

/**
 * The spray that one plant takes, by its leaves: as much as stays on them until it runs off.
 *
 *   mL per plant = leaf area × sides that are sprayed × retention to run-off
 *
 * Takes    the area of one side of all leaves of a plant, cm²; one side or both; the retention with its source
 */
export const sprayPerPlantByLeaves = (leafAreaCm2: number, sides: 1 | 2, retention: Retention): SprayPerPlant => ({
  mlPerPlant: (leafAreaCm2 / CM2_PER_M2) * sides * retention.mlPerSquareMetre,
  rests: `${leafAreaCm2} cm² of leaf, ${sides === 1 ? 'one side' : 'both sides'}, at ${retention.mlPerSquareMetre} mL on each m² (${retention.source})`,
});

const CM2_PER_M2 = 10_000;

/** How pots stand: in rows and columns, or each in the gap between two of the next row. */
export type Standing = 'square' | 'staggered';

/**
 * How many plants stand on a square metre.
 *
 *   square  1 ÷ spacing²      staggered  2 ÷ (√3 × spacing²), 15.47 % more
 *
 * Takes    from the middle of a pot to the middle of the next, cm, above nothing
 */
export const plantsPerSquareMetre = (spacingCm: number, standing: Standing): number =>
  (CM2_PER_M2 / spacingCm ** 2) * (standing === 'square' ? 1 : 2 / Math.sqrt(3));

/**
 * The spray that one plant takes, by the ground: what a label or a catch in the bench gives for the area, shared by the
 * plants that stand on it.
 *
 *   mL per plant = mL per m² ÷ plants per m²
 *
 * Takes    mL per m² as two readings give it: so much spray on so much ground
 * Refuses  no ground
 */
export function sprayPerPlantByGround(
  sprayMl: Exact,
  groundSquareMetres: Exact,
  spacingCm: number,
  standing: Standing,
): Reading<number> {
  if (compare(groundSquareMetres, ZERO) === 0) return unreadable('That is no ground. Write how large it is.');
  const perSquareMetre = toNumber(divide(sprayMl, groundSquareMetres));
  return read(perSquareMetre / plantsPerSquareMetre(spacingCm, standing));
}
