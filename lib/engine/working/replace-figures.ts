import { showMoney } from '@/shared/measure/show';
import { stock } from '@/shared/quantity/amounts';
import { showDay } from '@/shared/time/show-day';
import type { Plan } from '../ahead/plan';
import { type Purchase, type ReplaceLine, type Replacement, replacementOf } from '../ahead/replace-cost';
import { eachOnce, type ToEnter, toEnterForOffer } from '../rules/to-enter';
import type { Offer, Product, Supplier } from '../shop';
import {
  count,
  entered,
  type FoundWorking,
  figureAddress,
  money,
  type Shown,
  type Step,
  sumShown,
  text,
  worked,
} from './shown';

const found = new WeakMap<Plan, Replacement>();

/** What the shelf of a plan would cost to replace, worked out once for each plan. */
export function replacementIn(plan: Plan): Replacement {
  const replacement = found.get(plan) ?? replacementOf(plan.shop, plan.today);
  found.set(plan, replacement);
  return replacement;
}

const RULE =
  'The whole packs that hold what is usable, of the offer where they cost least today, with the quantity break for that many. The freight of one order from each supplier for the whole shelf is shared over its packs by what they cost.';

/** The working of what a product on the shelf would cost to buy again: `product/ID/replaceCost`. */
export function replaceWorking(plan: Plan, product: Product): FoundWorking {
  const line = replacementIn(plan).lines.find((one) => one.product === product);
  const title = `Cost to replace ${product.name}`;
  const usable = worked(
    'Usable today',
    { kind: 'stock', amount: line?.usable ?? stock(0), form: product.form },
    'the shelf',
    figureAddress('product', product.id, 'usable'),
  );
  if (!line) return { title, value: text('nothing to replace'), rule: RULE, steps: [usable] };
  return {
    title,
    value: lineShown(line),
    rule: RULE,
    steps: [usable, ...stepsOf(plan, line)],
    toEnter: toEnterOf(line),
  };
}

/** What one line costs, or what must be entered before anybody can tell. */
function lineShown({ buy, cost }: ReplaceLine): Shown {
  if (buy === null) return { kind: 'unknown', because: 'No supplier offers it. Enter an offer with its price.' };
  return money(cost, `Enter the freight of ${buy.offer.supplier.name}, 0 when there is none.`);
}

/** What somebody must enter before the cost of a line is known. */
function toEnterOf({ product, buy, cost }: ReplaceLine): ToEnter[] {
  if (cost !== null) return [];
  if (buy === null) return [toEnterForOffer(product)];
  const { id, name } = buy.offer.supplier;
  const words = `Enter the freight of ${name}, 0 when there is none.`;
  return [{ words, at: { of: 'supplier', id, field: 'freightPerOrder' } }];
}

function stepsOf(plan: Plan, line: ReplaceLine): Step[] {
  if (line.buy === null) return [];
  const { offer, packs, price, goods } = line.buy;
  const { supplier } = offer;
  const order = replacementIn(plan).orders.find((one) => one.supplier === supplier);
  const unknown = 'Never entered.';
  return [
    entered('Packs', count(packs, 'packs'), `of ${offer.packText}, ${supplier.name}`),
    entered('One pack', money(price, unknown), priceSince(plan, line.buy)),
    entered('Goods', money(goods, unknown), 'packs × the price of one'),
    entered('All that comes from there', money(order?.goods ?? goods, unknown), `one order from ${supplier.name}`),
    entered('Freight of that order', money(order?.freight ?? null, unknown), freightRule(plan, supplier)),
    entered('Its share of the freight', money(line.freight, unknown), 'freight × its goods ÷ all goods of the order'),
  ];
}

/** Since when a price holds, in words: "since Tue 3 March, from 2 packs on". */
function priceSince(plan: Plan, { offer, packs, price }: Purchase): string {
  const since = sinceWords(plan, offer);
  const reached = offer.breaks.filter((one) => one.atLeast <= packs && one.price === price);
  const least = reached.at(-1)?.atLeast;
  return price === offer.price || least === undefined ? since : `${since}, from ${least} packs on`;
}

const sinceWords = ({ today }: Plan, { since }: Offer): string =>
  since === null ? 'since when it holds was never noted' : `since ${showDay(since, today)}`;

function freightRule({ shop }: Plan, { name, freightPerOrder, freeFreightOver }: Supplier): string {
  const paid = freightPerOrder === null ? 'never entered' : showMoney(freightPerOrder, shop.currency);
  const free =
    freeFreightOver === null ? '' : `, nothing from ${showMoney(freeFreightOver, shop.currency)} of goods on`;
  return `${name}: ${paid}${free}`;
}

/** The working of a sum over the whole shelf: `shelf/replaceCost`. Null when there is no such figure. */
export function shelfWorking(plan: Plan, [figure]: string[]): FoundWorking | null {
  if (figure !== 'replaceCost') return null;
  const { lines, unknown } = replacementIn(plan);
  return {
    title: 'Cost to replace the shelf',
    value: sumShown(lines.map(({ cost }) => cost)),
    toEnter: eachOnce(lines.flatMap(toEnterOf)),
    rule: 'What is usable of every product, bought again today in whole packs, with freight. What is unknown is not in the sum.',
    steps: [
      entered('Not known, and not in the sum', count(unknown, 'products'), 'no offer, or no freight entered'),
      ...lines.map((line) =>
        worked(
          line.product.name,
          lineShown(line),
          boughtFrom(line),
          figureAddress('product', line.product.id, 'replaceCost'),
        ),
      ),
    ],
  };
}

const boughtFrom = ({ buy }: ReplaceLine): string =>
  buy ? `${buy.packs} × ${buy.offer.packText}, ${buy.offer.supplier.name}` : 'nobody offers it';
