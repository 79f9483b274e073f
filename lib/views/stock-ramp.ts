import { addDays, type Day, dayNumber } from '@/shared/time/day';
import type { ProductAhead } from '../engine/ahead/plan';
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
  /** The day a late order would be needed by, where the band of the lead time ends. */
  neededOn: number | null;
};

/**
 * The run-out of one product as steps.
 *
 * Gives   one point for today's opening, one for every day on which something changes, one for the last day; amounts
 *         in µL or mg, one for each container in the order in which they die
 */
export function stockRamp({ plan }: House, ahead: ProductAhead): Ramp {
  const containers = inOrderOfUse(plan, ahead);
  const left = new Map(containers.map((one) => [one, one.receivedOn <= plan.today ? Number(one.remaining) : 0]));
  const changes = changesOf(plan, ahead, containers);
  const dying = new Map(ahead.wastes.map(({ container, amount }) => [container, Number(amount)]));
  const snapshot = (day: Day): RampPoint => {
    const held = containers.map((one) => left.get(one) ?? 0);
    const doomed = containers.map((one, place) => Math.min(dying.get(one) ?? 0, held[place] ?? 0));
    const used = held.map((amount, place) => amount - (doomed[place] ?? 0));
    return { day, number: dayNumber(day), left: held, used, doomed };
  };
  const points = [snapshot(plan.today)];
  for (const day of [...new Set(changes.map(({ on }) => on))].sort()) {
    for (const { on, container, by } of changes) {
      if (on === day) left.set(container, (left.get(container) ?? 0) + by);
    }
    points.push(snapshot(day));
  }
  points.push(snapshot(addDays(plan.today, 7 * plan.weeks - 1)));
  const { runsOutOn, reorder, product } = ahead;
  return {
    containers: containers.map((one) => ({
      key: `${one.lot} ${one.place}`,
      name: one.packText,
      isDoomed: (dying.get(one) ?? 0) > 0,
    })),
    points,
    form: product.form,
    liquid: liquidOf(product),
    runsOut: runsOutOn && dayNumber(runsOutOn),
    orderBy: reorder && dayNumber(reorder.by),
    neededOn: reorder && dayNumber(reorder.neededOn),
  };
}

/** The containers of the product that hold something in the weeks ahead, the first to be used first. */
function inOrderOfUse(plan: House['plan'], ahead: ProductAhead): Container[] {
  const used = plan.sprayings.flatMap(({ lines }) => lines.flatMap(({ draws }) => draws)).map((draw) => draw.container);
  const all = plan.shop.containers.filter((one) => one.product === ahead.product && one.remaining > 0);
  const firstUse = (one: Container) => (used.includes(one) ? used.indexOf(one) : used.length);
  return all.sort((a, b) => firstUse(a) - firstUse(b));
}

type Change = { on: Day; container: Container; by: number };

function changesOf(plan: House['plan'], ahead: ProductAhead, containers: Container[]): Change[] {
  const draws = plan.sprayings.flatMap(({ date, lines }) =>
    lines
      .filter(({ ingredient }) => ingredient.product === ahead.product)
      .flatMap((line) => line.draws.map(({ container, amount }): Change => ({ on: date, container, by: -amount }))),
  );
  const wastes = ahead.wastes.map(({ on, container, amount }): Change => ({ on, container, by: -amount }));
  const arrivals = containers
    .filter(({ receivedOn }) => receivedOn > plan.today)
    .map((container): Change => ({ on: container.receivedOn, container, by: container.remaining }));
  return [...arrivals, ...draws, ...wastes];
}
