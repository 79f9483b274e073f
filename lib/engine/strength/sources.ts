import { add, divide, type Exact, exact, multiply } from '@/shared/quantity/exact';
import type { Product } from '../shop';
import { ratePerMl } from './dose-in-stock';

/**
 * Everything that a stock solution is made from, at any remove, and how much of it there is in each mL of the solution.
 *
 *   share of a source = Σ over what holds it: share of the holder × rate of the source in it
 *
 * Gives    the sources, without the solution itself; null for a share that nobody can say: of a solution that is no
 *          liquid, where the dose of a source is no amount, or where two products are made from each other
 * Units    µL of a liquid, mg of a powder, in each mL; exact
 */
export function sourcesOf(product: Product): ReadonlyMap<Product, Exact | null> {
  if (product.madeFrom.length === 0) return NONE;
  const shares = new Map<Product, Exact | null>([[product, product.form === 'liquid' ? WHOLE : null]]);
  const done = new Set<Product>();
  for (const holder of holdersFirst(product)) {
    done.add(holder);
    const held = shares.get(holder) ?? null;
    for (const { product: source, dose } of holder.madeFrom) {
      const rate = ratePerMl(dose, source);
      const share = held && rate && divide(multiply(held, rate), WHOLE);
      const before = shares.get(source);
      shares.set(source, done.has(source) || before === null ? null : share && before ? add(before, share) : share);
    }
  }
  shares.delete(product);
  return shares;
}

/** A product with everything that it is made from; the product first. */
export const withSources = (product: Product): readonly Product[] => [product, ...sourcesOf(product).keys()];

const NONE: ReadonlyMap<Product, Exact | null> = new Map();
/** A mL of a solution is a mL of it: 1,000 µL. */
const WHOLE = exact(1000n);

/** A product and what it is made from, each after all that hold it. */
function holdersFirst(product: Product): Product[] {
  const seen = new Set<Product>();
  const last: Product[] = [];
  const visit = (one: Product): void => {
    if (seen.has(one)) return;
    seen.add(one);
    for (const { product: source } of one.madeFrom) visit(source);
    last.push(one);
  };
  visit(product);
  return last.reverse();
}
