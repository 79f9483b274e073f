import { dayNumber } from '@/shared/time/day';
import type { Plan } from '../ahead/plan';
import { benchNames, counted, dayNear } from '../rules/in-words';
import { benchMemory, productsOf, turnsOf } from '../rules/turns';
import type { Bench, Product } from '../shop';
import { type Alert, keyOf } from './alert';

/**
 * Products whose label allows only so many applications in a year, of which a bench has had all, or all but one.
 *
 * Looks at  applications on record in the 365 days that end today, bench by bench; those of a stock solution count for
 *           what it is made from
 * Fires     when one is left, and when none is
 * Once      for each application that brought it there, with every bench that it did so on
 */
export function limitAlerts(plan: Plan): Alert[] {
  const near = new Map<string, Near>();
  for (const { bench, days } of sprayedDays(plan)) {
    for (const [product, those] of days) note(near, plan, bench, product, those);
  }
  return [...near].map(([key, one]) => ({
    ...{ key, kind: 'label-limit', severity: one.days.length >= one.most ? 'warn' : 'note' },
    sentence: sentenceOf(plan, one),
  }));
}

const YEAR = 365;

/** The days on record, in order, on which a bench had each product with a limit. */
type Sprayed = { bench: Bench; days: Map<Product, number[]> };

function sprayedDays(plan: Plan): Sprayed[] {
  const limited = productsOf(({ label }) => label.maxApplicationsPerYear !== null);
  const all: Sprayed[] = [];
  const daysOn = benchMemory((): { sprayed: Sprayed | null } => ({ sprayed: null }));
  for (const { planned, day, recipe, spots } of turnsOf(plan)) {
    if (planned !== null || day > dayNumber(plan.today)) continue;
    for (const spot of spots) {
      const memory = daysOn(spot);
      if (memory.sprayed === null) {
        memory.sprayed = { bench: spot.bench, days: new Map() };
        all.push(memory.sprayed);
      }
      const { days } = memory.sprayed;
      for (const product of limited(recipe)) days.set(product, [...(days.get(product) ?? []), day]);
    }
  }
  return all;
}

/** Benches of which the same is to be told; `days` are those of the year that ends today. */
type Near = { product: Product; benches: Bench[]; most: number; days: number[] };

function note(near: Map<string, Near>, plan: Plan, bench: Bench, product: Product, all: number[]): void {
  const most = product.label.maxApplicationsPerYear ?? Number.POSITIVE_INFINITY;
  const within = (end: number) => all.filter((day) => day > end - YEAR && day <= end);
  const days = within(dayNumber(plan.today));
  const last = days.at(-1);
  if (last === undefined || days.length < most - 1) return;
  // Named by the year that the last one ended: when earlier ones are a year back, it is no other matter.
  const key = keyOf('label-limit', product.id, most, within(last).join('-'));
  const known = near.get(key);
  if (known) known.benches.push(bench);
  else near.set(key, { product, benches: [bench], most, days });
}

function sentenceOf(plan: Plan, { product, benches, most, days }: Near): string {
  const had = `${benchNames(benches)} had ${counted(days.length, 'application')} of ${product.name} in ${YEAR} days`;
  if (days.length < most) return `${had}; one is left by its label.`;
  const first = days.at(-most);
  const until = first === undefined ? '' : ` until ${dayNear(plan, first + YEAR)}, as far as the records go`;
  return `${had}, and its label allows ${most}: none is left${until}.`;
}
