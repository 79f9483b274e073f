import { showMoney } from '@/shared/measure/show';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import { divide, type Exact, exact, multiply, toNumber } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { showDay } from '@/shared/time/show-day';
import type { Plan } from '../ahead/plan';
import { firstBy } from '../looked-up';
import type { Offer, Product, Shop } from '../shop';
import { supposedWords } from './line-figures';
import { entered, type FoundWorking, money } from './shown';

/** What a price is compared by: a litre or a kilogram, or in US units a gallon or a pound; in µL or mg, exact. */
export type PricedBy = { name: 'litre' | 'gallon' | 'kilogram' | 'pound'; holds: Exact };

export function pricedBy({ form }: Pick<Product, 'form'>, units: Shop['units']): PricedBy {
  if (form === 'liquid') {
    return units === 'us'
      ? { name: 'gallon', holds: exact('3785411.784') }
      : { name: 'litre', holds: exact(1_000_000n) };
  }
  return units === 'us' ? { name: 'pound', holds: exact('453592.37') } : { name: 'kilogram', holds: exact(1_000_000n) };
}

/**
 * What a litre, gallon, kilogram or pound costs in packs at some price.
 *
 * Gives    null when that is too large to be told exactly
 * Rounds   once, to the nearest micro
 */
export function priceOfUnit(price: Micros, { pack }: Pick<Offer, 'pack'>, by: PricedBy): Micros | null {
  const unit = multiply(divide(exact(price), pack), by.holds);
  return toNumber(unit) > Number.MAX_SAFE_INTEGER ? null : wholeNearest<Micros>(unit);
}

const TOO_LARGE = 'Too large to be told. Check the price and the pack.';

const offerNamed = firstBy((offer: Offer): string | undefined => offer.id);

/** The working of one figure of an offer: `ID/unitPrice`. */
export function offerWorking(plan: Plan, [id, figure]: string[]): FoundWorking | null {
  const offer = offerNamed(plan.shop.offers, id);
  if (!offer || figure !== 'unitPrice') return null;
  const { product, supplier, packText, price, since } = offer;
  const by = pricedBy(product, plan.shop.units);
  const from = since === null ? 'since when it holds was never noted' : `since ${showDay(since, plan.today)}`;
  return {
    title: `A ${by.name} of ${product.name} from ${supplier.name}`,
    value: money(priceOfUnit(price, offer, by), TOO_LARGE),
    rule: `The price of one pack ÷ what it holds, for one ${by.name}. Without freight, and without the quantity breaks.`,
    steps: [
      entered('One pack', money(price, 'Never entered.'), `${supplier.name}, ${from}${supposedWords(offer)}`),
      entered(
        'It holds',
        { kind: 'stock', amount: wholeNearest<Stock>(offer.pack), form: product.form },
        `sold as ${packText}`,
      ),
      ...offer.breaks.map(({ atLeast, price }) =>
        entered(
          `A ${by.name} from ${atLeast} packs on`,
          money(priceOfUnit(price, offer, by), TOO_LARGE),
          `${showMoney(price, plan.shop.currency)} a pack then`,
        ),
      ),
    ],
  };
}
