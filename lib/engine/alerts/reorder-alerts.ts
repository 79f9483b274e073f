import type { Plan, ProductAhead } from '../ahead/plan';
import { onOrderOf } from '../orders/on-order';
import { dayNear } from '../rules/in-words';
import { toEnterForProduct } from '../rules/to-enter';
import type { Product, Shop } from '../shop';
import { type Alert, keyOf } from './alert';

/**
 * Products that must be ordered within the week, or that run out while nobody can say when to order.
 *
 * Looks at  every product that runs out ahead, of which nothing is on its way
 * Fires     from the week of its order-by day on; at once when no offer tells how long it takes, and where nobody knows
 *           how much is needed
 * Once      for each delivery: the matter is another one when something of it has come
 */
export function reorderAlerts(plan: Plan): Alert[] {
  return plan.products.flatMap((ahead): Alert[] => {
    const { product, runsOutOn, reorder } = ahead;
    if (runsOutOn === null && ahead.unknownSince !== null) return [unknownNeed(plan, ahead)];
    if (runsOutOn === null || isOnItsWay(plan, product)) return [];
    if (reorder !== null && reorder.weeks > 0) return [];
    const isLate = reorder === null || reorder.by < plan.today;
    return [
      {
        key: keyOf('reorder', product.id, lastDelivery(plan.shop, product)),
        kind: 'reorder',
        severity: isLate ? 'warn' : 'note',
        sentence: sentenceOf(plan, ahead),
      },
    ];
  });
}

/** Nobody can say whether the product lasts. Told once: entering what is missing ends it. */
function unknownNeed(plan: Plan, ahead: ProductAhead): Alert {
  const { id, name } = ahead.product;
  const toEnter = toEnterForProduct(plan, ahead).map(({ words }) => words);
  return {
    key: keyOf('reorder', id, 'need not known'),
    ...{ kind: 'reorder', severity: 'note' },
    sentence: [`Nobody can say when ${name} runs out: how much of it is needed is not known.`, ...toEnter].join(' '),
  };
}

/** Whether something of it was ordered and is still expected. What is overdue may never come. */
const isOnItsWay = ({ shop, today }: Plan, product: Product): boolean =>
  onOrderOf(shop, today, product).some(({ isLate }) => !isLate);

/** The lot that came last; of two on one day, the one that the shop has later. */
function lastDelivery({ containers }: Shop, product: Product): string {
  let last: Shop['containers'][number] | null = null;
  for (const container of containers) {
    if (container.product !== product) continue;
    if (last === null || container.receivedOn >= last.receivedOn) last = container;
  }
  return last?.lot ?? '';
}

function sentenceOf(plan: Plan, { product, runsOutOn, reorder }: ProductAhead): string {
  const out = dayNear(plan, runsOutOn ?? plan.today);
  if (reorder === null) return `${product.name} runs out on ${out}, and no offer says how long it takes to come.`;
  const { by, offer } = reorder;
  const from = `The cheapest is ${offer.packText} from ${offer.supplier.name}.`;
  return by < plan.today
    ? `Order ${product.name} now: the last day for it was ${dayNear(plan, by)}, and it runs out on ${out}. ${from}`
    : `Order ${product.name} by ${dayNear(plan, by)}: it runs out on ${out}. ${from}`;
}
