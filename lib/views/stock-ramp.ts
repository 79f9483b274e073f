import { type Day, dayNumber } from '@/shared/time/day';
import { leftOn, stepsAhead } from '../engine/ahead/container-steps';
import type { Plan, ProductAhead } from '../engine/ahead/plan';
import { horizonEnd } from '../engine/ahead/sprayings';
import type { Container } from '../engine/shop';
import { type Liquid, liquidOf } from './bottle-seen';
import type { House } from './house';

/**
 * What is left in each container at the end of a day on which something changed, and how much of that will be used and
 * how much will die in it, within the weeks ahead.
 */
export type RampPoint = { day: Day; number: number; left: number[]; used: number[]; doomed: number[] };

/** Stock through the weeks ahead, container by container, stepping down at each spraying and at each last day. */
export type Ramp = {
  containers: { key: string; name: string; isDoomed: boolean }[];
  points: RampPoint[];
  form: 'liquid' | 'powder';
  liquid: Liquid;
  runsOut: number | null;
  orderBy: number | null;
  /** The day by which an order must have arrived, where the band of the lead time ends. */
  neededOn: number | null;
};

/**
 * The run-out of one product as steps.
 *
 * Gives   one point for today's opening, one for every day on which something changes, one for the last day; amounts
 *         in µL or mg, one for each container in the order in which they are used
 */
export function stockRamp({ plan }: Pick<House, 'plan'>, ahead: ProductAhead): Ramp {
  const containers = inOrderOfUse(plan, ahead);
  const dying = containers.map((one) => ahead.wastes.find(({ container }) => container === one)?.amount ?? 0);
  const pointOf = (day: Day, left: number[]): RampPoint => {
    const doomed = left.map((amount, place) => Math.min(dying[place] ?? 0, amount));
    const used = left.map((amount, place) => amount - (doomed[place] ?? 0));
    return { day, number: dayNumber(day), left, used, doomed };
  };
  const opening = containers.map((one) => (one.receivedOn <= plan.today ? one.remaining : 0));
  const closing = (day: Day) => containers.map((one): number => leftOn(plan, one, day));
  const last = horizonEnd(plan.today, plan.weeks);
  const { runsOutOn, reorder, product } = ahead;
  return {
    containers: containers.map((one, place) => ({
      key: `${one.lot} ${one.place}`,
      name: one.packText,
      isDoomed: (dying[place] ?? 0) > 0,
    })),
    points: [
      pointOf(plan.today, opening),
      ...[...daysOf(plan, containers), last].map((day) => pointOf(day, closing(day))),
    ],
    form: product.form,
    liquid: liquidOf(product),
    runsOut: runsOutOn && dayNumber(runsOutOn),
    orderBy: reorder && dayNumber(reorder.by),
    neededOn: reorder && dayNumber(reorder.neededOn),
  };
}

/** The containers of the product that hold something in the weeks ahead, the first to be used first. */
export function inOrderOfUse(plan: Plan, { product }: ProductAhead): Container[] {
  const [steps, last] = [stepsAhead(plan), horizonEnd(plan.today, plan.weeks)];
  const firstUse = (one: Container): Day | undefined => steps.get(one)?.find(({ kind }) => kind === 'drawn')?.on;
  return plan.shop.containers
    .filter((one) => one.product === product && one.remaining > 0 && one.receivedOn <= last)
    .map((container) => ({ container, on: firstUse(container) ?? NEVER }))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
    .map(({ container }) => container);
}

const NEVER = '9999-12-31';

/** The days on which something changes in any of these containers. */
export const daysOf = (plan: Plan, containers: readonly Container[]): Day[] => {
  const steps = stepsAhead(plan);
  return [...new Set(containers.flatMap((one) => (steps.get(one) ?? []).map(({ on }) => on)))].sort();
};
