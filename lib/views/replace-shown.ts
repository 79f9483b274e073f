import type { Micros } from '@/shared/quantity/amounts';
import type { Product } from '../engine/shop';
import { replacementIn } from '../engine/working/replace-figures';
import type { Fig } from './figures';
import type { House } from './house';
import { offerHref, type PriceThen } from './offers-shown';

/** What a product on the shelf would cost to buy again, and by which price. */
export type ReplaceShown = {
  cost: Fig;
  /** Null when nothing is there to replace, or nobody offers it. */
  by: {
    packs: number;
    packText: string;
    supplier: string;
    price: Micros;
    since: PriceThen['since'];
    /** From how many packs on that price holds; null when it holds for one. */
    atLeast: number | null;
    href: string;
  } | null;
};

export function replaceShown({ plan, figure }: House, product: Product): ReplaceShown {
  const buy = replacementIn(plan).lines.find((line) => line.product === product)?.buy ?? null;
  const cost = figure('product', product.id, 'replaceCost');
  if (!buy) return { cost, by: null };
  const { offer, packs, price } = buy;
  const { packText, supplier, since, breaks } = offer;
  const reached = breaks.filter((one) => one.atLeast <= packs).map(({ atLeast }) => atLeast);
  const atLeast = reached.length > 0 ? Math.max(...reached) : null;
  return { cost, by: { packs, packText, supplier: supplier.name, price, since, atLeast, href: offerHref(offer) } };
}
