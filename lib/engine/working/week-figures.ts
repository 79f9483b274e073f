import { minus, type Stock } from '@/shared/quantity/amounts';
import { addDays, type Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Plan, ProductAhead, StockWeek } from '../ahead/plan';
import { bottleName } from './line-figures';
import { entered, type FoundWorking, figureAddress, type Shown, type Step, worked } from './shown';

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
    value: stockShown(ahead, week[column]),
    rule: RULES[column],
    get steps() {
      return stepsOf(plan, ahead, week, Number(number), column);
    },
  };
}

const stockShown = ({ product }: ProductAhead, amount: Stock): Shown => ({ kind: 'stock', amount, form: product.form });

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
      return closingSteps(ahead, week, number);
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
      if (ingredient.product !== ahead.product || amount === null) continue;
      const parts = { need: amount, used: minus(amount, short), short };
      const figure = column === 'need' ? 'amount' : column;
      const address = figureAddress('spraying', program.id, date, 'line', number, figure);
      steps.push(worked(recipe.name, stockShown(ahead, parts[column]), showDay(date), address));
    }
  }
  return steps;
}

function closingSteps(ahead: ProductAhead, week: StockWeek, number: number): Step[] {
  const cell = (column: Column) =>
    worked(
      column,
      stockShown(ahead, week[column]),
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
          stockShown(ahead, week.opening),
          'the closing of the week before',
          figureAddress('product', ahead.product.id, 'week', number - 1, 'closing'),
        );
  return [opening, cell('received'), cell('used'), cell('wasted')];
}
