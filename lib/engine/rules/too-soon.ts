import type { Bench, Product } from '../shop';
import type { Flag } from './flag';
import { beforeNear, benchNames, counted, dayNear, heldIn } from './in-words';
import { flagSpraying } from './raise';
import { benchMemory, productsOf, type Turn, turnsOf } from './turns';
import type { Unflagged } from './unflagged';

/**
 * A product again on a bench before the days between applications that its label asks for have passed.
 *
 * Looks at  each bench by itself: the latest application on record, or earlier planned spraying, with the product, or
 *           with a stock solution that is made from it
 * Fires     when fewer whole days lie between the two dates than the label asks for (the same date: 0 days); once for
 *           a spraying and product, with every bench concerned
 * Severity  stop
 * Cleared   by moving the spraying to the day the label allows, or by another product
 */
export function tooSoon(plan: Unflagged, turns: Turn[] = turnsOf(plan)): Flag[] {
  const spaced = productsOf((product) => daysBetween(product) > 0, isStricter);
  const latestOn = benchMemory(() => new Map<Product, Turn>());
  const flags: Flag[] = [];
  for (const turn of turns) {
    for (const product of spaced(turn.recipe)) {
      const least = daysBetween(product);
      const early: Early[] = [];
      for (const spot of turn.spots) {
        const latest = latestOn(spot);
        const before = latest.get(product);
        if (before && turn.day - before.day < least) early.push({ bench: spot.bench, before });
        latest.set(product, turn);
      }
      if (!turn.planned || early.length === 0) continue;
      const about = { rule: 'too-soon', severity: 'stop', benches: early.map(({ bench }) => bench) } as const;
      flags.push(
        flagSpraying(
          turn.planned,
          { ...about, product },
          () => heldIn(turn.recipe, product) + messageFor(plan, product, least, turn, early),
        ),
      );
    }
  }
  return flags;
}

const isStricter = (source: Product, solution: Product): boolean => daysBetween(source) >= daysBetween(solution);

const daysBetween = ({ label }: Product): number => label.minDaysBetween ?? 0;

type Early = { bench: Bench; before: Turn };

function messageFor(plan: Unflagged, { name }: Product, least: number, turn: Turn, early: Early[]): string {
  const facts = [...new Set(early.map(({ before }) => before))].map((before) => {
    const where = benchNames(early.filter((one) => one.before === before).map(({ bench }) => bench));
    return `${name} ${before.planned ? 'is planned' : 'was sprayed'} on ${where} ${beforeNear(plan, turn.day, before.day)}.`;
  });
  const clearDay = Math.max(...early.map(({ before }) => before.day)) + least;
  return `${facts.join(' ')} Its label asks for ${counted(least, 'day')} between. Move this to ${dayNear(plan, clearDay)} or later.`;
}
