import { minus } from '@/shared/quantity/amounts';
import { addDays, type Day, readDay } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { type ContainerStep, leftOn, stepsAhead } from '../ahead/container-steps';
import type { Plan, Waste } from '../ahead/plan';
import { costOut } from '../ledger/draw-cost';
import { lastUsableDay } from '../ledger/last-usable-day';
import { firstBy } from '../looked-up';
import type { Container } from '../shop';
import { bottleName } from './line-figures';
import { entered, type FoundWorking, figureAddress, money, type Shown, type Step, text, worked } from './shown';

const containerAt = firstBy(({ lot, place }: Container) => `${place} ${lot}`);

/** The working of one figure of a container: `LOT/PLACE/FIGURE`, or `LOT/PLACE/left/DAY`. */
export function containerWorking(plan: Plan, [lot, place, figure, day]: string[]): FoundWorking | null {
  const container = containerAt(plan.shop.containers, `${place} ${lot}`);
  if (!container) return null;
  switch (figure) {
    case 'remaining':
      return remainingWorking(container);
    case 'lastUsableDay':
      return lastDayWorking(container);
    case 'value':
      return valueWorking(container);
    case 'left':
      return leftWorking(plan, container, day);
    case 'wasted':
      return wastedWorking(plan, container);
    case 'wasteCost':
      return wasteCostWorking(plan, container);
    default:
      return null;
  }
}

const stockShown = (container: Container, amount: Container['size']): Shown => ({
  kind: 'stock',
  amount,
  form: container.product.form,
});

const remainingWorking = (container: Container): FoundWorking => ({
  title: `Left in ${bottleName(container)}`,
  value: stockShown(container, container.remaining),
  rule: 'What it was received with, less everything that left it since. The sum of its movements, and nothing else.',
  steps: [
    entered('It held', stockShown(container, container.size), `pack ${container.packText}, lot ${container.lot}`),
    entered('Out of it', stockShown(container, minus(container.size, container.remaining)), 'its movements'),
  ],
});

function lastDayWorking(container: Container): FoundWorking {
  const last = lastUsableDay(container);
  return {
    title: `Last usable day of ${bottleName(container)}`,
    value: last === null ? text('not known') : { kind: 'day', day: last },
    rule: 'The earlier of the printed expiry (without one: the day received + unopened life) and, once opened, the day opened + opened life. That day is still usable.',
    steps: lastDaySteps(container),
  };
}

function lastDaySteps({ expiresOn, receivedOn, openedOn, product }: Container): Step[] {
  const { unopenedDays, openedDays } = product.shelfLife;
  const steps: Step[] = [];
  if (expiresOn !== null) steps.push(entered('Printed expiry', { kind: 'day', day: expiresOn }, 'the bottle'));
  else if (unopenedDays !== null) {
    const day = addDays(receivedOn, unopenedDays);
    steps.push(entered('Unopened life ends', { kind: 'day', day }, `received ${receivedOn} + ${unopenedDays} days`));
  } else steps.push(entered('Printed expiry', { kind: 'unknown', because: 'Never entered.' }, 'the bottle'));
  if (openedOn === null) return [...steps, entered('Opened', text('not yet'), 'the bottle')];
  if (openedDays === null) {
    const unknown: Shown = { kind: 'unknown', because: 'Never entered.' };
    return [...steps, entered('Opened life', unknown, `product ${product.name}`)];
  }
  const day = addDays(openedOn, openedDays);
  return [...steps, entered('Opened life ends', { kind: 'day', day }, `opened ${openedOn} + ${openedDays} days`)];
}

/** What is left in a container at the price that was paid for it; null when that was never entered. */
export const valueLeft = ({ paid, size, remaining }: Container) =>
  paid === null ? null : costOut(paid, size, minus(size, remaining), size);

function valueWorking(container: Container): FoundWorking {
  const { paid, lot, place } = container;
  return {
    title: `Value of what is left in ${bottleName(container)}`,
    value: money(valueLeft(container), 'What was paid for it was never entered.'),
    rule: 'What was paid for the bottle, less the share of everything that left it. Draws, waste and this value add up to the price.',
    steps: [
      entered('Paid', money(paid, 'Never entered.'), `lot ${lot}, freight not in it`),
      entered('It held', stockShown(container, container.size), `pack ${container.packText}`),
      worked(
        'Left in it',
        stockShown(container, container.remaining),
        'its movements',
        figureAddress('container', lot, place, 'remaining'),
      ),
    ],
  };
}

function wasteOf({ products }: Plan, container: Container): Waste | null {
  const wastes = known.get(products) ?? new Map<Container, Waste>();
  if (!known.has(products)) {
    for (const waste of products.flatMap((ahead) => ahead.wastes).reverse()) wastes.set(waste.container, waste);
  }
  known.set(products, wastes);
  return wastes.get(container) ?? null;
}

/** What each container of a plan will have left over, found once for all of them. */
const known = new WeakMap<Plan['products'], Map<Container, Waste>>();

/** What the sprayings planned until a day take from a container, one by one. */
const takenFrom = (plan: Plan, container: Container, until: Day | null): Step[] =>
  (stepsAhead(plan).get(container) ?? []).flatMap((step) =>
    step.kind === 'drawn' && (until === null || step.on <= until) ? takenStep(container, step) : [],
  );

const takenStep = (
  container: Container,
  { spraying: { program, recipe, date }, line, amount }: Extract<ContainerStep, { kind: 'drawn' }>,
): Step =>
  worked(
    `Taken for ${recipe.name}`,
    stockShown(container, amount),
    showDay(date),
    figureAddress('spraying', program.id, date, 'line', line, 'used'),
  );

function leftWorking(plan: Plan, container: Container, written: string | undefined): FoundWorking | null {
  const reading = readDay(written ?? '');
  if (!reading.ok) return null;
  const day = reading.value;
  const waste = wasteOf(plan, container);
  const isWasted = waste !== null && waste.on <= day;
  return {
    title: `Left in ${bottleName(container)} at the end of ${showDay(day)}`,
    value: stockShown(container, leftOn(plan, container, day)),
    rule: 'What is in it today, or from the day on which it arrives, − what the sprayings planned until then take from it − what is wasted by then.',
    get steps() {
      return [
        ...thereStep(plan, container, day),
        ...takenFrom(plan, container, day),
        ...(isWasted ? [wastedStep(container, waste)] : []),
      ];
    },
  };
}

/** What is in it before anything ahead is taken, or that it is not there yet. */
function thereStep({ today }: Plan, container: Container, day: Day): Step[] {
  const { receivedOn, lot } = container;
  if (receivedOn <= today) return [remainingStep(container, 'its movements')];
  const arrives = entered('Arrives', { kind: 'day', day: receivedOn }, `lot ${lot}`);
  return receivedOn <= day ? [arrives, remainingStep(container, 'as it arrives')] : [arrives];
}

const remainingStep = (container: Container, from: string): Step =>
  worked(
    'In it',
    stockShown(container, container.remaining),
    from,
    figureAddress('container', container.lot, container.place, 'remaining'),
  );

const wastedStep = (container: Container, { on, amount }: Waste): Step =>
  worked(
    'Wasted',
    stockShown(container, amount),
    showDay(on),
    figureAddress('container', container.lot, container.place, 'wasted'),
  );

function wastedWorking(plan: Plan, container: Container): FoundWorking | null {
  const waste = wasteOf(plan, container);
  if (!waste) return null;
  const { lot, place } = container;
  return {
    title: `What will be wasted of ${bottleName(container)}`,
    value: stockShown(container, waste.amount),
    rule: 'What is left in it − what the sprayings planned until its last usable day take from it. It counts as waste on the day after, or today when that day is past.',
    steps: [
      worked(
        'Left in it',
        stockShown(container, container.remaining),
        'its movements',
        figureAddress('container', lot, place, 'remaining'),
      ),
      ...takenFrom(plan, container, null),
      ...lastDayStep(container),
    ],
  };
}

function lastDayStep(container: Container): Step[] {
  const day = lastUsableDay(container);
  const { lot, place } = container;
  const address = figureAddress('container', lot, place, 'lastUsableDay');
  return day === null ? [] : [worked('Last usable day', { kind: 'day', day }, 'the bottle and the product', address)];
}

function wasteCostWorking(plan: Plan, container: Container): FoundWorking | null {
  const waste = wasteOf(plan, container);
  if (!waste) return null;
  const { lot, place, paid } = container;
  return {
    title: `Cost of what will be wasted of ${bottleName(container)}`,
    value: money(waste.cost, 'What was paid for it was never entered.'),
    rule: 'What was paid for the bottle, less the share of everything drawn from it until then.',
    steps: [
      entered('Paid', money(paid, 'Never entered.'), `lot ${lot}, freight not in it`),
      entered('It held', stockShown(container, container.size), `pack ${container.packText}`),
      worked(
        'Will be wasted',
        stockShown(container, waste.amount),
        'after its last day',
        figureAddress('container', lot, place, 'wasted'),
      ),
    ],
  };
}
