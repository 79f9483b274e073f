import { readSize, stockOf } from '@/shared/measure/size';
import type { Fault } from '@/shared/outcome';
import { type Stock, stock, sum } from '@/shared/quantity/amounts';
import { divide, type Exact, exact } from '@/shared/quantity/exact';
import { groundOf } from '../bench/ground';
import { plantsOn } from '../bench/spray-volume';
import type { Bench, Ingredient, Product, Recipe, Shop } from '../shop';
import type { Batch } from './batch';

/** What somebody poured of one product: so much out of these bottles, and so much out of one that is not in the books. */
export type Pouring = {
  product: string;
  from: { lotId: string; place: number; amount: string; heldMore: boolean; ranOut?: boolean }[];
  elsewhere: string | null;
};

/** The same, read: µL of a liquid, mg of a powder. */
export type Poured = {
  product: Product;
  from: { lotId: string; place: number; amount: Stock; heldMore: boolean; ranOut?: boolean }[];
  elsewhere: Stock;
  total: Stock;
};

/**
 * What was poured, as amounts of the shop's products.
 *
 * Gives    one line per product with something poured of it, and every fault with its place in what was sent
 * Refuses  a product that the shop does not have; an amount that cannot be read, or measured of that product, or is none
 */
export function pouredOf(shop: Shop, pourings: readonly Pouring[]): { poured: Poured[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const poured = pourings.flatMap((pouring, at): Poured[] => {
    const path = `poured[${at}]`;
    const product = shop.products.find(({ id }) => id === pouring.product);
    if (!product) {
      faults.push({ path: `${path}.product`, message: `There is no product "${pouring.product}" in this shop.` });
      return [];
    }
    const amount = (text: string, where: string): Stock => readAmount(text, product, `${path}.${where}`, faults);
    const from = pouring.from.map((one, bottle) => ({ ...one, amount: amount(one.amount, `from[${bottle}].amount`) }));
    const elsewhere = pouring.elsewhere === null ? NONE : amount(pouring.elsewhere, 'elsewhere');
    const total = sum([...from.map((one) => one.amount), elsewhere]);
    return total > 0 ? [{ product, from, elsewhere, total }] : [];
  });
  return { poured, faults };
}

const NONE = stock(0);

function readAmount(text: string, product: Product, path: string, faults: Fault[]): Stock {
  const size = readSize(text, product.form);
  const amount = size.ok ? stockOf(size.value, product) : null;
  if (amount !== null && amount > 0) return amount;
  const message = size.ok
    ? amount === null
      ? NO_MEASURE[product.form]
      : 'That is nothing. Leave it out.'
    : size.message;
  faults.push({ path, message });
  return NONE;
}

const NO_MEASURE = {
  liquid: 'This product is a liquid of unknown density. Write a volume, such as "4 mL".',
  powder: 'Nobody knows what a spoon of this powder weighs. Write a weight, such as "4 g".',
};

/**
 * The recipe as it was really mixed: the products that went in, at the dose that they were poured at, under the use that
 * the recipe has for each.
 *
 * Takes    what was poured, and how much spray there is of it, mL
 */
export const asPoured = (recipe: Recipe, poured: readonly Poured[], sprayMl: Exact): Recipe => ({
  ...recipe,
  ingredients: poured.map(({ product, total }): Ingredient => {
    const planned = recipe.ingredients.find((one) => one.product === product);
    return { product, dose: doseOf(product, total, sprayMl), use: planned?.use ?? null, order: planned?.order ?? null };
  }),
});

/** So much in so much spray: mL/L of a liquid, which is µL per mL, or g/L of a powder. */
function doseOf({ form }: Product, total: Stock, sprayMl: Exact): Ingredient['dose'] {
  const perLitre = divide(exact(total), sprayMl);
  const text = `as poured`;
  return form === 'liquid'
    ? { text, kind: 'volume', mlPerLitre: perLitre }
    : { text, kind: 'mass', gPerLitre: perLitre };
}

/** The batch that was sprayed: so much spray, in one go, on these benches. */
export const sprayedBatch = (benches: Bench[], sprayMl: Exact): Batch => ({
  spray: { onPlants: sprayMl, fills: 1, fill: sprayMl, total: sprayMl },
  benches,
  area: groundOf(benches),
  plants: plantsOn(benches),
});
