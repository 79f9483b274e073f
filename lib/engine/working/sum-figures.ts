import type { Micros } from '@/shared/quantity/amounts';
import { showDay } from '@/shared/time/show-day';
import { sumKnown } from '../ahead/cost-sums';
import type { IngredientLine, Plan, Spraying } from '../ahead/plan';
import { count, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';

const UNKNOWN = 'Not known for this one, so it is not in the sum.';

const costStep = (spraying: Spraying, figure: 'materialCost' | 'labourCost'): Step =>
  worked(
    `${spraying.recipe.name}, ${showDay(spraying.date)}`,
    money(spraying[figure], UNKNOWN),
    `program ${spraying.program.id}`,
    figureAddress('spraying', spraying.program.id, spraying.date, figure),
  );

/** A sum of costs as it is shown: unknown when there are costs and none of them is known, because that is not zero. */
function sumShown(costs: (Micros | null)[]): Shown {
  if (costs.length > 0 && costs.every((cost) => cost === null))
    return { kind: 'unknown', because: 'None of it is known.' };
  return { kind: 'money', micros: sumKnown(costs, (cost) => cost) };
}

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
      }
    : null;
}

/** The working of a sum over the whole horizon. */
export function totalWorking(plan: Plan, [figure]: string[]): FoundWorking | null {
  const { totals, sprayings } = plan;
  switch (figure) {
    case 'materialCost':
    case 'labourCost':
      return {
        title: `${figure === 'materialCost' ? 'Product' : 'Labour'} in ${plan.weeks} weeks`,
        value: sumShown(sprayings.map((one) => one[figure])),
        rule: 'Every spraying of the weeks ahead, added up. What is unknown is not in the sum.',
        get steps() {
          return sprayings.map((one) => costStep(one, figure));
        },
      };
    case 'toBuy':
      return toBuyTotal(plan);
    case 'wasteCost':
      return wasteTotal(plan);
    case 'sprayings':
      return {
        title: `Sprayings in ${plan.weeks} weeks`,
        value: count(sprayings.length, 'sprayings'),
        rule: 'Every turn of every program in the weeks ahead that is not skipped.',
        get steps() {
          return sprayings.map(plantStep);
        },
      };
    case 'unknownCosts':
      return {
        title: 'Sprayings whose cost is unknown',
        value: count(totals.unknownCosts, 'sprayings'),
        rule: 'Sprayings in which the amount or the price of at least one ingredient is unknown.',
        steps: sprayings
          .filter(({ materialCost }) => materialCost === null)
          .map((one) => costStep(one, 'materialCost')),
      };
    default:
      return null;
  }
}

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

const isMissing = ({ amount, short }: IngredientLine): boolean => amount !== null && short > 0;

const toBuyStep = ({ program, date }: Spraying, { ingredient, shortCost }: IngredientLine, number: number): Step =>
  worked(
    `${ingredient.product.name}, ${showDay(date)}`,
    money(shortCost, UNKNOWN),
    `program ${program.id}`,
    figureAddress('spraying', program.id, date, 'line', number, 'shortCost'),
  );

const wasteTotal = ({ products, weeks }: Plan): FoundWorking => ({
  title: `About to be wasted in ${weeks} weeks`,
  value: sumShown(products.flatMap(({ wastes }) => wastes.map(({ cost }) => cost))),
  rule: 'What is left in bottles after their last usable day, at what was paid for it, if nothing but the programs uses it.',
  steps: products
    .filter(({ wastes }) => wastes.length > 0)
    .map(({ product, wasteCost }) =>
      worked(product.name, money(wasteCost, UNKNOWN), 'its bottles', figureAddress('product', product.id, 'wasteCost')),
    ),
});
