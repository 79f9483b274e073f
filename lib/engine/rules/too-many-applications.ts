import type { Bench, Product } from '../shop';
import type { Flag } from './flag';
import { alikeInWords, counted, dayNear, heldIn } from './in-words';
import { flagSpraying } from './raise';
import { benchMemory, productsOf, type Turn, turnsOf } from './turns';
import type { Unflagged } from './unflagged';

/**
 * A product more often on a bench than its label allows in a year.
 *
 * Looks at  each bench by itself: applications on record and planned sprayings with the product, in order, in the 365 days
 *           that end with the spraying's date, itself counted. One of a stock solution is one of each product that it is
 *           made from
 * Fires     when they are more than the label's most applications in a year; once for a spraying and product, with
 *           every bench concerned
 * Severity  stop
 * Cleared   by leaving the spraying out, by another product, or by moving it until earlier ones are a year back
 */
export function tooManyApplications(plan: Unflagged, turns: Turn[] = turnsOf(plan)): Flag[] {
  const limited = productsOf(({ label }) => label.maxApplicationsPerYear !== null, isStricter);
  const daysOn = benchMemory(() => new Map<Product, Days>());
  const flags: Flag[] = [];
  for (const turn of turns) {
    for (const product of limited(turn.recipe)) {
      const most = mostOf(product);
      const over: Over[] = [];
      for (const spot of turn.spots) {
        const days = addDay(daysOn(spot), product, turn.day);
        const count = days.all.length - days.first;
        if (count > most)
          over.push({ bench: spot.bench, count, clearDay: (days.all.at(-1 - most) ?? turn.day) + YEAR });
      }
      if (!turn.planned || over.length === 0) continue;
      const about = {
        rule: 'too-many-applications',
        severity: 'stop',
        benches: over.map(({ bench }) => bench),
      } as const;
      flags.push(
        flagSpraying(
          turn.planned,
          { ...about, product },
          () => heldIn(turn.recipe, product) + messageFor(plan, product, most, over),
        ),
      );
    }
  }
  return flags;
}

const isStricter = (source: Product, solution: Product): boolean => mostOf(source) <= mostOf(solution);

const mostOf = ({ label }: Product): number => label.maxApplicationsPerYear ?? Number.POSITIVE_INFINITY;

const YEAR = 365;

/** The days of a product's applications on a bench, in order, and which is the first that lies in the last 365. */
type Days = { all: number[]; first: number };
/** `clearDay` is the first day on which the application would be one of those allowed, as far as earlier ones go. */
type Over = { bench: Bench; count: number; clearDay: number };

function addDay(kept: Map<Product, Days>, product: Product, day: number): Days {
  let days = kept.get(product);
  if (!days) {
    days = { all: [], first: 0 };
    kept.set(product, days);
  }
  days.all.push(day);
  while ((days.all[days.first] ?? day) <= day - YEAR) days.first += 1;
  return days;
}

function messageFor(plan: Unflagged, { name }: Product, most: number, over: Over[]): string {
  const times = alikeInWords(over, ({ count }) => `number ${count}`);
  const fact = `This would be application ${times} of ${name} within ${YEAR} days`;
  if (most === 0) return `${fact}; its label allows none. Leave it out, or use another product.`;
  const clearDay = dayNear(plan, Math.max(...over.map((one) => one.clearDay)));
  return `${fact}; its label allows ${counted(most, 'application')} in a year. Leave it out, use another product, or move it to ${clearDay} or later, when enough of the earlier ones are a year back.`;
}
