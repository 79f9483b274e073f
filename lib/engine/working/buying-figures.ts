import { itemBoundOf } from '../buying/joint/item-bound';
import type { PurchasePlan } from '../buying/purchase-plan';
import { lateWorking } from './buying-late-figures';
import { orderWorking } from './buying-order-figures';
import { OF_PACKS, ofProductsWorking, ofProductWorking } from './buying-pack-figures';
import {
  buyingAddress,
  HABIT_WORDS,
  HABITS,
  type HabitName,
  habitWay,
  orderName,
  planWay,
  type Way,
  wayAddress,
} from './buying-way';
import { atLeast, entered, type FoundWorking, money, type Shown, sumShown, worked } from './shown';

/**
 * The working of a figure of a purchase plan: `packs`, `freight`, `capital`, `left`, `ofWhichWaste`, `total`;
 * `part/PRODUCT/capital`, `left` or `ofWhichWaste`; `order/N/goods`, `order/N/freight`, `order/N/total`,
 * `order/N/line/M`, `order/N/line/M/why/K`. The same of a habit, after `habit/NAME`, and `habit/NAME/more`. Beside them
 * `bound` and `saved`, and `late/PRODUCT/DAY`.
 */
export function buyingWorking(plan: PurchasePlan, path: string[]): FoundWorking | null {
  const [figure, ...rest] = path;
  switch (figure) {
    case 'habit':
      return habitWorking(plan, rest);
    case 'bound':
      return boundWorking(plan);
    case 'saved':
      return savedWorking(plan);
    case 'late':
      return lateWorking(plan, rest);
    default:
      return wayWorking(planWay(plan), path);
  }
}

const NEVER = 'The freight of this supplier was never entered.';
const shown = (amount: number) => ({ kind: 'money', micros: amount }) as const;

function wayWorking(way: Way, [figure, ...rest]: string[]): FoundWorking | null {
  switch (figure) {
    case 'packs':
      return sumOfOrders(
        way,
        'goods',
        'Packs to buy',
        'What all packs cost, with the price for as many as are in one order.',
      );
    case 'freight':
      return sumOfOrders(
        way,
        'freight',
        'Freight',
        'What every order costs by itself. Freight that was never entered is not in the sum.',
      );
    case 'capital':
    case 'left':
    case 'ofWhichWaste':
      return ofProductsWorking(way, figure);
    case 'part':
      return ofProductWorking(way, rest);
    case 'total':
      return totalWorking(way);
    case 'order':
      return orderWorking(way, rest);
    default:
      return null;
  }
}

function sumOfOrders(way: Way, what: 'goods' | 'freight', title: string, rule: string): FoundWorking {
  const { plan, orders, cost, named } = way;
  return {
    title: `${title}, ${plan.weeks} weeks${named}`,
    value: what === 'goods' ? { ...shown(cost.packs), ...atLeast(notPlanned(plan)) } : freightShown(orders),
    toEnter: what === 'goods' ? plan.toEnter : [],
    rule,
    steps: orders.map((order, number) =>
      worked(orderName(order, plan), money(order[what], NEVER), 'the order', wayAddress(way, 'order', number, what)),
    ),
  };
}

/** How many products are needed of which not all, or nothing, can be planned: nobody knows how much, or nobody offers them. */
const notPlanned = ({ unknown, unknowns }: PurchasePlan): number =>
  unknown.length + unknowns.filter(({ what }) => what === 'offer').length;

const freightShown = (orders: Way['orders']): Shown =>
  sumShown(
    orders.map(({ freight }) => freight),
    NEVER,
  );

const totalShown = (way: Way): Shown => ({
  ...shown(way.cost.total),
  ...atLeast(notPlanned(way.plan) + withoutFreight(way)),
});

const withoutFreight = ({ orders }: Way): number => orders.filter(({ freight }) => freight === null).length;

const SUMMED = 'Packs + freight + money tied up − what is left and will still be used.';

function totalWorking(way: Way): FoundWorking {
  const { plan, cost, named } = way;
  const step = (label: string, figure: 'capital' | 'left', from: string) =>
    worked(label, shown(cost[figure]), from, wayAddress(way, figure));
  return {
    title: `What buying for ${plan.weeks} weeks comes to${named}`,
    value: totalShown(way),
    toEnter: plan.toEnter,
    rule: SUMMED,
    steps: [
      worked('Packs', { ...shown(cost.packs), ...atLeast(notPlanned(plan)) }, 'added', wayAddress(way, 'packs')),
      worked('Freight', freightShown(way.orders), 'added', wayAddress(way, 'freight')),
      step(OF_PACKS.capital.title, 'capital', 'added'),
      step(OF_PACKS.left.title, 'left', 'taken off'),
    ],
  };
}

const isHabit = (name: string | undefined): name is HabitName => HABITS.some((habit) => habit === name);

function habitWorking(plan: PurchasePlan, [name, ...rest]: string[]): FoundWorking | null {
  if (!isHabit(name)) return null;
  if (rest[0] === 'more') return moreWorking(plan, name);
  const way = habitWay(plan, name);
  if (rest.length > 0) return wayWorking(way, rest);
  const found = totalWorking(way);
  const rule = `Each time something is needed that is not there, ${HABIT_WORDS[name]} of it, as late as it still comes in time. ${SUMMED}`;
  const dies = worked(
    OF_PACKS.ofWhichWaste.title,
    shown(way.cost.ofWhichWaste),
    'inside the packs',
    wayAddress(way, 'ofWhichWaste'),
  );
  return { ...found, rule, steps: [...found.steps, dies] };
}

function moreWorking(plan: PurchasePlan, name: HabitName): FoundWorking {
  return {
    title: `What always buying ${HABIT_WORDS[name]} costs beyond this plan`,
    value: shown(plan.habits[name] - plan.cost.total),
    rule: 'What the habit comes to − what this plan comes to. Both count in the same way.',
    steps: [
      worked('The habit', totalShown(habitWay(plan, name)), 'from it', buyingAddress(plan, 'habit', name)),
      worked('This plan', totalShown(planWay(plan)), 'taken off', buyingAddress(plan, 'total')),
    ],
  };
}

const floors = new WeakMap<PurchasePlan, number[]>();

/** What each product comes to at least, whatever its orders cost and however many packs lower a price. */
function floorsOf(plan: PurchasePlan): number[] {
  const known = floors.get(plan) ?? plan.parts.map(({ part }) => itemBoundOf(part, plan.horizon).least);
  floors.set(plan, known);
  return known;
}

/** What no plan can be below, and how that is known. Shown without its steps' work until somebody opens it. */
export const boundShown = ({ bound, proven, cost }: PurchasePlan): Shown => shown(proven ? cost.total : bound);

function boundWorking(plan: PurchasePlan): FoundWorking {
  const least = floorsOf(plan);
  const value = plan.proven ? plan.cost.total : plan.bound;
  const orders = value - least.reduce((total, one) => total + one, 0);
  return {
    title: `What no plan for ${plan.weeks} weeks can be below`,
    value: boundShown(plan),
    rule: 'Each product has a cheapest way through these weeks by itself, as if its orders cost nothing and each pack had the lowest price that any number of packs brings. No plan can do with less. To that comes what the search has proven that orders cost at least. It is a limit: whether a plan can reach it, only the search can tell.',
    steps: [
      ...plan.parts.map(({ part }, at) => entered(part.need.product.name, shown(least[at] ?? 0), 'by itself, added')),
      entered(
        orders < 0 ? 'Of that not proven for all together' : 'What orders cost at least',
        shown(orders),
        'by the search, added',
      ),
    ],
  };
}

function savedWorking(plan: PurchasePlan): FoundWorking {
  const { cost, bound, proven, gap } = plan;
  const left = proven ? 0 : Math.max(0, cost.total - bound);
  return {
    title: 'What could still be saved at most',
    value: shown(left),
    rule: proven
      ? 'Nothing: the search has proven that no plan is cheaper. Estimates within a tenth of a cent count as alike.'
      : 'What this plan comes to − what no plan can be below. The best plan lies somewhere between the two, and may well be this one.',
    steps: [
      worked('This plan', totalShown(planWay(plan)), 'from it', buyingAddress(plan, 'total')),
      worked('No plan can be below', boundShown(plan), 'taken off', buyingAddress(plan, 'bound')),
      entered('As a part of this plan', { kind: 'ratio', value: proven ? 0 : gap * 100, unit: '%' }, 'the gap'),
    ],
  };
}
