import 'server-only';
import { TAKE } from '@/shared/forms/stock-solution';
import { readStock, stockText } from '@/shared/measure/read-stock';
import { readVolume } from '@/shared/measure/size';
import { stock } from '@/shared/quantity/amounts';
import { compare, divide, type Exact, exact, ZERO } from '@/shared/quantity/exact';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import { inDrawOrder } from '../engine/ledger/draw-order';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import { shareText, solutionName } from '../engine/mix/stock-solution-of';
import { thinnedDose } from '../engine/mix/thinned-dose';
import type { Container, Product, Shop } from '../engine/shop';
import { bottleName } from '../engine/working/line-figures';
import { spotsNamed } from './bottle-address';
import { type HereNow, shopNow } from './house';
import { type SolutionOffered, solutionsIn } from './solutions';

/** What the form that makes a stock solution needs. */
export type StockSolutionScreen = {
  commandId: string;
  shop: string;
  product: { id: string; name: string; form: Product['form'] };
  /** In the order in which they are drawn from, with what would be taken. */
  bottles: { field: string; label: string; leftText: string; take: string; past: boolean }[];
  makeUpTo: string;
  /** "72 g/L", where what is taken and made is known already. */
  strength: string | null;
  /** What stands in recipes, and what would stand there instead once this was made. */
  instead: { recipe: { id: string; name: string }; dose: string; solution: string }[];
  /** What recipes could take of the solutions that were made of it already. */
  made: SolutionOffered[];
  places: string[];
};

/** What an address asks to be made: `product=P&amount=3.6 g&make=50 mL`. */
export type StockSolutionAsked = { product: string; amount: string; make: string };

/** The form for a stock solution of one product. Null when there is no such product. */
export async function stockSolutionScreen(
  clock: Clock,
  asked: StockSolutionAsked,
): Promise<StockSolutionScreen | null> {
  const here = await shopNow(clock);
  const product = here?.shop.products.find(({ id }) => id === asked.product);
  if (!here || !product) return null;
  const amount = readStock(asked.amount, product);
  const share = amount.ok ? shareOf(amount.value, asked.make) : null;
  const made = here.shop.recipes.flatMap((recipe) => solutionsIn(here.shop, recipe));
  const ofThis = made.filter((one) => one.product.id === product.id);
  const name = share && solutionName(product, share);
  return {
    commandId: newCommandId(),
    shop: here.id,
    made: ofThis,
    product: { id: product.id, name: product.name, form: product.form },
    bottles: await bottlesOf(here, product, amount.ok ? amount.value : 0),
    makeUpTo: asked.make,
    strength: share && shareText(product, share),
    instead:
      share && !ofThis.some(({ solution }) => solution.name === name) ? insteadIn(here.shop, product, share) : [],
    places: [...new Set(here.shop.containers.flatMap(({ keptIn }) => keptIn ?? []))].sort(),
  };
}

/** How much of the product is in each mL of what is made; null when that is not known yet. */
function shareOf(amount: number, make: string): Exact | null {
  const ml = readVolume(make);
  return ml.ok && compare(ml.value, ZERO) > 0 ? divide(exact(amount), ml.value) : null;
}

async function bottlesOf({ id, shop, today }: HereNow, product: Product, wanted: number) {
  const spots = await spotsNamed(id);
  const usable = (container: Container) => (lastUsableDay(container) ?? today) >= today;
  const standing = shop.containers.filter((one) => one.product === product && one.remaining > 0);
  let left = wanted;
  return inDrawOrder(standing).flatMap((container) => {
    const spot = spots(container.lot, container.place);
    if (!spot) return [];
    const past = !usable(container);
    const take = past ? 0 : Math.min(left, container.remaining);
    left -= take;
    return {
      ...{ field: `${TAKE}${spot.lotId}/${spot.place}`, label: bottleName(container), past },
      leftText: stockText(container.remaining, product.form),
      take: take > 0 ? stockText(stock(take), product.form) : '',
    };
  });
}

const insteadIn = ({ recipes }: Shop, product: Product, share: Exact): StockSolutionScreen['instead'] =>
  recipes.flatMap(({ id, name, ingredients }) =>
    ingredients.flatMap(({ product: own, dose }) => {
      const solution = own === product ? thinnedDose(dose, product, share) : null;
      return solution === null ? [] : [{ recipe: { id, name }, dose: dose.text, solution }];
    }),
  );
