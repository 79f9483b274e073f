import { micros, stock } from '@/shared/quantity/amounts';
import { dayFromNumber } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { toBuy } from '../buying/need';
import type { Order, OrderLine } from '../buying/orders';
import { counted } from '../rules/in-words';
import type { Product } from '../shop';
import { orderName, packsOfLine, packWords, type Way, wayAddress } from './buying-way';
import { whyWorking } from './buying-why-figures';
import { amountWords } from './buying-words';
import { atLeast, count, entered, type FoundWorking, money, type Step, worked } from './shown';

const NEVER = 'The freight of this supplier was never entered.';
const shown = (amount: number) => ({ kind: 'money', micros: amount }) as const;

/** The working of a figure of one order: `N/goods`, `N/freight`, `N/total`, `N/line/M` or `N/line/M/why/K`. */
export function orderWorking(way: Way, [number = '', figure, at = '', ...rest]: string[]): FoundWorking | null {
  const order = itemAt(way.orders, number);
  if (!order) return null;
  switch (figure) {
    case 'goods':
      return goodsWorking(way, order, number);
    case 'freight':
      return freightWorking(way, order, number);
    case 'total':
      return totalWorking(way, order, number);
    case 'line':
      return lineOrWhy(way, order, at, rest);
    default:
      return null;
  }
}

const itemAt = <T>(items: readonly T[], at: string): T | undefined =>
  /^\d{1,6}$/.test(at) ? items[Number(at)] : undefined;

function lineOrWhy(way: Way, order: Order, at: string, [word, number = '']: string[]): FoundWorking | null {
  const line = itemAt(order.lines, at);
  if (!line) return null;
  if (word === undefined) return lineWorking(way, order, line);
  return word === 'why' ? whyWorking(way, order, line, number) : null;
}

function goodsWorking(way: Way, order: Order, number: string): FoundWorking {
  return {
    title: `Goods from ${orderName(order, way.plan)}${way.named}`,
    value: shown(order.goods),
    rule: 'The packs of the order, added up.',
    steps: order.lines.map(({ offer, count: packs, cost }, at) =>
      worked(
        offer.product.name,
        shown(cost),
        `${packs} × ${offer.packText}`,
        wayAddress(way, 'order', number, 'line', at),
      ),
    ),
  };
}

function totalWorking(way: Way, order: Order, number: string): FoundWorking {
  const step = (what: 'goods' | 'freight') =>
    worked(
      what === 'goods' ? 'Goods' : 'Freight',
      money(order[what], NEVER),
      'the order',
      wayAddress(way, 'order', number, what),
    );
  return {
    title: `The order from ${orderName(order, way.plan)}${way.named}`,
    value: { ...shown(order.goods + (order.freight ?? 0)), ...atLeast(order.freight === null ? 1 : 0) },
    rule: 'Goods + freight. Freight that was never entered is not in it.',
    steps: [step('goods'), step('freight')],
  };
}

function freightWorking(way: Way, order: Order, number: string): FoundWorking {
  const { freightPerOrder, freeFreightOver, name } = order.supplier;
  return {
    title: `Freight of the order from ${orderName(order, way.plan)}${way.named}`,
    value: money(order.freight, NEVER),
    rule: 'What the supplier takes for an order; nothing from its free-freight value on.',
    steps: [
      worked('Goods', shown(order.goods), 'the order', wayAddress(way, 'order', number, 'goods')),
      entered('Freight of an order', money(freightPerOrder, NEVER), name),
      ...(freeFreightOver === null ? [] : [entered('No freight from', shown(freeFreightOver), name)]),
    ],
  };
}

function lineWorking(way: Way, order: Order, line: OrderLine): FoundWorking {
  const { offer, count: packs, cost } = line;
  const { product } = offer;
  return {
    title: `${packs} × ${offer.packText} of ${product.name}${way.named}`,
    value: shown(cost),
    rule: 'Packs × the price of one when so many are in the order.',
    steps: [
      entered('Packs', count(packs, 'packs'), `ordered ${showDay(dayFromNumber(order.on), way.plan.today)}`),
      entered('One pack', shown(micros(cost) / packs), `${offer.supplier.name}, ${offer.packText}`),
      ...arrivalSteps(way, order, line),
      ...packSteps(way, order, line),
      ...neededSteps(way, product),
    ],
  };
}

/** When the packs are there, and how long before the first of them is opened that has to be. */
function arrivalSteps(way: Way, order: Order, line: OrderLine): Step[] {
  const [first] = packsOfLine(way, order, line);
  if (!first) return [];
  const { leadDays } = line.offer;
  const lead =
    leadDays === null
      ? 'delivery time not known, counted as none'
      : `${counted(leadDays, 'working day')} after the order`;
  const { safetyDays } = way.plan.horizon;
  return [
    entered(
      'There on',
      { kind: 'day', day: dayFromNumber(first.arrivesOn) },
      `${lead}; at least ${counted(safetyDays, 'safety day')} before it is opened, where that can still be`,
    ),
  ];
}

const packSteps = (way: Way, order: Order, line: OrderLine): Step[] =>
  packsOfLine(way, order, line).map((pack, at, all) => {
    const { form } = line.offer.product;
    const left = pack.use.left === 0 ? '' : `, ${amountWords(way.plan, pack.use.left, { form })} left`;
    return entered(
      all.length === 1 ? 'Used of it' : `Used of pack ${at + 1}`,
      { kind: 'stock', amount: stock(pack.use.to - pack.from), form },
      `${packWords(pack, way.plan)}${left}`,
    );
  });

/** What the product is bought for, as far as the shelf does not give it. */
function neededSteps({ parts }: Way, { id, form }: Product): Step[] {
  const need = parts.find(({ part }) => part.need.product.id === id)?.part.need;
  if (!need) return [];
  return [
    entered('Needed in these weeks', { kind: 'stock', amount: need.whole, form }, 'the sprayings planned'),
    entered(
      'Of it not on the shelf',
      { kind: 'stock', amount: stock(toBuy(need)), form },
      'what is there and on order goes first',
    ),
  ];
}
