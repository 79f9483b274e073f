import 'server-only';
import { PLAN_WEEKS } from '@/shared/forms/purchase-plan';
import { showMoney } from '@/shared/measure/show';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type Day, dayFromNumber } from '@/shared/time/day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import type { Assumed } from '../engine/buying/assumed';
import type { Order } from '../engine/buying/orders';
import type { PurchasePlan } from '../engine/buying/purchase-plan';
import { whyInWords } from '../engine/buying/why-in-words';
import { type ToEnter, toEnterForOffer } from '../engine/rules/to-enter';
import { boundShown, buyingWorking } from '../engine/working/buying-figures';
import { buyingAddress, HABITS, type HabitName } from '../engine/working/buying-way';
import { explainedIn, reasonShown } from '../engine/working/buying-why-figures';
import type { Fig } from './figures';
import { goodsOf } from './goods';
import { type HereNow, shopNow } from './house';
import { offerHref } from './offers-shown';
import { beginPlan, type PlanState, planAtOnce, planRun, planState, stopPlan } from './plan-runs';

const USUAL_WEEKS = 52;

export const weeksAsked = (text: string | undefined): number =>
  PLAN_WEEKS.find((weeks) => String(weeks) === text) ?? USUAL_WEEKS;

export type PlannedLine = {
  offer: string;
  product: string;
  href: string;
  pack: string;
  count: number;
  cost: Fig;
  why: Why[];
};

/** A reason why a line is so: a sentence, and the figure in it where it has one. */
export type Why = { words: string; figure: Fig | null };

/** What no order comes in time for: on a day; or of what nobody offers, from a day on. */
type LateSeen = { product: string; on: Day; amount: Fig };

export type PlannedOrder = {
  key: string;
  supplier: { id: string; name: string };
  on: Day;
  isToday: boolean;
  lines: PlannedLine[];
  goods: Fig;
  freight: Fig;
  total: Fig;
  /** Where the order is written, with these lines in it. */
  href: string;
};

export type PlanScreen = Pick<HereNow, 'today' | 'ways'> & {
  shopId: string;
  weeks: number;
  formId: string;
  state: PlanState;
  /** Whether what is shown is the search's own plan, or what stands there until it was made. */
  isSearched: boolean;
  orders: PlannedOrder[];
  late: LateSeen[];
  /** What is short of products that nobody offers, in all, so that it is in no order. */
  unoffered: LateSeen[];
  cost: { packs: Fig; freight: Fig; capital: Fig; left: Fig; total: Fig; ofWhichWaste: Fig };
  habits: { name: string; cost: Fig; more: Fig; isDearer: boolean }[];
  /** What no plan can be below, and so what could still be saved at most; nothing once this one is proven. */
  proof: { isProven: boolean; bound: Fig; saved: Fig };
  /** What nobody knows and so is not planned: of which products, and what to enter. */
  unknown: { names: string[]; toEnter: readonly ToEnter[] };
  /** What nobody offers. */
  unsold: ToEnter[];
  /** What nobody entered and the plan takes for granted. */
  assumed: Assumed[];
};

/** What to buy, when and from whom: the plan that the search has made, or the exact one of each product by itself. */
export async function planScreen(clock: Clock, weeks: number): Promise<PlanScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const key = { shop: here.id, today: here.today, weeks };
  const run = await planRun(key, clock);
  const plan = run?.plan ?? (await planAtOnce(key, here.shop));
  const figure = figuresOfPlan(plan);
  return {
    ...{ shopId: here.id, today: here.today, ways: here.ways, weeks, formId: newCommandId() },
    ...{ state: planState(run, clock), isSearched: run?.plan != null },
    orders: plan.orders.map((order, number) => orderSeen(plan, order, number)),
    late: plan.late.filter(isOfferedIn(plan)).map((late) => lateSeen(plan, late)),
    unoffered: unofferedIn(plan),
    cost: {
      ...{ packs: figure('packs'), freight: figure('freight'), capital: figure('capital'), left: figure('left') },
      ...{ total: figure('total'), ofWhichWaste: figure('ofWhichWaste') },
    },
    habits: HABITS.map((habit) => habitSeen(plan, habit)),
    proof: {
      isProven: plan.proven,
      bound: { at: buyingAddress(plan, 'bound'), value: boundShown(plan) },
      saved: figure('saved'),
    },
    unknown: { names: plan.unknown.map(({ name }) => name), toEnter: plan.toEnter },
    unsold: plan.unknowns.flatMap((one) => (one.what === 'offer' ? toEnterForOffer(one.product) : [])),
    assumed: plan.assumed,
  };
}

/** The plan that the search has made of a shop as it stands, or until then each product's own. */
export async function planShown(here: Pick<HereNow, 'id' | 'shop' | 'today'>, weeks: number): Promise<PurchasePlan> {
  const key = { shop: here.id, today: here.today, weeks };
  return (await planRun(key))?.plan ?? planAtOnce(key, here.shop);
}

type SearchAsked = { shop: string; weeks: number };

const noShop = (id: string) => refuse({ code: 'not-found', what: 'shop', id });

/** Look for the best plan of a shop as it stands, unless that is under way or done. Refuses 'not-found'. */
export async function beginSearch(
  { shop, weeks, seconds }: SearchAsked & { seconds: number },
  clock: Clock,
): Promise<Outcome<PlanState>> {
  const goods = await goodsOf(clock, shop);
  if (!goods) return noShop(shop);
  return accept(planState(await beginPlan({ shop, today: goods.today, weeks }, seconds, clock), clock));
}

/** Be content with what the search has found so far. Refuses 'not-found'. */
export async function stopSearch({ shop, weeks }: SearchAsked, clock: Clock): Promise<Outcome<PlanState>> {
  const goods = await goodsOf(clock, shop);
  if (!goods) return noShop(shop);
  const run = await planRun({ shop, today: goods.today, weeks }, clock);
  if (run) await stopPlan(run);
  return accept(planState(run, clock));
}

/** What a search is at, in words. */
export type PlanProgress = { state: PlanState; words: string };

/** How far the search is. Refuses 'not-found'. */
export async function planProgress({ shop, weeks }: SearchAsked, clock: Clock): Promise<Outcome<PlanProgress>> {
  const goods = await goodsOf(clock, shop);
  if (!goods) return noShop(shop);
  const state = planState(await planRun({ shop, today: goods.today, weeks }, clock), clock);
  return accept({ state, words: progressWords(state, goods.file.shop.currency) });
}

function progressWords(state: PlanState, currency: string): string {
  if (state.kind !== 'running') return '';
  if (state.isStopped) return 'Stopping, with the best plan found so far.';
  if (!state.progress) return 'Looking at each product by itself first.';
  const { best, bound } = state.progress;
  const saved = showMoney(Math.max(0, best - bound), currency);
  return `The best so far comes to ${showMoney(best, currency)}. None can be below ${showMoney(bound, currency)}, so at most ${saved} could still be saved.`;
}

const figuresOfPlan =
  (plan: PurchasePlan) =>
  (...path: (string | number)[]): Fig => {
    const working = buyingWorking(plan, path.map(String));
    if (!working) throw new RangeError(`purchase plan: nothing stands behind "${path.join('/')}"`);
    return { at: buyingAddress(plan, ...path), value: working.value };
  };

function orderSeen(plan: PurchasePlan, order: Order, number: number): PlannedOrder {
  const figure = figuresOfPlan(plan);
  const { supplier, lines } = order;
  const on = dayFromNumber(order.on);
  const fields = lines.flatMap(({ offer, count }, row) => [
    [`lines[${row}].offer`, offer.id],
    [`lines[${row}].count`, String(count)],
  ]);
  return {
    key: `${supplier.id} ${on}`,
    supplier: { id: supplier.id, name: supplier.name },
    ...{ on, isToday: on === plan.today },
    lines: lines.map((line, at) => ({
      ...{ offer: line.offer.id, product: line.offer.product.name, href: offerHref(line.offer) },
      ...{ pack: line.offer.packText, count: line.count, cost: figure('order', number, 'line', at) },
      why: whySeen(plan, order, number, at),
    })),
    ...{ goods: figure('order', number, 'goods'), freight: figure('order', number, 'freight') },
    total: figure('order', number, 'total'),
    href: `/buy/orders/new?${new URLSearchParams([['supplier', supplier.id], ['placedOn', on], ...fields])}`,
  };
}

/** Why a line of an order is as it is, a sentence for each reason. */
function whySeen(plan: PurchasePlan, order: Order, number: number, at: number): Why[] {
  const found = explainedIn(plan).find((one) => one.order === order && one.line === order.lines[at]);
  return (found?.reasons ?? []).map((reason, place) => ({
    words: found ? whyInWords(found, reason, plan.today, plan.shop.currency) : '',
    figure: reasonShown(reason, order) && figuresOfPlan(plan)('order', number, 'line', at, 'why', place),
  }));
}

type Late = PurchasePlan['late'][number];

const isOfferedIn =
  ({ parts }: PurchasePlan) =>
  ({ product }: Late): boolean =>
    parts.some(({ part }) => part.need.product === product);

const lateSeen = (plan: PurchasePlan, { product, on }: Late): LateSeen => ({
  ...{ product: product.name, on, amount: figuresOfPlan(plan)('late', product.id, on) },
});

/** The first day of each product that nobody offers, with all that is short of it. */
function unofferedIn(plan: PurchasePlan): LateSeen[] {
  const short = plan.late.filter((late) => !isOfferedIn(plan)(late));
  const firsts = short.filter(({ product }, at) => short.findIndex((one) => one.product === product) === at);
  return firsts.map(({ product, on }) => ({
    ...{ product: product.name, on, amount: figuresOfPlan(plan)('late', product.id) },
  }));
}

const HABIT_NAMES: Record<HabitName, string> = {
  smallestPack: 'Always the smallest pack',
  cheapestPerMl: 'Always the cheapest by the unit',
};

function habitSeen(plan: PurchasePlan, habit: HabitName): PlanScreen['habits'][number] {
  const figure = figuresOfPlan(plan);
  return {
    ...{ name: HABIT_NAMES[habit], cost: figure('habit', habit), more: figure('habit', habit, 'more') },
    isDearer: plan.habits[habit] > plan.cost.total,
  };
}
