import 'server-only';
import { PLAN_WEEKS } from '@/shared/forms/purchase-plan';
import { showMoney, showRough, showStock } from '@/shared/measure/show';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type Day, dayFromNumber } from '@/shared/time/day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import type { Order } from '../engine/buying/orders';
import { type PurchasePlan, purchasePlanOf, type Unknown } from '../engine/buying/purchase-plan';
import { whyOf } from '../engine/buying/why';
import { whyInWords } from '../engine/buying/why-in-words';
import { buyingAddress, buyingWorking } from '../engine/working/buying-figures';
import { AT_ONCE } from '../solver/at-once';
import type { Fig } from './figures';
import { goodsOf } from './goods';
import { type HereNow, shopNow } from './house';
import { offerHref } from './offers-shown';
import { beginPlan, type PlanState, planRun, planState, stopPlan } from './plan-runs';

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
  /** Why so, a sentence for each reason. */
  why: string[];
};

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
  late: { product: string; on: Day; amount: string }[];
  cost: { packs: Fig; freight: Fig; capital: Fig; left: Fig; total: Fig; ofWhichWaste: Fig };
  habits: { name: string; cost: Fig; more: string }[];
  proof: string;
  unknowns: { words: string; href: string }[];
};

/** What to buy, when and from whom: the plan that the search has made, or the exact one of each product by itself. */
export async function planScreen(clock: Clock, weeks: number): Promise<PlanScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const run = await planRun({ shop: here.id, today: here.today, weeks });
  const plan = run?.plan ?? planAtOnce(here, weeks);
  const figure = figuresOfPlan(plan);
  const explained = explainedIn(plan);
  const its = (what: keyof PlanScreen['cost']) => figure(what);
  return {
    ...{ shopId: here.id, today: here.today, ways: here.ways, weeks, formId: newCommandId() },
    ...{ state: planState(run, clock), isSearched: run?.plan != null },
    orders: plan.orders.map((order, number) => orderSeen(plan, explained, order, number)),
    late: plan.late.map(({ product, on, amount }) => {
      return { product: product.name, on, amount: showStock(amount, product.form, here.ways.units) };
    }),
    cost: {
      ...{ packs: its('packs'), freight: its('freight'), capital: its('capital'), left: its('left') },
      ...{ total: its('total'), ofWhichWaste: its('ofWhichWaste') },
    },
    habits: habitsSeen(plan),
    proof: proofOf(plan),
    unknowns: plan.unknowns.map(unknownSeen),
  };
}

const atOnce = new WeakMap<HereNow['shop'], Map<number, PurchasePlan>>();

function planAtOnce({ shop, today }: Pick<HereNow, 'shop' | 'today'>, weeks: number): PurchasePlan {
  const known = atOnce.get(shop) ?? new Map<number, PurchasePlan>();
  const plan = known.get(weeks) ?? purchasePlanOf(shop, today, weeks, AT_ONCE);
  atOnce.set(shop, known.set(weeks, plan));
  return plan;
}

/** The plan that the search has made of a shop as it stands, or until then each product's own. */
export async function planShown(here: Pick<HereNow, 'id' | 'shop' | 'today'>, weeks: number): Promise<PurchasePlan> {
  const run = await planRun({ shop: here.id, today: here.today, weeks });
  return run?.plan ?? planAtOnce(here, weeks);
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
  const run = await planRun({ shop, today: goods.today, weeks });
  if (run) stopPlan(run);
  return accept(planState(run, clock));
}

/** What a search is at, in words. */
export type PlanProgress = { state: PlanState; words: string };

/** How far the search is. Refuses 'not-found'. */
export async function planProgress({ shop, weeks }: SearchAsked, clock: Clock): Promise<Outcome<PlanProgress>> {
  const goods = await goodsOf(clock, shop);
  if (!goods) return noShop(shop);
  const state = planState(await planRun({ shop, today: goods.today, weeks }), clock);
  return accept({ state, words: progressWords(state, goods.file.shop.currency) });
}

function progressWords(state: PlanState, currency: string): string {
  if (state.kind !== 'running') return '';
  if (state.isStopped) return 'Stopping, with the best plan found so far.';
  if (!state.progress) return 'Looking at each product by itself first.';
  const { best, bound } = state.progress;
  return `The best so far comes to ${showMoney(best, currency)}; none can be below ${showMoney(bound, currency)}.`;
}

const figuresOfPlan =
  (plan: PurchasePlan) =>
  (...path: (string | number)[]): Fig => {
    const working = buyingWorking(plan, path.map(String));
    if (!working) throw new RangeError(`purchase plan: nothing stands behind "${path.join('/')}"`);
    return { at: buyingAddress(plan, ...path), value: working.value };
  };

function orderSeen(
  plan: PurchasePlan,
  explained: ReturnType<typeof explainedIn>,
  order: Order,
  number: number,
): PlannedOrder {
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
      why: explained.find((one) => one.order === order && one.line === line)?.words ?? [],
    })),
    ...{ goods: figure('order', number, 'goods'), freight: figure('order', number, 'freight') },
    total: figure('order', number, 'total'),
    href: `/buy/orders/new?${new URLSearchParams([['supplier', supplier.id], ['placedOn', on], ...fields])}`,
  };
}

function habitsSeen(plan: PurchasePlan): PlanScreen['habits'] {
  const figure = figuresOfPlan(plan);
  const { habits, cost, shop } = plan;
  const more = (habit: number) =>
    habit > cost.total ? `${showMoney(habit - cost.total, shop.currency)} more` : 'as much as this plan';
  return [
    { name: 'Always the smallest pack', cost: figure('habit', 'smallestPack'), more: more(habits.smallestPack) },
    {
      name: 'Always the cheapest by the unit',
      cost: figure('habit', 'cheapestPerMl'),
      more: more(habits.cheapestPerMl),
    },
  ];
}

function proofOf({ proven, gap, bound, shop }: PurchasePlan): string {
  if (proven) return 'Proven: no plan costs less.';
  return `Not proven: no plan can cost less than ${showMoney(bound, shop.currency)}, which is ${showRough(gap * 100)} % below this one.`;
}

/** Every line of a plan with why it is so, in words. */
const explainedIn = (plan: PurchasePlan) =>
  whyOf(plan).map((explained) => ({
    ...explained,
    words: explained.reasons.map((reason) => whyInWords(explained, reason, plan.today, plan.shop.currency)),
  }));

function unknownSeen(unknown: Unknown): PlanScreen['unknowns'][number] {
  switch (unknown.what) {
    case 'amount':
      return {
        words: `How much ${unknown.product.name} some sprayings take is not known, so that much of it is not planned.`,
        href: `/shelf/${encodeURIComponent(unknown.product.id)}`,
      };
    case 'offer':
      return {
        words: `Nobody offers ${unknown.product.name}, so it is not planned.`,
        href: `/shelf/${encodeURIComponent(unknown.product.id)}/offer/new`,
      };
    case 'lead time':
      return {
        words: `How long ${unknown.offer.supplier.name} takes for ${unknown.offer.product.name}, ${unknown.offer.packText}, is not known; it counts as no time.`,
        href: offerHref(unknown.offer),
      };
    case 'freight':
      return {
        words: `The freight of ${unknown.order.supplier.name} was never entered and counts nothing.`,
        href: `/shelf/suppliers/${encodeURIComponent(unknown.order.supplier.id)}`,
      };
  }
}
