import { sum } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Plan, ProductAhead } from '../ahead/plan';
import { type Delivery, leadLearned } from '../orders/lead-learned';
import { type OnOrder, onOrderOf } from '../orders/on-order';
import { stillRunsOut } from '../orders/still-runs-out';
import type { Product } from '../shop';
import { count, entered, type FoundWorking, figureAddress, type Step, text, worked } from './shown';
import { runsOutShown } from './unknown-need-figures';

/** The working of what of a product is on order: `product/ID/onOrder` or `product/ID/expectedOn`. */
export function onOrderWorking(
  { shop, today }: Plan,
  product: Product,
  figure: 'onOrder' | 'expectedOn',
): FoundWorking {
  const lines = onOrderOf(shop, today, product);
  if (figure === 'onOrder') {
    return {
      title: `${product.name} on order`,
      value:
        lines.length === 0
          ? text('nothing')
          : { kind: 'stock', amount: sum(lines.map(({ amount }) => amount)), form: product.form },
      rule: 'The packs of every open order that have not come yet. The weeks ahead count only what is on the shelf.',
      steps: lines.map((line) =>
        entered(`${packs(line)} of ${line.offer.packText}`, stockOf(line, product), orderWords(line, today)),
      ),
    };
  }
  const [first] = lines;
  return {
    title: `When ${product.name} is expected`,
    value: !first
      ? text('nothing is on order')
      : first.expectedOn === null
        ? { kind: 'unknown', because: 'No day was noted with the order, and its delivery time is not known.' }
        : { kind: 'day', day: first.expectedOn },
    rule: 'The first of the days on which something of it is expected.',
    steps: lines.map(dayStep),
  };
}

/** The working of `product/ID/stillRunsOutOn`: when a product runs out although something of it is on order. */
export function stillRunsOutWorking(plan: Plan, ahead: ProductAhead): FoundWorking {
  const { product, usable, runsOutOn, unknownSince } = ahead;
  const dayOrNone = (day: Day | null) => runsOutShown(plan, { runsOutOn: day, unknownSince });
  const lines = onOrderOf(plan.shop, plan.today, product);
  const day = stillRunsOut(plan).get(product);
  const at = (what: string) => figureAddress('product', product.id, what);
  return {
    title: `When ${product.name} runs out, with what is on order`,
    value: day === undefined ? text('nothing is on order') : dayOrNone(day),
    rule: 'The first day whose sprayings cannot be met in full from usable bottles, with what is on order among them from the day it is expected; what is late, from the next working day of its supplier on; what has no day, never.',
    steps: [
      worked('Usable today', { kind: 'stock', amount: usable, form: product.form }, 'the shelf', at('usable')),
      ...lines.map(dayStep),
      worked('Without it', dayOrNone(runsOutOn), 'the weeks ahead', at('runsOutOn')),
    ],
  };
}

const packs = ({ packs }: OnOrder): string => `${packs} ${packs === 1 ? 'pack' : 'packs'}`;

const stockOf = ({ amount }: OnOrder, { form }: Product) => ({ kind: 'stock', amount, form }) as const;

const orderWords = ({ order, expectedOn, isLate }: OnOrder, today: Plan['today']): string =>
  `ordered from ${order.supplier.name} on ${showDay(order.placedOn, today)}${isLate && expectedOn ? `, late since ${showDay(expectedOn, today)}` : ''}`;

const dayStep = (line: OnOrder): Step =>
  worked(
    `${packs(line)} of ${line.offer.packText}`,
    line.expectedOn === null
      ? { kind: 'unknown', because: 'Nobody knows when.' }
      : { kind: 'day', day: line.expectedOn },
    `the order from ${line.order.supplier.name}`,
    figureAddress('order', line.order.id, 'expectedOn'),
  );

/** The working of how long a supplier really takes: `supplier/ID/median` or `supplier/ID/worst`. */
export function leadWorking({ shop, today }: Plan, [id, figure]: string[]): FoundWorking | null {
  const supplier = shop.suppliers.find((one) => one.id === id);
  if (!supplier || (figure !== 'median' && figure !== 'worst')) return null;
  const learned = leadLearned(shop, supplier);
  return {
    title: `How long ${supplier.name} takes, ${figure === 'median' ? 'as a rule' : 'at worst'}`,
    value: learned
      ? count(learned[figure], 'working days')
      : { kind: 'unknown', because: 'Nothing of any order has come yet.' },
    rule:
      figure === 'median'
        ? 'From order to arrival in working days of the supplier: the middle one of all deliveries, and of two in the middle the longer. What has not come yet is not in it.'
        : 'From order to arrival in working days of the supplier: the longest of all deliveries. What has not come yet is not in it.',
    steps: (learned?.deliveries ?? []).map((delivery) => deliveryStep(delivery, today)),
  };
}

const deliveryStep = ({ order, cameOn, lead, daysLate }: Delivery, today: Plan['today']): Step =>
  entered(
    `Ordered ${showDay(order.placedOn, today)}, came ${showDay(cameOn, today)}`,
    count(lead, 'working days'),
    lateWords(daysLate),
  );

function lateWords(daysLate: number | null): string {
  if (daysLate === null) return 'no day was expected';
  if (daysLate === 0) return 'on the day it was expected';
  const days = Math.abs(daysLate);
  return `${days} ${days === 1 ? 'day' : 'days'} ${daysLate > 0 ? 'after' : 'before'} the day it was expected`;
}
