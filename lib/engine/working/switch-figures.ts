import { showMoney } from '@/shared/measure/show';
import { micros, sum } from '@/shared/quantity/amounts';
import type { Plan, ProductAhead } from '../ahead/plan';
import type { More, PlanDifferences } from '../ahead/plan-differences';
import type { Flag } from '../rules/flag';
import {
  atLeast,
  count,
  entered,
  type FoundWorking,
  figureAddress,
  money,
  type Shown,
  type Step,
  text,
  worked,
} from './shown';
import { UNKNOWN_AMOUNT } from './unknown-need-figures';

/** The plan as it is, the plan with another product in a recipe, and what is otherwise in it. */
export type Switched = { plan: Plan; next: Plan; differences: PlanDifferences };

/**
 * The working of what a switch does to the weeks ahead: `cost`, `waste`, `cleared`, `need/PRODUCT` or `runsOut/PRODUCT`.
 */
export function switchWorking(switched: Switched, [figure, id]: string[]): FoundWorking | null {
  switch (figure) {
    case 'cost':
      return costWorking(switched);
    case 'waste':
      return wasteWorking(switched);
    case 'cleared':
      return clearedWorking(switched);
    case 'need':
      return ofProduct(switched, id, needWorking);
    case 'runsOut':
      return ofProduct(switched, id, runsOutWorking);
    default:
      return null;
  }
}

type Pair = { now: ProductAhead; then: ProductAhead };

function ofProduct(
  switched: Switched,
  id: string | undefined,
  working: (switched: Switched, pair: Pair) => FoundWorking,
): FoundWorking | null {
  const pair = pairsIn(switched).find(({ now }) => now.product.id === id);
  return pair ? working(switched, pair) : null;
}

const pairsIn = ({ plan, next }: Switched): Pair[] =>
  plan.products.flatMap((now, at) => {
    const then = next.products[at];
    return then ? [{ now, then }] : [];
  });

const shown = (amount: number) => ({ kind: 'money', micros: amount }) as const;

/** So much more, or less: which of the two, the title says. */
const adds = ({ isMore }: More): string => (isMore ? 'What the switch adds to' : 'What the switch takes off');

/** The two that the difference is taken of, the larger one first. */
function twoSteps(now: Step, then: Step, { isMore }: More): Step[] {
  return isMore ? [then, now] : [now, then];
}

function costWorking({ plan, next, differences: { costMore } }: Switched): FoundWorking {
  const [now, then] = [costsByProduct(plan), costsByProduct(next)];
  const more = costMore ?? { micros: micros(0), isMore: true };
  return {
    title: `${adds(more)} the product of ${plan.weeks} weeks`,
    value: money(costMore?.micros ?? null, 'Less, or more, of the cost would be known than before.'),
    rule: 'What the sprayings planned cost in product with the switch, beside what they cost now: from the bottles there are, and what is short at the cheapest offer.',
    steps: [
      ...twoSteps(
        worked('Now', materialIn(plan), 'as planned', figureAddress('totals', 'materialCost')),
        entered('After the switch', materialIn(next), 'with the new line in the recipe'),
        more,
      ),
      ...plan.products.flatMap(({ product: { id, name } }) =>
        changeStep(name, now.get(id) ?? 0, then.get(id) ?? 0, plan),
      ),
    ],
  };
}

const materialIn = ({ totals }: Plan): Shown => ({ ...shown(totals.materialCost), ...atLeast(totals.unknownCosts) });
const wasteIn = ({ totals }: Plan): Shown => ({ ...shown(totals.wasteCost), ...atLeast(totals.unknownWaste) });

/** What becomes of the cost of one product, where it changes. */
function changeStep(name: string, now: number, then: number, { shop: { currency } }: Plan): Step[] {
  if (now === then) return [];
  return [
    entered(
      `${name}, changed by`,
      shown(then - now),
      `${showMoney(now, currency)} now, ${showMoney(then, currency)} then`,
    ),
  ];
}

/** What each product costs in all sprayings whose cost is known. */
function costsByProduct({ sprayings }: Plan): Map<string, number> {
  const costs = new Map<string, number>();
  for (const { lines, materialCost } of sprayings) {
    if (materialCost === null) continue;
    for (const { ingredient, cost } of lines) {
      const { id } = ingredient.product;
      costs.set(id, (costs.get(id) ?? 0) + (cost ?? 0));
    }
  }
  return costs;
}

const wasteOf = ({ wastes }: ProductAhead): number => wastes.reduce((total, { cost }) => total + (cost ?? 0), 0);

function wasteWorking(switched: Switched): FoundWorking {
  const { plan, next, differences } = switched;
  const more = differences.wasteMore ?? { micros: micros(0), isMore: true };
  return {
    title: `${adds(more)} the waste of ${plan.weeks} weeks`,
    value: money(differences.wasteMore?.micros ?? null, 'Less, or more, of the cost would be known than before.'),
    rule: 'What would die in bottles with the switch, beside what dies in them now.',
    steps: [
      ...twoSteps(
        worked('Now', wasteIn(plan), 'as planned', figureAddress('totals', 'wasteCost')),
        entered('After the switch', wasteIn(next), 'with the new line in the recipe'),
        more,
      ),
      ...pairsIn(switched).flatMap(({ now, then }) => changeStep(now.product.name, wasteOf(now), wasteOf(then), plan)),
    ],
  };
}

/** What the sprayings of the weeks ahead take of a product. */
function needed({ weeks, product: { form } }: ProductAhead): Shown {
  const amount = sum(weeks.map(({ needAtLeast }) => needAtLeast));
  const unknown = weeks.filter(({ need }) => need === null).length;
  if (unknown > 0 && amount === 0) return { kind: 'unknown', because: UNKNOWN_AMOUNT };
  return { kind: 'stock', form, amount, ...atLeast(unknown) };
}

function needWorking({ plan, next }: Switched, { now, then }: Pair): FoundWorking {
  return {
    title: `${now.product.name} for ${plan.weeks} weeks after the switch`,
    value: needed(then),
    rule: 'What all sprayings planned take of it, dose × spray, added up.',
    steps: [
      entered('Now', needed(now), `${timesOf(plan, now)} sprayings`),
      entered('After the switch', needed(then), `${timesOf(next, then)} sprayings`),
    ],
  };
}

const timesOf = ({ sprayings }: Plan, { product }: ProductAhead): number =>
  sprayings.filter(({ lines }) => lines.some(({ ingredient }) => ingredient.product.id === product.id)).length;

const runsOut = ({ weeks }: Plan, { runsOutOn }: ProductAhead): Shown =>
  runsOutOn === null ? text(`not within ${weeks} weeks`) : { kind: 'day', day: runsOutOn };

function runsOutWorking({ plan }: Switched, { now, then }: Pair): FoundWorking {
  return {
    title: `When ${now.product.name} runs out after the switch`,
    value: runsOut(plan, then),
    rule: `The first day within ${plan.weeks} weeks whose sprayings cannot be met in full from what is on the shelf.`,
    steps: [
      worked(
        'Now',
        runsOut(plan, now),
        'the weeks ahead as they are',
        figureAddress('product', now.product.id, 'runsOutOn'),
      ),
      usable('Usable now', then),
      entered('Needed after the switch', needed(then), 'all sprayings planned'),
    ],
  };
}

const usable = (label: string, { usable: amount, product: { form } }: ProductAhead): Step =>
  entered(label, { kind: 'stock', amount, form }, 'bottles whose last day is not past');

function clearedWorking({ plan, differences: { cleared } }: Switched): FoundWorking {
  return {
    title: 'Flags that would be gone',
    value: count(cleared.length, 'flags'),
    rule: `What is flagged in the ${plan.weeks} weeks ahead as they are, and would not be after the switch. What is flagged otherwise on the same day, for the same bench and product, is not among them.`,
    steps: cleared.map(flagStep),
  };
}

const flagStep = ({ on, message, rule }: Flag): Step => entered(message, { kind: 'day', day: on }, rule);
