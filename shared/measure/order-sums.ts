import { type Micros, micros, minus, plus, sum } from '../quantity/amounts';

/** What a supplier asks of an order; null is not known. */
export type OrderTerms = Record<'freightPerOrder' | 'freeFreightOver' | 'minimumOrder', Micros | null>;

/** The freight of one order of so much: nothing from the free-freight value on; null when it was never entered. */
export function freightOf(
  terms: Pick<OrderTerms, 'freightPerOrder' | 'freeFreightOver'>,
  goods: Micros,
): Micros | null {
  const { freightPerOrder, freeFreightOver } = terms;
  return freeFreightOver !== null && goods >= freeFreightOver ? micros(0) : freightPerOrder;
}

/** What an order comes to. */
export type OrderSums = {
  /** The lines added up; null as soon as one has no price. */
  goods: Micros | null;
  /** How many lines have no price. */
  unpriced: number;
  /** As it was entered, or as the supplier asks; null when nobody knows, or what has no price may bring it to nothing. */
  freight: Micros | null;
  /** Null as soon as a price or the freight is not known. */
  total: Micros | null;
  /** How much more there would have to be for the supplier to take it; 0 when it is enough, null when that is not known. */
  toMinimum: Micros | null;
  /** How much more there would have to be for free freight; 0 when it is free, null when it never is or nobody knows. */
  toFreeFreight: Micros | null;
};

/**
 * What an order comes to, beside what its supplier asks of it.
 *
 * Takes    packs with what one of them costs, and the freight that was entered (null: as the supplier asks)
 * Units    micros
 */
export function orderSums(
  lines: readonly { count: number; price: Micros | null }[],
  terms: OrderTerms,
  entered: Micros | null,
): OrderSums {
  const known = sum(lines.map(({ count, price }) => micros((price ?? 0) * count)));
  const unpriced = lines.filter(({ price }) => price === null).length;
  // What has no price can only add to what is known: a threshold that is reached stays so, and no other is known.
  const missing = (threshold: Micros | null) => {
    const more = missingTo(threshold, known);
    return more !== 0 && unpriced > 0 ? null : more;
  };
  const [toMinimum, toFreeFreight] = [missing(terms.minimumOrder), missing(terms.freeFreightOver)];
  const mayBeFree = terms.freeFreightOver !== null && toFreeFreight === null;
  const freight = entered ?? (mayBeFree ? null : freightOf(terms, known));
  const goods = unpriced > 0 ? null : known;
  const total = goods === null || freight === null ? null : plus(goods, freight);
  return { goods, unpriced, freight, total, toMinimum, toFreeFreight };
}

/** How much more goods there would have to be for a threshold: 0 when it is reached, null when there is none. */
const missingTo = (threshold: Micros | null, goods: Micros): Micros | null =>
  threshold === null ? null : minus(threshold, goods < threshold ? goods : threshold);
