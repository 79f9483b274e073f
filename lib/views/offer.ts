import 'server-only';
import { priceOfOne } from '@/shared/measure/price-break';
import { toNumber } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { dayNumber } from '@/shared/time/day';
import type { Clock } from '../clock';
import { fingerprint } from '../data/fingerprint';
import { pricesOf } from '../engine/ahead/price-in-force';
import type { Offer, Product } from '../engine/shop';
import { pricedBy, priceOfUnit } from '../engine/working/offer-figures';
import { type HereNow, houseNow } from './house';
import { type OfferShown, offerShown, type PriceThen } from './offers-shown';

/** A price of an offer as a line of its history. */
export type PriceLine = PriceThen & {
  /** What a litre, gallon, kilogram or pound cost then; null when that cannot be told. */
  unitPrice: number | null;
  /** How much dearer a pack was than at the price before; negative when cheaper, null for the first. */
  risen: number | null;
};

/** The history as steps through time. Prices whose day nobody noted have no place in it. */
export type PriceSteps = {
  /** For each count of packs that ever had a price of its own, what one pack cost on each day. */
  counts: number[];
  points: { number: number; prices: number[] }[];
  /** How many of the points, from the first, are new prices; the one after them is today. */
  changes: number;
  /** How many µL or mg, times a pack's price, give the price of a litre, gallon, kilogram or pound. */
  unitsPerPack: number;
};

export type OfferScreen = Pick<HereNow, 'today' | 'ways'> & {
  shopId: string;
  product: Product;
  unit: string;
  suppliers: { id: string; name: string }[];
  taken: string[];
  offer: {
    file: ShopFile['offers'][number];
    shown: OfferShown;
    expecting: string;
    history: PriceLine[];
    steps: PriceSteps;
  } | null;
};

/** One offer of a product with every price it had, or (null) a new one. Null when there is no such thing here. */
export async function offerScreen(clock: Clock, productId: string, id: string | null): Promise<OfferScreen | null> {
  const house = await houseNow(clock);
  const product = house?.shop.products.find((one) => one.id === productId);
  if (!house || !product) return null;
  const offer = house.shop.offers.find((one) => one.id === id && one.product === product);
  const written = house.file.offers.find((one) => one.id === id);
  if (id !== null && !(offer && written)) return null;
  const { shop, file, today, ways } = house;
  return {
    today,
    ways,
    shopId: house.id,
    product,
    unit: pricedBy(product, shop.units).name,
    suppliers: shop.suppliers
      .filter((one) => !one.archived || one === offer?.supplier)
      .map(({ id, name }) => ({ id, name })),
    taken: file.offers.map((one) => one.id),
    offer:
      offer && written
        ? {
            file: written,
            shown: offerShown(house, offer),
            expecting: fingerprint(written),
            history: historyOf(offer, house),
            steps: stepsOf(offer, house),
          }
        : null,
  };
}

function historyOf(offer: Offer, { shop }: Pick<HereNow, 'shop'>): PriceLine[] {
  const by = pricedBy(offer.product, shop.units);
  const prices = pricesOf(offer);
  return prices.map(({ since, price, breaks }, place) => {
    const before = prices[place - 1];
    return {
      ...{ since, price, breaks, unitPrice: priceOfUnit(price, offer, by) },
      risen: before ? price - before.price : null,
    };
  });
}

function stepsOf(offer: Offer, { shop, today }: Pick<HereNow, 'shop' | 'today'>): PriceSteps {
  const noted = pricesOf(offer).flatMap(({ since, ...of }) =>
    since === null ? [] : [{ number: dayNumber(since), of }],
  );
  const breaks = new Set(noted.flatMap(({ of }) => of.breaks.map(({ atLeast }) => atLeast)));
  const counts = [1, ...[...breaks].sort((a, b) => a - b)];
  const last = noted.at(-1);
  const ends = last && last.number < dayNumber(today) ? [{ ...last, number: dayNumber(today) }] : [];
  return {
    counts,
    points: [...noted, ...ends].map(({ number, of }) => ({
      number,
      prices: counts.map((count) => priceOfOne(of, count)),
    })),
    changes: noted.length,
    unitsPerPack: toNumber(pricedBy(offer.product, shop.units).holds) / toNumber(offer.pack),
  };
}
