import { minus, plus, type Stock, stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { Container } from '../shop';
import type { Projection, Spraying } from './plan';
import { horizonEnd } from './sprayings';

/** What happens to a container on a day ahead: it arrives, a spraying draws from it, or what is left in it is wasted. */
export type ContainerStep = { on: Day; amount: Stock } & (
  | { kind: 'arrives' | 'wasted' }
  /** The line of the recipe that it is drawn for, from 0. */
  | { kind: 'drawn'; spraying: Spraying; line: number }
);

const found = new WeakMap<Projection, ReadonlyMap<Container, ContainerStep[]>>();

/** What happens to each container in the weeks ahead, in the order of the days; worked out once for each projection. */
export function stepsAhead(plan: Projection): ReadonlyMap<Container, ContainerStep[]> {
  const steps = found.get(plan) ?? stepsIn(plan);
  found.set(plan, steps);
  return steps;
}

function stepsIn({ shop, today, weeks, sprayings, products }: Projection): Map<Container, ContainerStep[]> {
  const steps = new Map<Container, ContainerStep[]>();
  const add = (container: Container, step: ContainerStep) => {
    const its = steps.get(container);
    if (its) its.push(step);
    else steps.set(container, [step]);
  };
  const last = horizonEnd(today, weeks);
  for (const one of shop.containers) {
    if (one.receivedOn > today && one.receivedOn <= last)
      add(one, { on: one.receivedOn, kind: 'arrives', amount: one.remaining });
  }
  for (const spraying of sprayings) {
    for (const [line, { draws }] of spraying.lines.entries()) {
      for (const { container, amount } of draws)
        add(container, { on: spraying.date, kind: 'drawn', amount, spraying, line });
    }
  }
  for (const { wastes } of products) {
    for (const { container, on, amount } of wastes) add(container, { on, kind: 'wasted', amount });
  }
  return steps;
}

/** What is left in a container at the end of a day ahead; nothing before it arrives. */
export function leftOn(plan: Projection, container: Container, day: Day): Stock {
  let left = container.receivedOn <= plan.today ? container.remaining : stock(0);
  for (const { on, kind, amount } of stepsAhead(plan).get(container) ?? []) {
    if (on > day) continue;
    left = kind === 'arrives' ? plus(left, amount) : minus(left, amount);
  }
  return left;
}
