import { add, compare, divide, type Exact, exact, multiply, smaller, subtract, ZERO } from '@/shared/quantity/exact';
import { stepUp, wholeUp } from '@/shared/quantity/rounding';
import type { Spray } from '../ahead/plan';
import type { Bench, Sprayer } from '../shop';

/**
 * The spray that some benches take, split over sprayer fills: as few as possible, equal in size.
 *
 *   on the plants = Σ count × mL per plant × coverage
 *   fills         = on the plants ÷ (capacity − loss per fill), up to a whole number
 *   each fill     = on the plants ÷ fills + loss, up to the measuring step, but never more than the capacity
 *
 * Takes   benches sprayed together, and the sprayer, whose capacity is above its loss
 * Gives   null when the mL per plant of any plants is unknown; no fills when there is nothing to spray
 * Units   mL, exact
 * Rounds  fills up, and each fill up to the measuring step
 */
export function sprayFor(benches: readonly Sprayable[], sprayer: Sprayer): Spray | null {
  const onPlants = onThePlants(benches);
  if (!onPlants) return null;
  if (compare(onPlants, ZERO) === 0) return { onPlants, fills: 0, fill: ZERO, total: ZERO };
  const fills = wholeUp<number>(divide(onPlants, subtract(sprayer.capacity, sprayer.lossPerFill)));
  const each = add(divide(onPlants, exact(fills)), sprayer.lossPerFill);
  const fill = smaller(sprayer.capacity, stepUp(each, sprayer.measuringStep));
  return { onPlants, fills, fill, total: multiply(exact(fills), fill) };
}

/** What of a bench decides how much spray it takes. */
export type Sprayable = Pick<Bench, 'plants' | 'coverage'>;

function onThePlants(benches: readonly Sprayable[]): Exact | null {
  let total = ZERO;
  for (const bench of benches) {
    for (const { count, mlPerPlant } of bench.plants) {
      if (mlPerPlant === null) return null;
      total = add(total, multiply(multiply(exact(count), exact(mlPerPlant)), exact(bench.coverage)));
    }
  }
  return total;
}

/** How many plants stand on some benches. */
export function plantsOn(benches: readonly Pick<Bench, 'plants'>[]): number {
  let plants = 0;
  for (const bench of benches) for (const group of bench.plants) plants += group.count;
  return plants;
}
