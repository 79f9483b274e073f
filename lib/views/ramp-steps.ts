import type { Day } from '@/shared/time/day';
import { stepsAhead } from '../engine/ahead/container-steps';
import type { ProductAhead } from '../engine/ahead/plan';
import type { Container } from '../engine/shop';
import type { Fig } from './figures';
import type { House } from './house';
import { daysOf, inOrderOfUse } from './stock-ramp';

/** What happens to a product on a day: a spraying asks for some, and may not get all of it; some arrives, or is wasted. */
export type RampEvent =
  | { kind: 'sprayed'; recipe: string; amount: Fig; short: Fig | null }
  | { kind: 'arrives' | 'wasted'; container: string; amount: Fig };

/** A day on which something happens, and what is left at its end, in all and in each container. */
export type RampStep = { day: Day; events: RampEvent[]; left: Fig; inEach: Fig[] };

/** The run-out of a product in figures: what is there now, then every step of it. */
export type RampSteps = {
  containers: { key: string; name: string }[];
  opening: { left: Fig; inEach: (Fig | null)[] };
  steps: RampStep[];
  /** When to order, by when that must have arrived, when it runs out and what will be wasted; null when there is no such day. */
  orderBy: Fig;
  weeks: number | null;
  weeksUntilReorder: Fig;
  /** What an order needs: so many working days of a supplier. Null when nothing has to be ordered, or nobody sells it. */
  lead: { neededOn: Fig; days: number; supplier: string; pack: string } | null;
  runsOutOn: Fig;
  wasteCost: Fig;
};

type Seen = Pick<House, 'plan' | 'figure'>;

/** The same as the run-out ramp, for whoever reads it. */
export function rampSteps(house: Seen, ahead: ProductAhead): RampSteps {
  const { plan, figure } = house;
  const { id } = ahead.product;
  const containers = inOrderOfUse(plan, ahead);
  const its = (...path: string[]) => figure('product', id, ...path);
  const of = (one: Container, ...path: string[]) => figure('container', one.lot, one.place, ...path);
  const demands = demandsOf(house, ahead);
  const days = [...new Set([...daysOf(plan, containers), ...demands.keys()])].sort();
  return {
    containers: containers.map((one) => ({ key: `${one.lot} ${one.place}`, name: nameOf(one) })),
    opening: {
      left: its('onHand'),
      inEach: containers.map((one) => (one.receivedOn <= plan.today ? of(one, 'remaining') : null)),
    },
    steps: days.map((day) => ({
      day,
      events: [...containers.flatMap((one) => movesOf(house, one, day)), ...(demands.get(day) ?? [])],
      left: its('left', day),
      inEach: containers.map((one) => of(one, 'left', day)),
    })),
    ...whenOf(its, ahead),
  };
}

const nameOf = ({ packText, lot, place }: Container): string =>
  `${packText}, lot ${lot}${place > 0 ? `, no. ${place + 1}` : ''}`;

/** What sprayings ask of a product, by their day, be it there or not. */
function demandsOf({ plan, figure }: Seen, { product }: ProductAhead): Map<Day, RampEvent[]> {
  const demands = new Map<Day, RampEvent[]>();
  for (const { program, recipe, date, lines } of plan.sprayings) {
    for (const [number, { ingredient, short }] of lines.entries()) {
      if (ingredient.product !== product) continue;
      const of = (what: string) => figure('spraying', program.id, date, 'line', number, what);
      const event: RampEvent = {
        ...{ kind: 'sprayed', recipe: recipe.name },
        ...{ amount: of('amount'), short: short > 0 ? of('short') : null },
      };
      demands.set(date, [...(demands.get(date) ?? []), event]);
    }
  }
  return demands;
}

const movesOf = ({ plan, figure }: Seen, one: Container, day: Day): RampEvent[] =>
  (stepsAhead(plan).get(one) ?? []).flatMap(({ on, kind }): RampEvent[] => {
    if (on !== day || kind === 'drawn') return [];
    const what = kind === 'wasted' ? 'wasted' : 'remaining';
    return [{ kind, container: nameOf(one), amount: figure('container', one.lot, one.place, what) }];
  });

function whenOf(its: (what: string) => Fig, { reorder }: ProductAhead) {
  return {
    orderBy: its('orderBy'),
    weeks: reorder?.weeks ?? null,
    weeksUntilReorder: its('weeksUntilReorder'),
    lead: reorder && {
      neededOn: its('neededOn'),
      days: reorder.offer.leadDays ?? 0,
      supplier: reorder.offer.supplier.name,
      pack: reorder.offer.packText,
    },
    runsOutOn: its('runsOutOn'),
    wasteCost: its('wasteCost'),
  };
}
