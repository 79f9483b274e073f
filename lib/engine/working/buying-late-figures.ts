import { type Stock, sum } from '@/shared/quantity/amounts';
import { showDay } from '@/shared/time/show-day';
import { arrivalOf } from '@/shared/time/working-days';
import type { Projection } from '../ahead/plan';
import { projectionOf } from '../ahead/projection';
import type { PurchasePlan } from '../buying/purchase-plan';
import { withOnOrder } from '../orders/on-order';
import type { Offer } from '../shop';
import { buyingAddress } from './buying-way';
import { amountWords } from './buying-words';
import { count, entered, type FoundWorking, type Shown, type Step, worked } from './shown';

const projections = new WeakMap<PurchasePlan, Projection>();

/** What lies ahead with what is on order, as the plan was made from it. */
function projectionFor(plan: PurchasePlan): Projection {
  const { shop, today, weeks } = plan;
  const known = projections.get(plan) ?? projectionOf(withOnOrder(shop, today), today, weeks);
  projections.set(plan, known);
  return known;
}

/** The working of what no order comes in time for: `PRODUCT/DAY`, or `PRODUCT` in all. */
export function lateWorking(plan: PurchasePlan, [id, day]: string[]): FoundWorking | null {
  if (day === undefined) return lateInAll(plan, id);
  const late = plan.late.find((one) => one.product.id === id && one.on === day);
  if (!late) return null;
  const { product, on, amount } = late;
  const offers = offersFor(plan, product.id);
  return {
    title: `${product.name} that comes too late for ${showDay(on, plan.today)}`,
    value: { kind: 'stock', amount, form: product.form },
    rule:
      offers.length === 0
        ? 'What the sprayings of that day take, less what the shelf and what is on order give. Nobody offers it, so no order can bring it.'
        : 'What the sprayings of that day take, less what the shelf and what is on order give. No order that is placed today is there the safety days before that day.',
    steps: [
      ...shortSteps(plan, product.id, on),
      ...offers.map((offer) => arrivalStep(plan, offer)),
      entered('Safety days', count(plan.shop.safetyDays, 'days'), 'Setup, the shop'),
    ],
  };
}

/** All that comes too late of a product, day by day. */
function lateInAll(plan: PurchasePlan, id: string | undefined): FoundWorking | null {
  const days = plan.late.filter(({ product }) => product.id === id);
  const [first] = days;
  if (!first) return null;
  const shown = (amount: Stock): Shown => ({ kind: 'stock', amount, form: first.product.form });
  return {
    title: `${first.product.name} that no order brings in time, ${plan.weeks} weeks`,
    value: shown(sum(days.map(({ amount }) => amount))),
    rule: 'What the sprayings take, less what the shelf and what is on order give, of every day that no order placed today comes in time for.',
    steps: days.map(({ product, on, amount }) =>
      worked(showDay(on, plan.today), shown(amount), 'added', buyingAddress(plan, 'late', product.id, on)),
    ),
  };
}

const offersFor = ({ shop }: PurchasePlan, id: string): Offer[] =>
  shop.offers.filter((offer) => offer.product.id === id && !offer.archived);

function shortSteps(plan: PurchasePlan, id: string, on: string): Step[] {
  return projectionFor(plan).sprayings.flatMap(({ date, recipe, lines }) =>
    lines.flatMap(({ ingredient: { product }, amount, short }): Step[] => {
      if (date !== on || product.id !== id || short === 0 || amount === null) return [];
      const takes = `takes ${amountWords(plan, amount, product)}, this is not there`;
      return [entered(recipe.name, { kind: 'stock', amount: short, form: product.form }, takes)];
    }),
  );
}

/** When an order of one offer would be there that is placed today. */
export function arrivalStep({ today }: PurchasePlan, { packText, supplier, leadDays }: Offer): Step {
  const arrives: Shown = { kind: 'day', day: arrivalOf(today, leadDays ?? 0, supplier.workingDays) };
  const lead = leadDays === null ? 'delivery time not known, counted as none' : `${leadDays} working days`;
  return entered(`${packText} of ${supplier.name}, ordered today`, arrives, `is there; ${lead}`);
}
