import { type Exact, exact, multiply } from '@/shared/quantity/exact';
import type { Application, Ingredient, Product } from '../shop';
import { type Ground, ratePerMl } from '../strength/dose-in-stock';

/** Two products of a mix that the shop's records never had in one tank. */
export type UntriedPair = [Product, Product];

/**
 * The pairs of a mix that ought to be tried in a jar first, since nothing on record had both of them in it.
 *
 * Takes    what is mixed, and the shop's applications
 * Gives    each pair once, in the order of the recipe
 */
export function untriedPairs(ingredients: readonly Ingredient[], applications: readonly Application[]): UntriedPair[] {
  const products = [...new Set(ingredients.map(({ product }) => product))];
  const tried = triedIn(applications);
  return products.flatMap((one, at) =>
    products
      .slice(at + 1)
      .flatMap((other) => (tried.get(one.id)?.has(other.id) ? [] : [[one, other] satisfies UntriedPair])),
  );
}

type Tried = ReadonlyMap<string, ReadonlySet<string>>;
const known = new WeakMap<readonly Application[], Tried>();

/** Of each product the products that were ever in one tank with it: found once for each list of records. */
function triedIn(applications: readonly Application[]): Tried {
  const tried = known.get(applications) ?? findTried(applications);
  known.set(applications, tried);
  return tried;
}

function findTried(applications: readonly Application[]): Tried {
  const tried = new Map<string, Set<string>>();
  for (const { ingredients } of new Set(applications.map(({ recipe }) => recipe))) {
    const ids = ingredients.map(({ product }) => product.id);
    for (const id of ids) {
      const others = tried.get(id) ?? new Set<string>();
      tried.set(id, others);
      for (const other of ids) others.add(other);
    }
  }
  return tried;
}

/** Half a litre: a jar that everyone has. */
const JAR_ML = exact(500n);

/** How long a jar stands before it is judged. Source: Utah State University Extension, "Using a Jar Test", 2012. */
export const JAR_STANDS_MINUTES = 15;

/**
 * What goes into a jar of half a litre: everything in the proportion of the recipe, in the order of addition.
 *
 * Gives    null for a dose that cannot be turned into an amount
 * Units    µL of a liquid, mg of a powder, exact
 */
export function jarAmount({ dose, product }: Ingredient, ground: Ground): Exact | null {
  const rate = ratePerMl(dose, product, ground);
  return rate && multiply(rate, JAR_ML);
}
