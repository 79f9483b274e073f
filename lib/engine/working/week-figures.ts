import { minus, type Stock } from '@/shared/quantity/amounts';
import { addDays, type Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Plan, ProductAhead, StockWeek } from '../ahead/plan';
import { toEnterForProduct } from '../rules/to-enter';
import { bottleName } from './line-figures';
import { atLeast, entered, type FoundWorking, figureAddress, type Shown, type Step, worked } from './shown';
import { atMost, UNKNOWN_AMOUNT, unknownIn } from './unknown-need-figures';

const RULES = {
  need: 'What the sprayings of these seven days take, dose × spray to mix, added up.',
  used: 'The part of the need that usable bottles can give.',
  short: 'The part of the need that no usable bottle can give.',
  wasted: 'What is left in bottles whose last usable day passes in these seven days.',
  received: 'What arrives in bottles with a received day in these seven days. The plan itself buys nothing.',
  closing: 'Opening + received − used − wasted.',
} as const;

type Column = keyof typeof RULES;

const isColumn = (text: string | undefined): text is Column => text !== undefined && Object.hasOwn(RULES, text);

/** The working of one cell of a product's weeks: `N/COLUMN`. */
export function weekWorking(plan: Plan, ahead: ProductAhead, [number, column]: string[]): FoundWorking | null {
  const week = ahead.weeks[Number(number)];
  if (!week || !isColumn(column)) return null;
  return {
    title: `${ahead.product.name}, seven days from ${showDay(week.week)}: ${column}`,
    value: cellShown(plan, ahead, week, column),
    rule: RULES[column],
    get steps() {
      return stepsOf(plan, ahead, week, Number(number), column);
    },
    get toEnter() {
      return toEnterForProduct(plan, ahead);
    },
  };
}

/**
 * A cell as it is shown. Where amounts are unknown the columns are those of the known part: at least so much is taken, and
 * from then on at most so much is left or wasted.
 */
function cellShown(plan: Plan, ahead: ProductAhead, week: StockWeek, column: Column): Shown {
  const upTo = addDays(week.week, 6);
  switch (column) {
    case 'need':
    case 'used':
    case 'short': {
      const unknown = unknownIn(plan, ahead, ({ date }) => date >= week.week && date <= upTo);
      const amount = column === 'need' ? week.needAtLeast : week[column];
      if (unknown > 0 && amount === 0) return { kind: 'unknown', because: UNKNOWN_AMOUNT };
      return { ...stockShown(ahead, amount), ...atLeast(unknown) };
    }
    case 'wasted':
    case 'closing':
      return atMost(
        stockShown(ahead, week[column]),
        unknownIn(plan, ahead, ({ date }) => date <= upTo),
      );
    case 'received':
      return stockShown(ahead, week.received);
  }
}

const stockShown = ({ product }: ProductAhead, amount: Stock): Stocked => ({
  ...{ kind: 'stock', amount },
  form: product.form,
});

type Stocked = Extract<Shown, { kind: 'stock' }>;

function stepsOf(plan: Plan, ahead: ProductAhead, week: StockWeek, number: number, column: Column): Step[] {
  const upTo = addDays(week.week, 6);
  const within = (day: Day) => day >= week.week && day <= upTo;
  switch (column) {
    case 'need':
    case 'used':
    case 'short':
      return demandSteps(plan, ahead, within, column);
    case 'wasted':
      return ahead.wastes
        .filter(({ on }) => within(on))
        .map(({ container, on, amount }) =>
          worked(
            bottleName(container),
            stockShown(ahead, amount),
            `waste on ${showDay(on)}`,
            figureAddress('container', container.lot, container.place, 'lastUsableDay'),
          ),
        );
    case 'received':
      return plan.shop.containers
        .filter((one) => one.product === ahead.product && one.receivedOn > plan.today && within(one.receivedOn))
        .map((one) => entered(bottleName(one), stockShown(ahead, one.remaining), `lot ${one.lot}`));
    case 'closing':
      return closingSteps(plan, ahead, week, number);
  }
}

function demandSteps(
  plan: Plan,
  ahead: ProductAhead,
  within: (day: Day) => boolean,
  column: 'need' | 'used' | 'short',
) {
  const steps: Step[] = [];
  for (const { program, recipe, date, lines } of plan.sprayings) {
    if (!within(date)) continue;
    for (const [number, { ingredient, amount, short }] of lines.entries()) {
      if (ingredient.product !== ahead.product) continue;
      const figure = column === 'need' ? 'amount' : column;
      const address = figureAddress('spraying', program.id, date, 'line', number, figure);
      const parts = amount !== null && { need: amount, used: minus(amount, short), short };
      const value: Shown = parts ? stockShown(ahead, parts[column]) : { kind: 'unknown', because: UNKNOWN_AMOUNT };
      steps.push(worked(recipe.name, value, showDay(date), address));
    }
  }
  return steps;
}

function closingSteps(plan: Plan, ahead: ProductAhead, week: StockWeek, number: number): Step[] {
  const cell = (column: Column) =>
    worked(
      column,
      cellShown(plan, ahead, week, column),
      'this row',
      figureAddress('product', ahead.product.id, 'week', number, column),
    );
  const opening =
    number === 0
      ? worked(
          'opening',
          stockShown(ahead, week.opening),
          'on hand today',
          figureAddress('product', ahead.product.id, 'onHand'),
        )
      : worked(
          'opening',
          atMost(
            stockShown(ahead, week.opening),
            unknownIn(plan, ahead, ({ date }) => date < week.week),
          ),
          'the closing of the week before',
          figureAddress('product', ahead.product.id, 'week', number - 1, 'closing'),
        );
  return [opening, cell('received'), cell('used'), cell('wasted')];
}
