import { showStock } from '@/shared/measure/show';
import type { Stock } from '@/shared/quantity/amounts';
import { compare, exact, multiply } from '@/shared/quantity/exact';
import { wholeNearest, wholeUp } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import type { Flag } from '../rules/flag';
import type { Shop } from '../shop';
import { mayBeOff, measuredWith, TOLERANCE } from './measuring';
import type { MixStep } from './mix-step';

/**
 * What of a mix may be off by more than 5 % as it is measured, the tool's own reading step included.
 *
 * Looks at  each ingredient for one fill, with the measure that comes nearest to it
 * Fires     when it may be off by more than 5 %, either way; exactly 5 % passes. What nothing measures raises nothing here
 * Severity  warn
 * Cleared   by a finer measure, a larger batch or a stock solution
 */
export const measuredRoughly = ({ units }: Pick<Shop, 'units'>, steps: readonly MixStep[], on: Day): Flag[] =>
  steps.flatMap(({ measured, perFill, ingredient: { product } }): Flag[] => {
    const off = measured && perFill && mayBeOff(measured, { amount: perFill, product });
    if (!off || compare(off, TOLERANCE) <= 0) return [];
    const wanted = showStock(wholeNearest<Stock>(perFill), product.form, units);
    return [
      {
        ...{ severity: 'warn', rule: 'measured-roughly', on, program: null, benches: [], product: product.id },
        message: `${wanted} of ${product.name}, measured with ${measuredWith(measured)}, may be off by up to ${wholeUp<number>(multiply(off, HUNDRED))} %. Use a finer measure, mix more at once or make a stock solution.`,
      },
    ];
  });

const HUNDRED = exact(100n);
