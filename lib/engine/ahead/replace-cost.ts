import { freightOf } from '@/shared/measure/order-sums';
import { priceOfOne } from '@/shared/measure/price-break';
import { type Micros, micros, plus, type Stock, stock, sum } from '@/shared/quantity/amounts';
import { divide, type Exact, fraction, subtract } from '@/shared/quantity/exact';
import { shareByValue, wholeUp } from '@/shared/quantity/rounding';
import { type Day, dayNumber } from '@/shared/time/day';
import { grouped } from '../grouped';
import { lastUsableDay } from '../ledger/last-usable-day';
import type { Container, Offer, Product, Shop, Supplier } from '../shop';
import { isCheaper } from './cheapest-offer';

/** What it would cost today to have again what is usable on the shelf. */
export type Replacement = {
  /** One for every product of which something usable is there, in the shop's order. */
  lines: ReplaceLine[];
  orders: ReplaceOrder[];
  /** The lines whose cost is known, added up. */
  total: Micros;
  /** How many lines are not known, and so not in the total. */
  unknown: number;
};

export type ReplaceLine = {
  product: Product;
  usable: Stock;
  /** Null when nobody offers the product. */
  buy: Purchase | null;
  /** This line's part of the freight of its order; null when that freight was never entered. */
  freight: Micros | null;
  /** Goods and freight. */
  cost: Micros | null;
};

/** So many whole packs of one offer. `price` is what one of them costs when that many are bought. */
export type Purchase = { offer: Offer; packs: number; price: Micros; goods: Micros };

/** What one supplier would send. `freight` is null when it was never entered. */
type ReplaceOrder = { supplier: Supplier; goods: Micros; freight: Micros | null };

/**
 * The cost to replace the shelf: for each product the whole packs that hold what is usable of it, of the offer where
 * they cost least; each supplier's freight is shared over what it sends by value.
 *
 *   packs    = usable ÷ pack, rounded up; more when a quantity break makes more packs cost less in all
 *   freight  = the supplier's freight of one order; nothing from its free-freight value on
 *
 * Takes    the shop as it stands, and today: bottles still to come, or past their last day, are not replaced
 * Gives    per product the purchase and its cost with freight; null without an offer or without a known freight
 * Units    micros; µL and mg
 * Rounds   each share of freight to a micro, so that the shares add up to the freight
 */
export function replacementOf(shop: Pick<Shop, 'products' | 'offers' | 'containers'>, today: Day): Replacement {
  const offers = grouped(shop.offers, ({ product }) => product);
  const containers = grouped(
    shop.containers.filter((one) => isUsable(one, today)),
    ({ product }) => product,
  );
  const wanted = shop.products.flatMap((product) => {
    const its = containers.get(product) ?? [];
    const usable = sum(its.map(({ remaining }) => stock(remaining)));
    return usable === 0 ? [] : [{ product, usable, buy: cheapestPurchase(offers.get(product) ?? [], its) }];
  });
  const orders = ordersOf(wanted.flatMap(({ buy }) => buy ?? []));
  const lines = wanted.map((line): ReplaceLine => {
    const freight = line.buy && (orders.get(line.buy.offer.supplier)?.shares?.get(line.buy) ?? null);
    return { ...line, freight, cost: line.buy && freight !== null ? plus(line.buy.goods, freight) : null };
  });
  return {
    lines,
    orders: [...orders.values()].map(({ supplier, goods, freight }) => ({ supplier, goods, freight })),
    total: sum(lines.map(({ cost }) => cost ?? micros(0))),
    unknown: lines.filter(({ cost }) => cost === null).length,
  };
}

const isUsable = (container: Container, today: Day): boolean =>
  container.remaining > 0 &&
  dayNumber(container.receivedOn) <= dayNumber(today) &&
  dayNumber(lastUsableDay(container) ?? today) >= dayNumber(today);

/** The purchase that costs least in all; between equals, the offer that is cheapest per unit. */
function cheapestPurchase(offers: Offer[], containers: Container[]): Purchase | null {
  const needed = neededOf(containers);
  return offers
    .filter(({ archived }) => !archived)
    .flatMap((offer) => purchasesOf(offer, needed))
    .reduce<Purchase | null>((best, one) => (best === null || costsLess(one, best) ? one : best), null);
}

/**
 * Each container was rounded to a whole µL or mg when it came, by half a one at most. Without that half a full quart,
 * which is kept as 946353 µL, would take two packs of 946352.946 µL.
 */
function neededOf(containers: Container[]): Exact {
  const amount = sum(containers.map(({ remaining }) => stock(remaining)));
  return subtract(fraction(BigInt(amount), 1n), fraction(BigInt(containers.length), 2n));
}

/** The fewest packs that hold it, and every quantity break above that: more packs may cost less. */
function purchasesOf(offer: Offer, needed: Exact): Purchase[] {
  const fewest: number = Math.max(1, wholeUp(divide(needed, offer.pack)));
  const counts = [fewest, ...offer.breaks.map(({ atLeast }) => atLeast).filter((count) => count > fewest)];
  return counts
    .map((packs) => ({ packs, price: priceOfOne(offer, packs) }))
    .filter(({ packs, price }) => Number.isSafeInteger(packs * price))
    .map(({ packs, price }) => ({ offer, packs, price, goods: micros(price * packs) }));
}

function costsLess(a: Purchase, b: Purchase): boolean {
  if (a.goods !== b.goods) return a.goods < b.goods;
  return a.offer === b.offer ? a.packs < b.packs : isCheaper(a.offer, b.offer);
}

type SharedOrder = ReplaceOrder & { shares: Map<Purchase, Micros> | null };

function ordersOf(purchases: Purchase[]): Map<Supplier, SharedOrder> {
  const suppliers = new Set(purchases.map(({ offer }) => offer.supplier));
  return new Map([...suppliers].map((supplier) => [supplier, orderFrom(supplier, purchases)]));
}

function orderFrom(supplier: Supplier, purchases: Purchase[]): SharedOrder {
  const its = purchases.filter(({ offer }) => offer.supplier === supplier);
  const goods = sum(its.map((purchase) => purchase.goods));
  const freight = freightOf(supplier, goods);
  if (freight === null) return { supplier, goods, freight, shares: null };
  const shares = shareByValue(
    freight,
    its.map((purchase) => purchase.goods),
  );
  return { supplier, goods, freight, shares: new Map(its.map((one, place) => [one, shares[place] ?? micros(0)])) };
}
