import 'server-only';
import { isSupposed, type WhatIfFields, whatIfIn } from '@/shared/forms/what-if';
import type { Clock } from '../clock';
import type { ProductAhead } from '../engine/ahead/plan';
import { type ToEnter, toEnterForProduct } from '../engine/rules/to-enter';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { type OnOrderSeen, onOrderSeen } from './on-order';
import { type OrderListed, ordersScreen } from './orders';
import { PageAsked, type PageOf, pageOf } from './pages';
import { WEEK_COLUMNS } from './product';
import { type RampSteps, rampSteps } from './ramp-steps';
import { type Ramp, stockRamp } from './stock-ramp';
import { type WhatIfSaid, whatIfSaid } from './what-if';

/** In which order the products stand. */
const BUY_SORTS = ['reorder', 'name', 'runs-out', 'waste'] as const;
export type BuySort = (typeof BUY_SORTS)[number];

/** One product with when it has to be ordered. */
export type ToBuy = {
  product: { id: string; name: string };
  usable: Fig;
  runsOut: boolean;
  /** What to enter before it can be planned what to buy of it; empty when all is known. */
  toEnter: ToEnter[];
  runsOutOn: Fig;
  orderBy: Fig;
  weeksUntilReorder: Fig;
  /** Whole weeks until it must be ordered, below zero when it is late; null when nothing runs out or nobody sells it. */
  weeks: number | null;
  /** Of whom it is ordered then; null when nothing runs out or nobody sells it. */
  from: { supplier: string; pack: string } | null;
  wastes: boolean;
  wasteCost: Fig;
  onOrder: OnOrderSeen | null;
  ramp: Ramp;
};

export type BuyScreen = Pick<House, 'today' | 'ways'> & {
  shopId: string;
  sort: BuySort;
  /** One page of the products. */
  products: ToBuy[];
  pages: Pick<PageOf<ToBuy>, 'page' | 'pages' | 'isAll'>;
  late: number;
  /** The products of which nobody knows how much is needed, with what to enter; on whatever page they are. */
  unplanned: { product: { id: string; name: string }; toEnter: ToEnter[] }[];
  /** The product whose weeks are shown large; null when the shop has none. */
  shown: {
    product: { id: string; name: string };
    ramp: Ramp;
    steps: RampSteps;
    weeks: { week: House['today']; cells: Fig[] }[];
  } | null;
  whatIf: { fields: WhatIfFields; said: WhatIfSaid | null; programs: { id: string; name: string }[] };
  open: OrderListed[];
};

type Search = Readonly<Record<string, string | string[] | undefined>>;

/** When each product has to be ordered, one of them large, and what is on order. Null when there is no shop. */
export async function buyScreen(clock: Clock, search: Search): Promise<BuyScreen | null> {
  const [house, orders] = [await houseNow(clock), await ordersScreen(clock)];
  if (!house || !orders) return null;
  const sort = BUY_SORTS.find((one) => one === search.sort) ?? 'reorder';
  const aheads = inOrder(house.plan.products.filter(isBought), sort);
  const onItsWay = onOrderSeen(house);
  const { shown: onPage, ...pages } = pageOf(aheads, PageAsked.parse(search.page), MOST_ON_A_PAGE, () => 1);
  const products = onPage.map((ahead) => toBuy(house, ahead, onItsWay.get(ahead.product) ?? null));
  const shown = shownOf(house, aheads, search.product);
  return {
    ...{ shopId: house.id, today: house.today, ways: house.ways, sort, products, pages },
    late: aheads.filter(({ reorder }) => reorder !== null && reorder.weeks < 0).length,
    unplanned: aheads.flatMap((ahead) => unplannedOf(house, ahead)),
    shown,
    whatIf: whatIfOf(house, search, shown?.product.id ?? ''),
    open: orders.open,
  };
}

/** What is made here or put away is not bought, unless something still asks for it. */
const isBought = ({ product, runsOutOn, unknownSince }: ProductAhead): boolean =>
  product.madeFrom.length === 0 && (!product.archived || runsOutOn !== null || unknownSince !== null);

function inOrder(aheads: ProductAhead[], sort: BuySort): ProductAhead[] {
  const byName = (a: ProductAhead, b: ProductAhead) => a.product.name.localeCompare(b.product.name);
  const key = KEYS[sort];
  return aheads.toSorted((a, b) => key(a).localeCompare(key(b)) || byName(a, b));
}

/** As many as keep the page of a large shop light; a small shop has fewer. */
const MOST_ON_A_PAGE = 24;

function unplannedOf({ plan }: House, ahead: ProductAhead): BuyScreen['unplanned'] {
  const { id, name } = ahead.product;
  const toEnter = toEnterForProduct(plan, ahead);
  return toEnter.length > 0 ? [{ product: { id, name }, toEnter }] : [];
}

const NEVER = '9999-12-31';

/** What products are sorted by: late ones have the earliest day to order by, and so come first. */
const KEYS: Record<BuySort, (ahead: ProductAhead) => string> = {
  // What nobody knows presses more than what is known to last.
  reorder: ({ reorder, runsOutOn, unknownSince }) => reorder?.by ?? runsOutOn ?? unknownSince ?? NEVER,
  name: () => '',
  'runs-out': ({ runsOutOn, unknownSince }) => runsOutOn ?? unknownSince ?? NEVER,
  waste: ({ wastes }) => wastes.find(({ amount }) => amount > 0)?.on ?? NEVER,
};

function toBuy(house: House, ahead: ProductAhead, onOrder: OnOrderSeen | null): ToBuy {
  const { product, reorder, runsOutOn, wastes } = ahead;
  const its = (what: string) => house.figure('product', product.id, what);
  return {
    product: { id: product.id, name: product.name },
    ...{ usable: its('usable'), runsOut: runsOutOn !== null, runsOutOn: its('runsOutOn'), orderBy: its('orderBy') },
    weeksUntilReorder: its('weeksUntilReorder'),
    weeks: reorder?.weeks ?? null,
    from: reorder && { supplier: reorder.offer.supplier.name, pack: reorder.offer.packText },
    wastes: wastes.some(({ amount }) => amount > 0),
    wasteCost: its('wasteCost'),
    onOrder,
    ramp: stockRamp(house, ahead),
    toEnter: toEnterForProduct(house.plan, ahead),
  };
}

function shownOf(house: House, aheads: ProductAhead[], asked: Search[string]): BuyScreen['shown'] {
  const ahead = aheads.find(({ product }) => product.id === asked) ?? aheads[0];
  if (!ahead) return null;
  const { id, name } = ahead.product;
  return {
    product: { id, name },
    ramp: stockRamp(house, ahead),
    steps: rampSteps(house, ahead),
    weeks: ahead.weeks.map(({ week }, number) => ({
      week,
      cells: WEEK_COLUMNS.map((column) => house.figure('product', id, 'week', number, column)),
    })),
  };
}

function whatIfOf({ plan, shop, figure }: House, search: Search, shown: string): BuyScreen['whatIf'] {
  // Asked about nothing in particular, it begins with the product that is shown.
  const fields = whatIfIn({ ...search, product: search.product ?? shown });
  return {
    fields,
    said: isSupposed(fields) ? whatIfSaid(plan, figure, fields) : null,
    programs: shop.programs.map(({ id, recipes, benches }) => ({
      id,
      name: `${recipes.map(({ name }) => name).join(', ')} on ${benches.map(({ name }) => name).join(', ')}`,
    })),
  };
}
