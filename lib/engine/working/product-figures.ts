import { sum } from '@/shared/quantity/amounts';
import { type Day, daysBetween, readDay } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { leftOn } from '../ahead/container-steps';
import type { Plan, ProductAhead } from '../ahead/plan';
import { lastUsableDay } from '../ledger/last-usable-day';
import { allBy, firstBy } from '../looked-up';
import { toEnterForPrice, toEnterForProduct } from '../rules/to-enter';
import type { Container, Supplier } from '../shop';
import { bottleName } from './line-figures';
import { onOrderWorking, stillRunsOutWorking } from './on-order-figures';
import { replaceWorking } from './replace-figures';
import { productValueWorking } from './shelf-figures';
import {
  count,
  entered,
  type FoundWorking,
  figureAddress,
  money,
  type Shown,
  type Step,
  sumShown,
  text,
  worked,
} from './shown';
import { atMost, dayShown, isMaybeSooner, NOBODY_KNOWS, runsOutShown, unknownIn } from './unknown-need-figures';
import { weekWorking } from './week-figures';

const aheadNamed = firstBy(({ product }: ProductAhead): string | undefined => product.id);
const containersOf = allBy(({ product }: Container) => product);

/** The working of one figure of a product: `ID/FIGURE`, `ID/week/N/COLUMN` or `ID/left/DAY`. */
export function productWorking(plan: Plan, [id, figure, ...rest]: string[]): FoundWorking | null {
  const ahead = aheadNamed(plan.products, id);
  if (!ahead) return null;
  switch (figure) {
    case 'onHand':
      return onHandWorking(plan, ahead);
    case 'usable':
      return usableWorking(plan, ahead);
    case 'wasteCost':
      return wasteWorking(plan, ahead);
    case 'runsOutOn':
      return runsOutWorking(plan, ahead);
    case 'left':
      return leftWorking(plan, ahead, rest);
    case 'neededOn':
      return neededWorking(plan, ahead);
    case 'orderBy':
      return orderByWorking(plan, ahead);
    case 'weeksUntilReorder':
      return weeksWorking(plan, ahead);
    case 'value':
      return productValueWorking(plan, ahead);
    case 'replaceCost':
      return replaceWorking(plan, ahead.product);
    case 'onOrder':
    case 'expectedOn':
      return onOrderWorking(plan, ahead.product, figure);
    case 'stillRunsOutOn':
      return stillRunsOutWorking(plan, ahead);
    case 'week':
      return weekWorking(plan, ahead, rest);
    default:
      return null;
  }
}

const here = (plan: Plan, { product }: ProductAhead): Container[] =>
  containersOf(plan.shop.containers, product).filter((one) => one.receivedOn <= plan.today);

const remainingStep = (container: Container, from: string): Step =>
  worked(
    bottleName(container),
    { kind: 'stock', amount: container.remaining, form: container.product.form },
    from,
    figureAddress('container', container.lot, container.place, 'remaining'),
  );

function onHandWorking(plan: Plan, ahead: ProductAhead): FoundWorking {
  return {
    title: `${ahead.product.name} on hand`,
    value: { kind: 'stock', amount: ahead.onHand, form: ahead.product.form },
    rule: 'What remains in every bottle received by today, also in those past their last day.',
    steps: here(plan, ahead).map((one) => remainingStep(one, 'its movements')),
  };
}

function usableWorking(plan: Plan, ahead: ProductAhead): FoundWorking {
  const isUsable = (one: Container) => (lastUsableDay(one) ?? plan.today) >= plan.today;
  const past = here(plan, ahead).filter((one) => !isUsable(one) && one.remaining > 0);
  return {
    title: `${ahead.product.name} usable`,
    value: { kind: 'stock', amount: ahead.usable, form: ahead.product.form },
    rule: 'What remains in the bottles received by today whose last usable day is not past. Expired stock covers nothing.',
    steps: [
      ...here(plan, ahead)
        .filter(isUsable)
        .map((one) => remainingStep(one, 'its movements')),
      ...past.map((one) => remainingStep(one, 'not counted: past its last usable day')),
    ],
  };
}

/** What dies of a product in money: at most so much where unknown sprayings take some of it. */
export const wasteShown = (plan: Plan, ahead: ProductAhead): Shown =>
  atMost(
    sumShown(
      ahead.wastes.map(({ cost }) => cost),
      'What was paid for these bottles was never entered.',
    ),
    unknownIn(plan, ahead, () => true),
  );

const wasteWorking = (plan: Plan, ahead: ProductAhead, { product, wastes } = ahead): FoundWorking => ({
  title: `${product.name} that will be wasted`,
  value: wasteShown(plan, ahead),
  rule: 'What is left in a bottle after its last usable day, at the price that was paid for it, within the weeks ahead.',
  get toEnter() {
    const unpaid = wastes.filter(({ cost }) => cost === null).map(({ container }) => toEnterForPrice(container));
    return [...unpaid, ...toEnterForProduct(plan, ahead)];
  },
  steps: wastes.flatMap(({ container, on, amount, cost }) => [
    worked(
      bottleName(container),
      { kind: 'stock', amount, form: product.form },
      'left after the sprayings planned until then',
      figureAddress('container', container.lot, container.place, 'lastUsableDay'),
    ),
    entered('Counts as waste on', { kind: 'day', day: on }, 'the day after its last usable day, or today'),
    entered('At cost', money(cost, 'What was paid was never entered.'), 'its share of the price of the bottle'),
  ]),
});

function runsOutWorking(plan: Plan, ahead: ProductAhead): FoundWorking {
  const { product, usable, runsOutOn } = ahead;
  return {
    title: `${product.name} runs out`,
    value: runsOutShown(plan, ahead),
    rule: 'The first day whose sprayings cannot be met in full from usable bottles. Bottles past their last day are not counted.',
    get steps() {
      return [
        worked('Usable today', stockOf(ahead, usable), 'the shelf', figureAddress('product', product.id, 'usable')),
        ...(runsOutOn === null ? [] : takenUntil(plan, ahead, runsOutOn)),
      ];
    },
    get toEnter() {
      return toEnterForProduct(plan, ahead);
    },
  };
}

/** What each spraying asks of a product up to the day it runs out. */
function takenUntil(plan: Plan, ahead: ProductAhead, last: Day): Step[] {
  const steps: Step[] = [];
  for (const { program, recipe, date, lines } of plan.sprayings) {
    if (date > last) break;
    for (const [number, { ingredient, amount, short }] of lines.entries()) {
      if (ingredient.product !== ahead.product) continue;
      const there =
        short === 0 || amount === null
          ? ''
          : short === amount
            ? ', of which nothing is there'
            : ', of which only a part is there';
      const address = figureAddress('spraying', program.id, date, 'line', number, 'amount');
      const value = amount === null ? NOBODY_KNOWS : stockOf(ahead, amount);
      steps.push(worked(recipe.name, value, `${showDay(date)}${there}`, address));
    }
  }
  return steps;
}

/** What is left of a product at the end of a day ahead, in whatever it stands. */
function leftWorking(plan: Plan, ahead: ProductAhead, [written]: string[]): FoundWorking | null {
  const reading = readDay(written ?? '');
  if (!reading.ok) return null;
  const containers = containersOf(plan.shop.containers, ahead.product).filter((one) => one.remaining > 0);
  const left = (one: Container) => leftOn(plan, one, reading.value);
  return {
    title: `${ahead.product.name} left at the end of ${showDay(reading.value)}`,
    value: atMost(
      stockOf(ahead, sum(containers.map(left))),
      unknownIn(plan, ahead, ({ date }) => date <= reading.value),
    ),
    rule: 'What is left in every container at the end of that day, added up.',
    get steps() {
      return containers.map((one) =>
        worked(
          bottleName(one),
          stockOf(ahead, left(one)),
          'the weeks ahead',
          figureAddress('container', one.lot, one.place, 'left', reading.value),
        ),
      );
    },
  };
}

const stockOf = ({ product }: ProductAhead, amount: ProductAhead['onHand']): Shown => ({
  kind: 'stock',
  amount,
  form: product.form,
});

function orderByWorking(plan: Plan, ahead: ProductAhead): FoundWorking {
  const { reorder, product } = ahead;
  const runsOut = worked(
    'Runs out',
    runsOutShown(plan, ahead),
    'the weeks ahead',
    figureAddress('product', product.id, 'runsOutOn'),
  );
  const toEnter = toEnterForProduct(plan, ahead);
  const rule =
    'The latest working day of the supplier on which an order still arrives before the product runs out, with the shop’s safety days between. The offer that is cheapest per unit is used.';
  if (!reorder) {
    return { title: `Order ${product.name} by`, value: noOrderShown(ahead), rule, steps: [runsOut], toEnter };
  }
  const { supplier, leadDays, packText } = reorder.offer;
  return {
    title: `Order ${product.name} by`,
    value: dayShown(reorder.by, isMaybeSooner(ahead)),
    rule,
    toEnter,
    steps: [
      runsOut,
      entered('Safety days', count(plan.shop.safetyDays, 'days'), 'Setup, the shop'),
      entered('Must have arrived on', { kind: 'day', day: reorder.neededOn }, 'runs out − safety days'),
      entered('Lead time', count(leadDays ?? 0, 'working days'), `${supplier.name}, ${packText}`),
      entered('Works on', text([...supplier.workingDays.weekdays].join(', ')), supplier.name),
      ...closedSteps(supplier, reorder.by, reorder.neededOn),
    ],
  };
}

/** The dates in between on which nothing is ordered, sent or received, of the supplier and of the shop. */
function closedSteps({ name, workingDays, closedOn }: Supplier, from: Day, to: Day): Step[] {
  const between = [...workingDays.closed].filter((day) => day >= from && day <= to).sort();
  return between.map((day) =>
    entered('Closed on', { kind: 'day', day }, closedOn.includes(day) ? name : 'Setup, the special days of the shop'),
  );
}

/** Why there is no day to order by. */
function noOrderShown({ runsOutOn, unknownSince }: ProductAhead): Shown {
  if (runsOutOn !== null) return text('no offer with a lead time');
  return unknownSince === null ? text('nothing runs out') : NOBODY_KNOWS;
}

/** The end of the time that an order needs: the day by which it must have arrived. */
function neededWorking(plan: Plan, ahead: ProductAhead): FoundWorking {
  const { reorder, product } = ahead;
  const working = orderByWorking(plan, ahead);
  if (!reorder) return { ...working, title: `${product.name} must have arrived by` };
  return {
    title: `${product.name} must have arrived by`,
    value: dayShown(reorder.neededOn, isMaybeSooner(ahead)),
    rule: 'The day the product runs out − the shop’s safety days.',
    steps: working.steps.slice(0, 2),
  };
}

function weeksWorking(plan: Plan, ahead: ProductAhead): FoundWorking {
  const { reorder, product } = ahead;
  const address = figureAddress('product', product.id, 'orderBy');
  if (!reorder) {
    return { ...orderByWorking(plan, ahead), title: `Weeks until ${product.name} must be ordered` };
  }
  return {
    title: `Weeks until ${product.name} must be ordered`,
    value: count(reorder.weeks, 'weeks'),
    rule: 'Days from today to the order-by day ÷ 7, rounded down. 0 is this week; below 0 it is late.',
    steps: [
      worked('Order by', { kind: 'day', day: reorder.by }, reorder.offer.supplier.name, address),
      entered('Today', { kind: 'day', day: plan.today }, 'the clock, in the shop’s zone'),
      entered('Days between', count(daysBetween(plan.today, reorder.by), 'days'), 'order by − today'),
    ],
  };
}
