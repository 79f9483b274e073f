import { showMinutes } from '@/shared/measure/show';
import { toNumber } from '@/shared/quantity/exact';
import type { Plan, Spraying } from '../ahead/plan';
import { longestRei } from '../keepout/reopening';
import { firstBy } from '../looked-up';
import { eachOnce, TO_ENTER_WAGE, toEnterForCost, toEnterForSpray } from '../rules/to-enter';
import { lineCostShown, lineWorking } from './line-figures';
import { count, entered, type FoundWorking, figureAddress, money, type Shown, type Step, text, worked } from './shown';

const sprayingOn = firstBy(({ program, date }: Spraying) => `${date} ${program.id}`);

/** The working of one figure of a spraying: `PROGRAM/DATE/FIGURE`, or `PROGRAM/DATE/line/N/FIGURE`. */
export function sprayingWorking(plan: Plan, [program, date, figure, ...rest]: string[]): FoundWorking | null {
  const spraying = sprayingOn(plan.sprayings, `${date} ${program}`);
  if (!spraying) return null;
  switch (figure) {
    case 'sprayMl':
      return sprayWorking(plan, spraying);
    case 'fills':
      return fillsWorking(plan, spraying);
    case 'plants':
      return plantsWorking(spraying);
    case 'materialCost':
      return materialWorking(spraying);
    case 'labourCost':
      return labourWorking(plan, spraying);
    case 'costPerPlant':
    case 'costPerLitre':
      return perWorking(spraying, figure);
    case 'reopensAt':
      return reopensWorking(spraying);
    case 'line':
      return lineWorking(plan, spraying, rest);
    default:
      return null;
  }
}

const addressOf = ({ program, date }: Spraying, ...figure: (string | number)[]): string =>
  figureAddress('spraying', program.id, date, ...figure);

const NO_VOLUME = 'The mL per plant of some plants was never entered.';

const sprayShown = ({ spray }: Spraying): Shown =>
  spray ? { kind: 'volume', ml: toNumber(spray.total) } : { kind: 'unknown', because: NO_VOLUME };

function sprayWorking(plan: Plan, spraying: Spraying): FoundWorking {
  const { spray } = spraying;
  const steps = [...plantSteps(spraying)];
  if (spray) {
    steps.push(
      entered('On the plants', { kind: 'volume', ml: toNumber(spray.onPlants) }, 'the lines above, added up'),
      worked('Fills', count(spray.fills, 'fills'), 'as few as the sprayer allows', addressOf(spraying, 'fills')),
      ...sprayerSteps(plan, spraying),
      entered(
        'Each fill',
        { kind: 'volume', ml: toNumber(spray.fill) },
        'on the plants ÷ fills + loss, up to the step',
      ),
    );
  }
  const rule =
    'Plants × mL per plant × coverage, added up over the benches, and split over equal fills. Each fill adds what the sprayer keeps, and goes up to the measuring step, but never over what it holds. The spray to mix is fills × each fill.';
  const toEnter = spray ? [] : spraying.program.benches.flatMap(toEnterForSpray);
  return { title: `Spray to mix: ${spraying.recipe.name}`, value: sprayShown(spraying), rule, steps, toEnter };
}

const plantSteps = ({ program }: Spraying): Step[] =>
  program.benches.flatMap((bench) =>
    bench.plants.map(({ name, pot, count: plants, mlPerPlant }) =>
      entered(
        `${bench.name}: ${name}${pot ? `, ${pot}` : ''}`,
        mlPerPlant === null
          ? { kind: 'unknown', because: NO_VOLUME }
          : { kind: 'ratio', value: mlPerPlant, unit: 'mL a plant' },
        `bench ${bench.name}: ${plants} plants, coverage ${bench.coverage}`,
      ),
    ),
  );

function sprayerSteps({ shop }: Plan, { program }: Spraying): Step[] {
  const { capacity, lossPerFill, measuringStep } = program.sprayer ?? shop.sprayer;
  const from = program.sprayer ? `Setup, ${program.sprayer.name}` : 'Setup, the shop';
  return [
    entered('The sprayer holds', { kind: 'volume', ml: toNumber(capacity) }, from),
    entered('Lost in each fill', { kind: 'volume', ml: toNumber(lossPerFill) }, from),
    entered('Measuring step', { kind: 'volume', ml: toNumber(measuringStep) }, from),
  ];
}

function fillsWorking(plan: Plan, spraying: Spraying): FoundWorking | null {
  const { spray } = spraying;
  if (!spray) return null;
  return {
    title: `Fills: ${spraying.recipe.name}`,
    value: count(spray.fills, 'fills'),
    rule: 'What goes on the plants ÷ (what the sprayer holds − what each fill loses), rounded up to a whole fill.',
    steps: [
      entered('On the plants', { kind: 'volume', ml: toNumber(spray.onPlants) }, 'plants × mL per plant × coverage'),
      ...sprayerSteps(plan, spraying),
    ],
  };
}

const plantsWorking = (spraying: Spraying): FoundWorking => ({
  title: `Plants: ${spraying.recipe.name}`,
  value: count(spraying.plants, 'plants'),
  rule: 'Every plant on the benches that are sprayed together, counted once.',
  steps: spraying.program.benches.flatMap((bench) =>
    bench.plants.map((group) =>
      entered(`${bench.name}: ${group.name}`, count(group.count, 'plants'), `bench ${bench.name}`),
    ),
  ),
});

const NO_COST = 'The cost of something in the mix is unknown.';

/** What a batch costs in product; unknown as soon as a part of it is, as it is in every sum. */
export const materialShown = ({ materialCost }: Spraying): Shown => money(materialCost, NO_COST);

const materialWorking = (spraying: Spraying): FoundWorking => ({
  title: `Product in the batch: ${spraying.recipe.name}`,
  value: materialShown(spraying),
  rule: 'What each ingredient costs, added up. Unknown as soon as one of them is unknown. Labour is a line of its own.',
  steps: spraying.lines.map((line, number) =>
    worked(
      line.ingredient.product.name,
      lineCostShown(line),
      `recipe ${spraying.recipe.name}: ${line.ingredient.dose.text}`,
      addressOf(spraying, 'line', number, 'cost'),
    ),
  ),
  get toEnter() {
    return eachOnce(spraying.lines.flatMap((line) => toEnterForCost(spraying, line)));
  },
});

function labourWorking({ shop }: Plan, spraying: Spraying): FoundWorking {
  const wage = money(shop.wagePerHour, 'No wage was entered.');
  return {
    title: `Labour: ${spraying.recipe.name}`,
    value: money(spraying.labourCost, 'No wage was entered in Setup.'),
    toEnter: spraying.labourCost === null ? [TO_ENTER_WAGE] : [],
    rule: 'Minutes ÷ 60 × wage per hour.',
    steps: [
      entered('Minutes', { kind: 'minutes', minutes: spraying.program.duration }, `program ${spraying.program.id}`),
      entered('Wage per hour', wage, 'Setup, the shop'),
    ],
  };
}

function perWorking(spraying: Spraying, figure: 'costPerPlant' | 'costPerLitre'): FoundWorking {
  const perPlant = figure === 'costPerPlant';
  const litres = spraying.spray ? toNumber(spraying.spray.total) / 1000 : null;
  const over = perPlant ? spraying.plants : litres;
  const cost = spraying.materialCost;
  const unknown = cost === null || over === null || over === 0;
  return {
    title: `Cost ${perPlant ? 'of a plant' : 'of a litre'}: ${spraying.recipe.name}`,
    value: unknown ? { kind: 'unknown', because: NO_COST } : { kind: 'money', micros: cost / over },
    toEnter: cost === null ? materialWorking(spraying).toEnter : [],
    rule: `Product in the batch ÷ ${perPlant ? 'plants' : 'litres mixed'}. Labour is not in it.`,
    steps: [
      worked('Product in the batch', materialShown(spraying), 'the ingredients', addressOf(spraying, 'materialCost')),
      perPlant
        ? worked('Plants', count(spraying.plants, 'plants'), 'the benches', addressOf(spraying, 'plants'))
        : worked('Spray mixed', sprayShown(spraying), 'benches and sprayer', addressOf(spraying, 'sprayMl')),
    ],
  };
}

function reopensWorking(spraying: Spraying): FoundWorking {
  const { recipe, endsAt, reopensAt, program } = spraying;
  const longest = longestRei(recipe);
  return {
    title: `Reopens after ${recipe.name}`,
    value: reopensAt === null ? text('keep out, not known') : { kind: 'instant', instant: reopensAt },
    rule: 'The longest restricted-entry interval in the mix, in elapsed hours, counted from the planned end. One unknown interval keeps the bench closed. The label governs.',
    steps: [
      entered('Start', { kind: 'instant', instant: spraying.startsAt }, `program ${program.id}`),
      entered('Planned end', { kind: 'instant', instant: endsAt }, `${showMinutes(program.duration)} after the start`),
      ...recipe.ingredients.map(({ product }) =>
        entered(
          `REI of ${product.name}`,
          product.label.rei === null
            ? { kind: 'unknown', because: 'No interval was entered from its label.' }
            : { kind: 'minutes', minutes: product.label.rei },
          `label of ${product.name}`,
        ),
      ),
      entered(
        'Longest interval',
        longest === null
          ? { kind: 'unknown', because: 'One of them is unknown.' }
          : { kind: 'minutes', minutes: longest },
        'the intervals above',
      ),
    ],
  };
}
