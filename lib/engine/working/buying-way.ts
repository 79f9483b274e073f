import { dayFromNumber } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { cheapestPerMl, followPolicy, type Part, smallestPack } from '../buying/baseline-policy';
import { type Purchase, purchaseOf, type UsedPack } from '../buying/bought';
import { type Order, type OrderLine, ordersOf, type PlanCost, planCostOf } from '../buying/orders';
import type { PurchasePlan } from '../buying/purchase-plan';
import { figureAddress } from './shown';

/** One way of buying for the weeks of a plan: the plan's own, or a habit's. The figures of all are worked out alike. */
export type Way = {
  plan: PurchasePlan;
  /** Where its figures stand among those of the plan. */
  under: string[];
  /** What it is called in a title: nothing for the plan itself. */
  named: string;
  parts: { part: Part; purchase: Purchase }[];
  orders: Order[];
  cost: PlanCost;
};

export const HABITS = ['smallestPack', 'cheapestPerMl'] as const;
export type HabitName = (typeof HABITS)[number];

const HABIT_OF = { smallestPack, cheapestPerMl };

export const HABIT_WORDS: Record<HabitName, string> = {
  smallestPack: 'the smallest pack',
  cheapestPerMl: 'the pack that is cheapest by the unit',
};

/** The address of a figure of a purchase plan, which is told apart by its weeks. */
export const buyingAddress = ({ weeks }: Pick<PurchasePlan, 'weeks'>, ...path: (string | number)[]): string =>
  figureAddress('buying', weeks, ...path);

/** The address of a figure of one way of buying. */
export const wayAddress = ({ plan, under }: Way, ...path: (string | number)[]): string =>
  buyingAddress(plan, ...under, ...path);

export const planWay = (plan: PurchasePlan): Way => {
  const { parts, orders, cost } = plan;
  return { plan, under: [], named: '', parts, orders, cost };
};

const habits = new WeakMap<PurchasePlan, Partial<Record<HabitName, Way>>>();

/** What always buying one kind of pack comes to, with every order and pack of it: bought again as the plan has it. */
export function habitWay(plan: PurchasePlan, name: HabitName): Way {
  const known = habits.get(plan) ?? {};
  const way = known[name] ?? madeWay(plan, name);
  habits.set(plan, { ...known, [name]: way });
  return way;
}

function madeWay(plan: PurchasePlan, name: HabitName): Way {
  const offered = plan.parts.map(({ part }) => part);
  const bought = followPolicy(offered, HABIT_OF[name], plan.horizon);
  const parts = offered.map((part, at) => ({ part, purchase: purchaseOf(part.need, plan.horizon, bought[at] ?? []) }));
  const purchases = parts.map(({ purchase }) => purchase);
  const orders = ordersOf(purchases);
  const cost = planCostOf(purchases, orders);
  return { plan, under: ['habit', name], named: `, always buying ${HABIT_WORDS[name]}`, parts, orders, cost };
}

/** An order as people tell it apart: of whom, and when. */
export const orderName = ({ supplier, on }: Order, { today }: PurchasePlan): string =>
  `${supplier.name}, ${showDay(dayFromNumber(on), today)}`;

/** The packs of one line of an order, in the order they are used. */
export const packsOfLine = ({ parts }: Way, { on }: Order, { offer }: OrderLine): UsedPack[] =>
  parts
    .filter(({ part }) => part.need.product === offer.product)
    .flatMap(({ purchase }) => purchase.packs)
    .filter((one) => one.pack.offer === offer && one.orderOn === on);

/** When a pack is opened, and until when it serves. */
export function packWords({ openedOn, use }: UsedPack, { today, horizon }: PurchasePlan): string {
  const day = (number: number) => showDay(dayFromNumber(number), today);
  if (openedOn === null) return 'still shut when these weeks end';
  const end = use.lastDay < horizon.end ? `, no longer usable after ${day(use.lastDay)}` : '';
  return `opened ${day(openedOn)}${end}`;
}
