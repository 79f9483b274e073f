import { type OrderSums, orderSums } from '@/shared/measure/order-sums';
import { type Micros, micros } from '@/shared/quantity/amounts';
import { showDay } from '@/shared/time/show-day';
import type { Plan } from '../ahead/plan';
import { expectedDay } from '../orders/on-order';
import type { Order } from '../shop';
import { count, entered, type FoundWorking, figureAddress, money, type Step, text, worked } from './shown';

const NO_PRICE = 'Nobody noted what it was to cost.';
const NO_FREIGHT = 'Nobody entered what this supplier takes for freight.';
const MAY_BE_FREE = 'One of its lines has no price, so nobody can say whether freight is free.';
const MISSING = 'What the supplier asks for − goods; nothing once it is reached.';
const NO_DAY = 'No day was noted, and not every offer says how long it takes.';

/** What an order comes to, as it was written. */
const sumsOf = ({ lines, supplier, freight }: Order): OrderSums => orderSums(lines, supplier, freight);

/**
 * The working of one figure of an order: `ID/goods`, `ID/freight`, `ID/total`, `ID/toMinimum`, `ID/toFreeFreight`,
 * `ID/expectedOn` or as `linePath` has it.
 */
export function orderWorking({ shop, today }: Plan, [id, figure, offer, which]: string[]): FoundWorking | null {
  const order = shop.orders.find((one) => one.id === id);
  if (!order) return null;
  switch (figure) {
    case 'line':
      return lineWorking(order, offer, which);
    case 'goods':
      return goodsWorking(order);
    case 'freight':
      return freightWorking(order);
    case 'total':
      return totalWorking(order);
    case 'toMinimum':
      return toMinimumWorking(order);
    case 'toFreeFreight':
      return toFreeFreightWorking(order);
    case 'expectedOn':
      return expectedWorking(order, today);
    default:
      return null;
  }
}

const costOf = ({ count, price }: Order['lines'][number]): Micros | null =>
  price === null ? null : micros(price * count);

/** Where the working of one line stands: `order/ID/line/OFFER`, and `order/ID/line/OFFER/1` for a second one of that offer. */
export function linePath({ id, lines }: Order, line: Order['lines'][number]): (string | number)[] {
  const which = lines.filter(({ offer }) => offer === line.offer).indexOf(line);
  return ['order', id, 'line', line.offer.id, ...(which > 0 ? [which] : [])];
}

function lineWorking(order: Order, offer: string | undefined, which = '0'): FoundWorking | null {
  const line = order.lines.filter((one) => one.offer.id === offer)[Number(which)];
  if (!line) return null;
  return {
    title: `${line.offer.product.name}, ${line.offer.packText}, on this order`,
    value: money(costOf(line), NO_PRICE),
    rule: 'Packs × what one of them was to cost.',
    steps: [
      entered('Packs', count(line.count, 'packs'), 'the order'),
      entered('One pack', money(line.price, NO_PRICE), 'the order, as it was quoted'),
    ],
  };
}

function goodsWorking(order: Order): FoundWorking {
  const { goods, unpriced } = sumsOf(order);
  return {
    title: `Goods ordered from ${order.supplier.name}`,
    value: money(goods, unpricedText(unpriced)),
    rule: 'The lines of the order, added up.',
    steps: order.lines.map((line) =>
      worked(
        `${line.offer.product.name}, ${line.offer.packText}`,
        money(costOf(line), NO_PRICE),
        'the order',
        figureAddress(...linePath(order, line)),
      ),
    ),
  };
}

const unpricedText = (unpriced: number): string =>
  unpriced === 1 ? 'One of its lines has no price.' : `${unpriced} of its lines have no price.`;

const goodsStep = (order: Order): Step =>
  worked('Goods', goodsWorking(order).value, 'the order', figureAddress('order', order.id, 'goods'));

function freightWorking(order: Order): FoundWorking {
  const { freight } = sumsOf(order);
  const { supplier } = order;
  const title = `Freight of the order from ${supplier.name}`;
  if (order.freight !== null) {
    const value = money(freight, NO_FREIGHT);
    return { title, value, rule: 'As it was entered with the order.', steps: [entered('Freight', value, 'the order')] };
  }
  return {
    title,
    value: money(freight, supplier.freightPerOrder === null ? NO_FREIGHT : MAY_BE_FREE),
    rule: 'What the supplier takes for one order; nothing from its free-freight value on.',
    steps: [
      entered('One order', money(supplier.freightPerOrder, NO_FREIGHT), supplier.name),
      entered('No freight from', money(supplier.freeFreightOver, 'It is always paid.'), supplier.name),
      goodsStep(order),
    ],
  };
}

function totalWorking(order: Order): FoundWorking {
  const { total, unpriced } = sumsOf(order);
  return {
    title: `The order from ${order.supplier.name} in all`,
    value: money(total, unpriced > 0 ? unpricedText(unpriced) : NO_FREIGHT),
    rule: 'Goods and freight.',
    steps: [
      goodsStep(order),
      worked('Freight', freightWorking(order).value, order.supplier.name, figureAddress('order', order.id, 'freight')),
    ],
  };
}

function toMinimumWorking(order: Order): FoundWorking {
  const { supplier } = order;
  const { toMinimum, unpriced } = sumsOf(order);
  const title = `What is missing to the smallest order that ${supplier.name} takes`;
  if (supplier.minimumOrder === null) {
    const value = { kind: 'unknown', because: 'Nobody entered the smallest order that they take.' } as const;
    return { title, value, rule: MISSING, steps: [goodsStep(order)] };
  }
  return {
    ...{ title, value: money(toMinimum, unpricedText(unpriced)), rule: MISSING },
    steps: [entered('Smallest order', money(supplier.minimumOrder, ''), supplier.name), goodsStep(order)],
  };
}

function toFreeFreightWorking(order: Order): FoundWorking {
  const { supplier } = order;
  const { toFreeFreight, unpriced } = sumsOf(order);
  const title = `What is missing to free freight from ${supplier.name}`;
  if (supplier.freeFreightOver === null) {
    return { title, value: text('freight is always paid'), rule: MISSING, steps: [goodsStep(order)] };
  }
  return {
    ...{ title, value: money(toFreeFreight, unpricedText(unpriced)), rule: MISSING },
    steps: [entered('No freight from', money(supplier.freeFreightOver, ''), supplier.name), goodsStep(order)],
  };
}

function expectedWorking(order: Order, today: Plan['today']): FoundWorking {
  const expected = expectedDay(order);
  const placed = entered('Ordered', { kind: 'day', day: order.placedOn }, order.supplier.name);
  return {
    title: `When the order from ${order.supplier.name} is expected`,
    value: expected === null ? { kind: 'unknown', because: NO_DAY } : { kind: 'day', day: expected },
    rule:
      order.expectedOn === null
        ? 'The longest delivery time of its lines, in the working days of the supplier, from the day it was ordered.'
        : 'As it was noted with the order.',
    steps:
      order.expectedOn === null
        ? [placed, ...order.lines.map((line) => leadStep(line, order))]
        : [placed, entered('Noted', { kind: 'day', day: order.expectedOn }, `today is ${showDay(today)}`)],
  };
}

const leadStep = ({ offer }: Order['lines'][number], { supplier }: Order): Step =>
  entered(
    `${offer.product.name}, ${offer.packText}`,
    offer.leadDays === null ? text('not known') : count(offer.leadDays, 'working days'),
    supplier.name,
  );
