import { BENCHES, DOSES, QUANTITIES } from './amount-faults';
import { CHEMISTRY } from './chemistry-faults';
import type { Fault } from './fault';
import { BUYING, COSTS } from './money-faults';
import { SAFETY } from './safety-faults';

/**
 * Faults to plant, one at a time, in the formulas that everything rests on. Each must turn a check against a published
 * figure red (`npm run test:faults`). A text that is no longer found is an error, so that the list keeps up with the code.
 */
export const FAULTS: readonly Fault[] = [
  ...QUANTITIES,
  ...DOSES,
  ...BENCHES,
  ...COSTS,
  ...BUYING,
  ...SAFETY,
  ...CHEMISTRY,
];
