import type { Micros } from '@/shared/quantity/amounts';
import { divide, exact } from '@/shared/quantity/exact';
import { costAt } from '../ahead/cheapest-offer';
import { sumOrUnknown } from '../ahead/cost-sums';
import type { Shop } from '../shop';
import { type MixCost, type MixSheet, ML_PER_LITRE, spread } from './mix-sheet';
import { type PriceToday, priceToday } from './solution-price';

/** What a batch would cost if all of it were bought today. */
export type OfferCost = Omit<MixCost, 'labour'> & { lines: OfferLine[] };

/** One step of the sheet at its price of today. The cost is null when that or the amount is not known. */
export type OfferLine = { price: PriceToday; cost: Micros | null };

/**
 * The same batch with everything at its cheapest offer today, whatever the bottles on the shelf cost.
 *
 *   for each step  amount × the price of the cheapest offer per unit, as what is short is priced: as if a pack could be
 *                  divided, without freight; of a stock solution, what is in it at the offers of that
 *
 * Gives    one line for each step of the sheet, in its order; a sum is null as soon as one line is
 * Units    micros
 * Rounds   each line to the nearest micro
 */
export function offerCostOf({ offers }: Pick<Shop, 'offers'>, { steps, batch }: MixSheet): OfferCost {
  const lines = steps.map(({ ingredient: { product }, line: { amount } }): OfferLine => {
    const price = priceToday(offers, product);
    return { price, cost: price.unit && amount !== null ? costAt(price.unit, amount) : null };
  });
  const material = sumOrUnknown(lines, ({ cost }) => cost);
  return {
    ...{ lines, material },
    perLitre: spread(material, divide(batch.spray.total, ML_PER_LITRE)),
    perPlant: spread(material, batch.plants === null ? null : exact(batch.plants)),
  };
}
