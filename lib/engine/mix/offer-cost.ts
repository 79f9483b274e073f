import type { Micros } from '@/shared/quantity/amounts';
import { divide, exact } from '@/shared/quantity/exact';
import { cheapestOffer, costAt, unitPrice } from '../ahead/cheapest-offer';
import { sumOrUnknown } from '../ahead/cost-sums';
import type { Offer, Shop } from '../shop';
import { type MixCost, type MixSheet, ML_PER_LITRE, spread } from './mix-sheet';

/** What a batch would cost if all of it were bought today. */
export type OfferCost = Omit<MixCost, 'labour'> & { lines: OfferLine[] };

/** One step of the sheet at the offer that is cheapest per unit; null when nobody offers it, or its amount is not known. */
export type OfferLine = { offer: Offer | null; cost: Micros | null };

/**
 * The same batch with everything at its cheapest offer today, whatever the bottles on the shelf cost.
 *
 *   for each step  amount × the price of the cheapest offer per unit, as what is short is priced: as if a pack could be
 *                  divided, without freight
 *
 * Gives    one line for each step of the sheet, in its order; a sum is null as soon as one line is
 * Units    micros
 * Rounds   each line to the nearest micro
 */
export function offerCostOf({ offers }: Pick<Shop, 'offers'>, { steps, batch }: MixSheet): OfferCost {
  const lines = steps.map(({ ingredient: { product }, line: { amount } }): OfferLine => {
    const offer = cheapestOffer(offers.filter((one) => one.product === product));
    return { offer, cost: offer && amount !== null ? costAt(unitPrice(offer), amount) : null };
  });
  const material = sumOrUnknown(lines, ({ cost }) => cost);
  return {
    ...{ lines, material },
    perLitre: spread(material, divide(batch.spray.total, ML_PER_LITRE)),
    perPlant: spread(material, batch.plants === null ? null : exact(batch.plants)),
  };
}
