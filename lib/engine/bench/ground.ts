import { add, type Exact, ZERO } from '@/shared/quantity/exact';
import type { Bench } from '../shop';

/**
 * The ground that some benches cover together.
 *
 * Gives   null as soon as one of them was never measured: a part of the ground is no ground
 * Units   m², exact
 */
export function groundOf(benches: readonly Pick<Bench, 'area'>[]): Exact | null {
  let total = ZERO;
  for (const { area } of benches) {
    if (!area) return null;
    total = add(total, area);
  }
  return benches.length === 0 ? null : total;
}
