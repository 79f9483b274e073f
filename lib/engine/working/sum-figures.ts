import type { Micros } from '@/shared/quantity/amounts';
import { showDay } from '@/shared/time/show-day';
import type { IngredientLine, Plan, Spraying } from '../ahead/plan';
import {
  eachOnce,
  TO_ENTER_WAGE,
  type ToEnter,
  toEnterForCost,
  toEnterForPrice,
  toEnterForSpray,
} from '../rules/to-enter';
import { wasteShown } from './product-figures';
import { count, type FoundWorking, figureAddress, money, type Step, sumShown, worked } from './shown';
import { materialShown } from './spraying-figures';

const UNKNOWN = 'Not known for this one, so it is not in the sum.';

const costStep = (spraying: Spraying, figure: 'materialCost' | 'labourCost'): Step =>
  worked(
    `${spraying.recipe.name}, ${showDay(spraying.date)}`,
    figure === 'materialCost' ? materialShown(spraying) : money(spraying.labourCost, UNKNOWN),
    `program ${spraying.program.id}`,
    figureAddress('spraying', spraying.program.id, spraying.date, figure),
  );

/** The working of a day's sum: `DATE/materialCost` or `DATE/labourCost`. */
export function dayWorking(plan: Plan, [date, figure]: string[]): FoundWorking | null {
  if (figure !== 'materialCost' && figure !== 'labourCost') return null;
  const sprayings = plan.sprayings.filter((one) => one.date === date);
  const [first] = sprayings;
  return first
    ? {
        title: `${figure === 'materialCost' ? 'Product' : 'Labour'} on ${showDay(first.date)}`,
        value: sumShown(sprayings.map((one) => one[figure])),
        rule: 'The sprayings of the day, added up. What is unknown is not in the sum, and says so.',
        steps: sprayings.map((one) => costStep(one, figure)),
        get toEnter() {
          return toEnterIn(sprayings, figure);
        },
      }
    : null;
}

/** The working of a sum over the whole horizon. */
export function totalWorking(plan: Plan, [figure]: string[]): FoundWorking | null {
  switch (figure) {
    case 'materialCost':
    case 'labourCost':
      return costTotal(plan, figure);
    case 'toBuy':
      return toBuyTotal(plan);
    case 'wasteCost':
      return wasteTotal(plan);
    case 'sprayings':
      return sprayingsTotal(plan);
    case 'unknownCosts':
      return unknownTotal(plan);
    default:
      return null;
  }
}

const costTotal = ({ sprayings, weeks }: Plan, figure: 'materialCost' | 'labourCost'): FoundWorking => ({
  title: `${figure === 'materialCost' ? 'Product' : 'Labour'} in ${weeks} weeks`,
  value: sumShown(sprayings.map((one) => one[figure])),
  rule: 'Every spraying of the weeks ahead, added up. What is unknown is not in the sum.',
  get steps() {
    return sprayings.map((one) => costStep(one, figure));
  },
  get toEnter() {
    return toEnterIn(sprayings, figure);
  },
});

const sprayingsTotal = ({ sprayings, weeks }: Plan): FoundWorking => ({
  title: `Sprayings in ${weeks} weeks`,
  value: count(sprayings.length, 'sprayings'),
  rule: 'Every turn of every program in the weeks ahead that is not skipped.',
  get steps() {
    return sprayings.map(plantStep);
  },
});

const unknownTotal = ({ sprayings, totals }: Plan): FoundWorking => ({
  title: 'Sprayings whose cost is unknown',
  value: count(totals.unknownCosts, 'sprayings'),
  rule: 'Sprayings in which the amount or the price of at least one ingredient is unknown.',
  steps: sprayings.filter(({ materialCost }) => materialCost === null).map((one) => costStep(one, 'materialCost')),
  get toEnter() {
    return toEnterIn(sprayings, 'materialCost');
  },
});

/** What somebody must enter before all of these costs are known. */
const toEnterIn = (sprayings: readonly Spraying[], figure: 'materialCost' | 'labourCost'): ToEnter[] =>
  eachOnce(
    sprayings.filter((one) => one[figure] === null).flatMap(figure === 'labourCost' ? () => TO_ENTER_WAGE : toEnterFor),
  );

const toEnterFor = (spraying: Spraying): ToEnter[] =>
  spraying.lines.length > 0
    ? spraying.lines.flatMap((line) => toEnterForCost(spraying, line))
    : spraying.program.benches.flatMap(toEnterForSpray);

const plantStep = ({ recipe, date, program, plants }: Spraying): Step =>
  worked(
    `${recipe.name}, ${showDay(date)}`,
    count(plants, 'plants'),
    `program ${program.id}`,
    figureAddress('spraying', program.id, date, 'plants'),
  );

/** What the shelf does not hold of what is sprayed. */
function toBuyTotal({ sprayings, weeks }: Plan): FoundWorking {
  const costs: (Micros | null)[] = [];
  for (const { lines } of sprayings) for (const line of lines) if (isMissing(line)) costs.push(line.shortCost);
  return {
    title: `To buy for ${weeks} weeks`,
    value: sumShown(costs),
    rule: 'The part of what is sprayed that no usable bottle holds, at the cheapest offers per unit, without freight. What is unknown is not in the sum.',
    get steps() {
      return sprayings.flatMap((spraying) =>
        spraying.lines.flatMap((line, number) => (isMissing(line) ? toBuyStep(spraying, line, number) : [])),
      );
    },
  };
}

/** What is missing, or may be: where the amount is unknown nobody can say. */
const isMissing = ({ amount, short }: IngredientLine): boolean => amount === null || short > 0;

const toBuyStep = ({ program, date }: Spraying, { ingredient, shortCost }: IngredientLine, number: number): Step =>
  worked(
    `${ingredient.product.name}, ${showDay(date)}`,
    money(shortCost, UNKNOWN),
    `program ${program.id}`,
    figureAddress('spraying', program.id, date, 'line', number, 'shortCost'),
  );

const wasteTotal = (plan: Plan): FoundWorking => ({
  get toEnter() {
    const unpaid = plan.products.flatMap(({ wastes }) => wastes).filter(({ cost }) => cost === null);
    return unpaid.map(({ container }) => toEnterForPrice(container));
  },
  title: `About to be wasted in ${plan.weeks} weeks`,
  value: sumShown(plan.products.flatMap(({ wastes }) => wastes.map(({ cost }) => cost))),
  rule: 'What is left in bottles after their last usable day, at what was paid for it, if nothing but the programs uses it.',
  steps: plan.products
    .filter(({ wastes }) => wastes.length > 0)
    .map((ahead) => {
      const { id, name } = ahead.product;
      return worked(name, wasteShown(plan, ahead), 'its bottles', figureAddress('product', id, 'wasteCost'));
    }),
});
