import type { LineCost } from '../mix/line-check';
import type { Product } from '../shop';
import { entered, money, type Step } from './shown';

/** How much of a source is in a stock solution, and how it is sold. */
export const sourceSteps = (
  solution: Product,
  { product: source, form, perMl, pack, price, supplier }: LineCost['madeOf'][number],
): Step[] => [
  entered(
    `${source} in each litre of it`,
    form === 'liquid' ? { kind: 'volume', ml: perMl } : { kind: 'mass', g: perMl },
    `what ${solution.name} is made from`,
  ),
  entered(`A pack of ${pack} of ${source}`, money(price, ''), `offer of ${supplier}`),
];
