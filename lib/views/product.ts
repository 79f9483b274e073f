import 'server-only';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import type { Flag } from '../engine/rules/flag';
import { labelDoubts } from '../engine/rules/label-doubts';
import type { Product } from '../engine/shop';
import { bottleAddresses } from './bottle-addresses';
import { type ProductComing, productComing } from './coming-in';
import type { Fig } from './figures';
import { gravestFirst } from './flags-by-gravity';
import { type House, houseNow } from './house';
import { modesInWords } from './mode-words';
import { type OfferShown, offersShown } from './offers-shown';
import { type RampSteps, rampSteps } from './ramp-steps';
import { type ReplaceShown, replaceShown } from './replace-shown';
import { type SheetShown, sheetsOf } from './safety-sheet';
import { type ShelfProduct, shelfProduct } from './shelf-product';
import { type Ramp, stockRamp } from './stock-ramp';

/** The columns of a product's weeks, as the contract of the plan names them. */
export const WEEK_COLUMNS = ['need', 'used', 'short', 'wasted', 'received', 'closing'] as const;

export type ProductScreen = Pick<House, 'today' | 'ways'> & {
  product: ShelfProduct;
  facts: Product;
  /** What in its label is unlike what labels usually say. */
  doubts: string[];
  /** Its modes of action, in words. */
  modes: string[];
  shopId: string;
  sheets: SheetShown[];
  weeks: { week: Day; cells: Fig[] }[];
  ramp: Ramp;
  steps: RampSteps;
  /** What of it is on order. */
  coming: ProductComing[];
  offers: OfferShown[];
  replace: ReplaceShown;
  flags: ProductFlag[];
};

/** The first of a kind of flag: the spraying it speaks of, and how many more like it come later. */
export type ProductFlag = { flag: Flag; where: string | null; more: number };

/** One product: how it runs out week by week, its bottles, who sells it, and what its label says. */
export async function productScreen(clock: Clock, id: string): Promise<ProductScreen | null> {
  const house = await houseNow(clock);
  const ahead = house?.plan.products.find(({ product }) => product.id === id);
  if (!house || !ahead) return null;
  const { shop, today, ways, plan, figure } = house;
  return {
    today,
    ways,
    product: shelfProduct(house, ahead, await bottleAddresses(house.id)),
    facts: ahead.product,
    doubts: labelDoubts(ahead.product),
    modes: modesInWords(ahead.product),
    shopId: house.id,
    sheets: await sheetsOf(house.id, id, shop.zone),
    weeks: ahead.weeks.map(({ week }, number) => ({
      week,
      cells: WEEK_COLUMNS.map((column) => figure('product', id, 'week', number, column)),
    })),
    ramp: stockRamp(house, ahead),
    steps: rampSteps(house, ahead),
    coming: productComing(house, ahead.product),
    offers: offersShown(
      house,
      shop.offers.filter(({ product }) => product === ahead.product),
    ),
    replace: replaceShown(house, ahead.product),
    flags: firstOfEach(house, gravestFirst(plan.flags.filter(({ product }) => product === id))),
  };
}

/** A shortage is flagged at every spraying it touches; the first of each kind, with how many follow, says the same. */
function firstOfEach({ plan, today }: House, flags: Flag[]): ProductFlag[] {
  const rules = [...new Set(flags.map(({ rule }) => rule))];
  return rules.flatMap((rule) => {
    const [flag, ...more] = flags.filter((one) => one.rule === rule);
    if (!flag) return [];
    const spraying = plan.sprayings.find(({ program, date }) => program.id === flag.program && date === flag.on);
    const where = spraying ? `${spraying.recipe.name}, ${showDayShort(flag.on, today)}` : null;
    return [{ flag, where, more: more.length }];
  });
}
