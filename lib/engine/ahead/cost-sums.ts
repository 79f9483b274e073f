import { type Micros, micros, plus } from '@/shared/quantity/amounts';

/** The sum of costs; unknown (null) as soon as one of them is. */
export function sumOrUnknown(costs: (Micros | null)[]): Micros | null {
  let total = micros(0);
  for (const cost of costs) {
    if (cost === null) return null;
    total = plus(total, cost);
  }
  return total;
}

/** The sum of those costs that are known. How many are not must be said beside it. */
export const sumKnown = (costs: (Micros | null)[]): Micros =>
  costs.reduce<Micros>((total, cost) => (cost === null ? total : plus(total, cost)), micros(0));
