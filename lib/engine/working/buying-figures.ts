import { type Micros, micros } from '@/shared/quantity/amounts';
import { type Day, dayFromNumber } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Purchase } from '../buying/bought';
import type { Order } from '../buying/orders';
import type { PurchasePlan } from '../buying/purchase-plan';
import type { Product } from '../shop';
import { count, entered, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';

/** The address of a figure of a purchase plan, which is told apart by its weeks. */
export const buyingAddress = ({ weeks }: Pick<PurchasePlan, 'weeks'>, ...path: (string | number)[]): string =>
  figureAddress('buying', weeks, ...path);

/**
 * The working of a figure of a purchase plan: `packs`, `freight`, `capital`, `left`, `ofWhichWaste`, `total`;
 * `habit/NAME`; `order/N/goods`, `order/N/freight`, `order/N/total` or `order/N/line/M`.
 */
export function buyingWorking(plan: PurchasePlan, [figure, ...rest]: string[]): FoundWorking | null {
  switch (figure) {
    case 'packs':
      return sumOfOrders(
        plan,
        'goods',
        'Packs to buy',
        'What all packs cost, with the price for as many as are in one order.',
      );
    case 'freight':
      return sumOfOrders(
        plan,
        'freight',
        'Freight',
        'What every order costs by itself. Freight that was never entered is not in the sum.',
      );
    case 'capital':
    case 'left':
    case 'ofWhichWaste':
      return sumOfProducts(plan, figure);
    case 'total':
      return totalWorking(plan);
    case 'habit':
      return habitWorking(plan, rest[0]);
    case 'order':
      return orderWorking(plan, rest);
    default:
      return null;
  }
}

const NEVER = 'The freight of this supplier was never entered.';
const shown = (amount: number): Shown => ({ kind: 'money', micros: amount });
const dayOf = ({ on }: Order): Day => dayFromNumber(on);
const orderName = (order: Order, { today }: PurchasePlan) => `${order.supplier.name}, ${showDay(dayOf(order), today)}`;

function sumOfOrders(plan: PurchasePlan, what: 'goods' | 'freight', title: string, rule: string): FoundWorking {
  return {
    title: `${title}, ${plan.weeks} weeks`,
    value: shown(what === 'goods' ? plan.cost.packs : plan.cost.freight),
    rule,
    steps: plan.orders.map((order, number) =>
      worked(
        orderName(order, plan),
        money(order[what], NEVER),
        'the order',
        buyingAddress(plan, 'order', number, what),
      ),
    ),
  };
}

type OfProducts = { title: string; rule: string; of: (purchase: Purchase) => Micros; from: string };

const OF_PRODUCTS: Record<'capital' | 'left' | 'ofWhichWaste', OfProducts> = {
  capital: {
    title: 'Money tied up',
    rule: 'The price of each part of a pack × the days from its order until it is used, dies, or the weeks end ÷ 365 × the cost of capital in a year.',
    of: ({ capital }) => capital,
    from: 'its packs',
  },
  left: {
    title: 'Left, and still to be used',
    rule: 'What is left in packs when the weeks end and will be used before it dies, at the pace of these weeks: the part of the price that it carries.',
    of: ({ left }) => left,
    from: 'its last packs',
  },
  ofWhichWaste: {
    title: 'Of the packs, what will die',
    rule: 'What is left in packs after their last usable day within these weeks, as a part of their price. It is inside the packs and adds nothing to the total.',
    of: ({ waste }) => waste,
    from: 'its packs',
  },
};

function sumOfProducts(plan: PurchasePlan, figure: keyof typeof OF_PRODUCTS): FoundWorking {
  const { title, rule, of, from } = OF_PRODUCTS[figure];
  const rate = entered(
    'Cost of capital in a year',
    { kind: 'ratio', value: plan.shop.capitalPerYear * 100, unit: '%' },
    'Setup, the shop',
  );
  return {
    title: `${title}, ${plan.weeks} weeks`,
    value: shown(plan.cost[figure]),
    rule,
    steps: [
      ...(figure === 'capital' ? [rate] : []),
      ...plan.parts.map(({ part, purchase }) => entered(part.need.product.name, shown(of(purchase)), from)),
    ],
  };
}

function totalWorking(plan: PurchasePlan): FoundWorking {
  const step = (label: string, figure: 'packs' | 'freight' | 'capital' | 'left', from: string) =>
    worked(label, shown(plan.cost[figure]), from, buyingAddress(plan, figure));
  return {
    title: `What buying for ${plan.weeks} weeks comes to`,
    value: shown(plan.cost.total),
    rule: 'Packs + freight + money tied up − what is left and will still be used.',
    steps: [
      step('Packs', 'packs', 'added'),
      step('Freight', 'freight', 'added'),
      step('Money tied up', 'capital', 'added'),
      step('Left, and still to be used', 'left', 'taken off'),
      entered('No plan can be below', shown(plan.bound), plan.proven ? 'so this one is proven' : 'the proven bound'),
    ],
  };
}

function habitWorking(plan: PurchasePlan, name: string | undefined): FoundWorking | null {
  if (name !== 'smallestPack' && name !== 'cheapestPerMl') return null;
  const cost = plan.habits[name];
  const how = name === 'smallestPack' ? 'the smallest pack' : 'the pack that is cheapest by the unit';
  return {
    title: `Always buying ${how}`,
    value: shown(cost),
    rule: `Each time something is needed that is not there, ${how} of it, as late as it still comes in time; packs + freight + money tied up − what is left, as for the plan.`,
    steps: [
      worked('This plan', shown(plan.cost.total), 'beside it', buyingAddress(plan, 'total')),
      entered(
        cost >= plan.cost.total ? 'The habit costs more' : 'The habit costs less',
        shown(Math.abs(cost - plan.cost.total)),
        'the difference',
      ),
    ],
  };
}

function orderWorking(plan: PurchasePlan, [number = '', figure, at = '']: string[]): FoundWorking | null {
  const order = /^\d+$/.test(number) ? plan.orders[Number(number)] : undefined;
  if (!order) return null;
  const name = orderName(order, plan);
  switch (figure) {
    case 'goods':
      return {
        title: `Goods from ${name}`,
        value: shown(order.goods),
        rule: 'The packs of the order, added up.',
        steps: lineSteps(plan, order, number),
      };
    case 'freight':
      return freightWorking(plan, order, number);
    case 'total':
      return {
        title: `The order from ${name}`,
        value: shown(order.goods + (order.freight ?? 0)),
        rule: 'Goods + freight. Freight that was never entered is not in it.',
        steps: (['goods', 'freight'] as const).map((what) =>
          worked(
            what === 'goods' ? 'Goods' : 'Freight',
            money(order[what], NEVER),
            'the order',
            buyingAddress(plan, 'order', number, what),
          ),
        ),
      };
    case 'line':
      return lineWorking(plan, order, at);
    default:
      return null;
  }
}

const lineSteps = (plan: PurchasePlan, order: Order, number: string): Step[] =>
  order.lines.map(({ offer, count: packs, cost }, at) =>
    worked(
      offer.product.name,
      shown(cost),
      `${packs} × ${offer.packText}`,
      buyingAddress(plan, 'order', number, 'line', at),
    ),
  );

function freightWorking(plan: PurchasePlan, order: Order, number: string): FoundWorking {
  const { freightPerOrder, freeFreightOver, name } = order.supplier;
  return {
    title: `Freight of the order from ${orderName(order, plan)}`,
    value: money(order.freight, NEVER),
    rule: 'What the supplier takes for an order; nothing from its free-freight value on.',
    steps: [
      worked('Goods', shown(order.goods), 'the order', buyingAddress(plan, 'order', number, 'goods')),
      entered('Freight of an order', money(freightPerOrder, NEVER), name),
      ...(freeFreightOver === null ? [] : [entered('No freight from', shown(freeFreightOver), name)]),
    ],
  };
}

function lineWorking(plan: PurchasePlan, order: Order, at: string): FoundWorking | null {
  const line = /^\d+$/.test(at) ? order.lines[Number(at)] : undefined;
  if (!line) return null;
  const { offer, count: packs, cost } = line;
  const { product } = offer;
  return {
    title: `${packs} × ${offer.packText} of ${product.name}`,
    value: shown(cost),
    rule: 'Packs × the price of one when so many are in the order.',
    steps: [
      entered('Packs', count(packs, 'packs'), `ordered ${showDay(dayOf(order), plan.today)}`),
      entered('One pack', shown(micros(cost) / packs), `${offer.supplier.name}, ${offer.packText}`),
      ...neededSteps(plan, product),
    ],
  };
}

/** What the product is bought for, as far as the shelf does not give it. */
function neededSteps({ parts }: PurchasePlan, product: Product): Step[] {
  const need = parts.find(({ part }) => part.need.product === product)?.part.need;
  if (!need) return [];
  const { form } = product;
  const toBuy = need.upTo[need.days.length] ?? 0;
  return [
    entered('Needed in these weeks', { kind: 'stock', amount: need.whole, form }, 'the sprayings planned'),
    entered(
      'Of it not on the shelf',
      { kind: 'ratio', value: toBuy / 1_000, unit: form === 'liquid' ? 'mL' : 'g' },
      'what is there and on order goes first',
    ),
  ];
}
