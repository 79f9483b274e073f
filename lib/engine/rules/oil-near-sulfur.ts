import type { Bench, Product } from '../shop';
import type { Flag } from './flag';
import { beforeNear, benchNames, counted, dayNear, heldIn, listed } from './in-words';
import { isOil, isSulfur } from './oil-and-sulfur';
import { flagSpraying } from './raise';
import { benchMemory, productsOf, type Turn, turnsOf } from './turns';
import type { Unflagged } from './unflagged';

/**
 * An oil and sulfur too close to each other, which burns leaves.
 *
 * Looks at  each bench by itself: an oil or sulfur, and the latest application on record or earlier planned spraying with
 *           the other of the two; and both in one tank. What counts as either is said in `oil-and-sulfur.ts`
 * Fires     when fewer whole days lie between the two dates than the shop keeps between them; once for a spraying and
 *           product, with every bench concerned; of one tank once, on the oil. With 0 days the shop keeps none apart
 * Severity  stop
 * Cleared   by moving the spraying to the day from which it is far enough, or by taking one of the two out
 * Source    sources keep from 14 to 30 days between them, so none is worked out: the number is the shop's, and the label's
 *           own is kept where it is longer
 */
export function oilNearSulfur(plan: Unflagged, turns: Turn[] = turnsOf(plan)): Flag[] {
  const least = plan.shop.oilSulfurDays;
  if (least === 0) return [];
  // What is one by a source is said by that source alone.
  const [oils, sulfurs] = [productsOf(isOil, () => true), productsOf(isSulfur, () => true)];
  const latestOil = benchMemory((): Last => ({ turn: null }));
  const latestSulfur = benchMemory((): Last => ({ turn: null }));
  const flags: Flag[] = [];
  for (const turn of turns) {
    const [its, others] = [oils(turn.recipe), sulfurs(turn.recipe)];
    if (its.length === 0 && others.length === 0) continue;
    if (turn.planned) {
      flags.push(
        ...its.flatMap((oil) => flagsFor(plan, turn, oil, { before: latestSulfur, with: others }) ?? []),
        ...others.flatMap((sulfur) => flagsFor(plan, turn, sulfur, { before: latestOil, with: [] }) ?? []),
      );
    }
    for (const spot of turn.spots) {
      if (its.length > 0) latestOil(spot).turn = turn;
      if (others.length > 0) latestSulfur(spot).turn = turn;
    }
  }
  return flags;
}

type Last = { turn: Turn | null };
/** What an oil or sulfur meets: the latest of the other on a bench, and the other in its own tank. */
type Met = { before: (spot: Turn['spots'][number]) => Last; with: readonly Product[] };
type Near = { bench: Bench; turn: Turn };

function flagsFor(plan: Unflagged, turn: Turn, product: Product, met: Met): Flag | null {
  const least = plan.shop.oilSulfurDays;
  const inTank = met.with.filter((other) => other !== product);
  const near = turn.spots.flatMap((spot): Near[] => {
    const before = met.before(spot).turn;
    return before && turn.day - before.day < least ? [{ bench: spot.bench, turn: before }] : [];
  });
  if (!turn.planned || (inTank.length === 0 && near.length === 0)) return null;
  const benches = inTank.length > 0 ? turn.spots.map(({ bench }) => bench) : near.map(({ bench }) => bench);
  const about = { rule: 'oil-near-sulfur', severity: 'stop', benches, product } as const;
  return flagSpraying(turn.planned, about, () => messageFor(plan, { turn, product, inTank, near }));
}

type Told = { turn: Turn; product: Product; inTank: Product[]; near: Near[] };

function messageFor(plan: Unflagged, { turn, product, inTank, near }: Told): string {
  const least = plan.shop.oilSulfurDays;
  const facts: string[] = [];
  const held = heldIn(turn.recipe, product);
  if (inTank.length > 0) {
    facts.push(`${product.name} and ${listed(inTank.map(({ name }) => name))} are oil and sulfur in one tank.`);
  }
  for (const before of new Set(near.map((one) => one.turn))) {
    const where = benchNames(near.filter((one) => one.turn === before).map(({ bench }) => bench));
    const when = beforeNear(plan, turn.day, before.day);
    const what = isOil(product) && !isSulfur(product) ? 'sulfur' : 'oil';
    facts.push(
      `${product.name} follows ${what} in ${before.recipe.name}, ${before.planned ? 'planned' : 'sprayed'} on ${where} ${when}.`,
    );
  }
  const rule = `This shop keeps ${counted(least, 'day')} between oil and sulfur on a bench, since together they burn leaves; keep to the label where it asks for more.`;
  return held + [...facts, rule, remedyFor(plan, inTank, near)].join(' ');
}

function remedyFor(plan: Unflagged, inTank: Product[], near: Near[]): string {
  const clear = near.length > 0 ? Math.max(...near.map(({ turn }) => turn.day)) + plan.shop.oilSulfurDays : null;
  const move = clear === null ? '' : `move this to ${dayNear(plan, clear)} or later`;
  if (inTank.length === 0) return `Leave one of the two out, or ${move}.`;
  return move === ''
    ? 'Take one of the two out of this recipe.'
    : `Take one of the two out of this recipe, and ${move}.`;
}
