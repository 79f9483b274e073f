import { minutes as minutesOf, type Stock } from '@/shared/quantity/amounts';
import { type Exact, multiply, ZERO } from '@/shared/quantity/exact';
import { ofEach, wholeNearest } from '@/shared/quantity/rounding';
import { type Load, TooMuchAhead, tooMuchAhead } from '@/shared/shop-file/limits';
import { atOnce, eachInSteps, type Steps } from '@/shared/steps';
import { addDays, type Day } from '@/shared/time/day';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { atClock } from '@/shared/time/zone';
import { groundOf } from '../bench/ground';
import { plantsOn, sprayFor } from '../bench/spray-volume';
import { longestRei } from '../keepout/reopening';
import type { Bench, Ingredient, Program, Recipe, Shop } from '../shop';
import { ratePerMl, stockPerSquareMetre } from '../strength/dose-in-stock';
import type { IngredientLine, Spray, Spraying } from './plan';
import { type Turn, turnsBetween } from './program-turns';

/**
 * Every occurrence of every program from one day to another, in the order they start; at the same moment, in the order
 * of the programs. What each takes from the shelf is not known yet: its lines carry amounts, but no draws and no cost.
 *
 * Takes   the first and the last day, both included
 * Throws  TooMuchAhead when the programs come to more than a shop file may hold: one that was kept before there were limits
 */
export const sprayingsBetween = (shop: Shop, from: Day, to: Day): Spraying[] =>
  atOnce(sprayingsInSteps(shop, from, to));

/** So many programs are followed between two pauses. */
const FEW_PROGRAMS = 20;

/** The same with pauses. */
export function* sprayingsInSteps(shop: Shop, from: Day, to: Day): Steps<Spraying[]> {
  const turns = yield* turnsOfAll(shop, from, to);
  yield;
  const all = (yield* eachInSteps(turns, FEW_PROGRAMS, ([program, its]) =>
    sprayingsOfTurns(shop, program, its),
  )).flat();
  // The sort is stable, so that programs which start at the same moment keep the shop's order.
  return all.sort((a, b) => a.startsAt - b.startsAt);
}

type TurnsOf = readonly [Program, readonly Turn[]];

/** The turns of every program, as long as they are few enough: what is made of each takes a thousand bytes and more. */
function turnsOfAll(shop: Shop, from: Day, to: Day): Steps<TurnsOf[]> {
  const load: Load = { sprayings: 0, benches: 0, ingredients: 0, fills: 0 };
  return eachInSteps(shop.programs, FEW_PROGRAMS, (program): TurnsOf => {
    const turns = turnsBetween(program, from, to);
    load.sprayings += turns.length;
    load.benches += turns.length * program.benches.length;
    load.ingredients += turns.length * Math.max(0, ...program.recipes.map(({ ingredients }) => ingredients.length));
    const said = tooMuchAhead(load);
    if (said !== null) throw new TooMuchAhead(said);
    return [program, turns];
  });
}

/** What one program does each time with one of its recipes: it never changes, so it is worked out once. */
type Batch = { recipe: Recipe; amounts: (Stock | null)[] };

/** The sprayings that some turns of a program are, in the order of the turns. */
export function sprayingsOfTurns(shop: Shop, program: Program, turns: readonly Turn[]): Spraying[] {
  const spray = sprayFor(program.benches, program.sprayer ?? shop.sprayer);
  const plants = plantsOn(program.benches);
  const batches = program.recipes.map((recipe) => batchOf(recipe, spray, program.benches));
  const labourCost = shop.wagePerHour === null ? null : ofEach(shop.wagePerHour, program.duration, minutesOf(60));
  const found: Spraying[] = [];
  for (const { day, index, startMinute } of turns) {
    const batch = batches[index % batches.length];
    if (!batch) throw new RangeError(`program ${program.id} has no recipe`);
    const times = timesOf(shop, program, batch.recipe, { day, startMinute });
    const lines = batch.recipe.ingredients.map((ingredient, line) => newLine(ingredient, batch.amounts[line] ?? null));
    found.push({
      program,
      recipe: batch.recipe,
      occurrence: index,
      date: day,
      ...times,
      spray,
      plants,
      lines,
      materialCost: null,
      labourCost,
    });
  }
  return found;
}

function batchOf(recipe: Recipe, spray: Spray | null, benches: Bench[]): Batch {
  // Where there is nothing to spray, nothing is mixed, however large the bench.
  const area = spray?.fills === 0 ? ZERO : groundOf(benches);
  return { recipe, amounts: recipe.ingredients.map((one) => amountOf(one, spray?.total ?? null, area)) };
}

/**
 * How much of an ingredient goes into a batch: dose × spray, or for a dose per area dose × ground, whatever the spray.
 *
 * Units   mL of spray and m² of ground in; µL of a liquid or mg of a powder out
 * Rounds  once, to the nearest whole, a half up
 * Gives   null when the spray or the ground is unknown, or density, grams per teaspoon or the strength that it takes
 */
export function amountOf({ dose, product }: Ingredient, sprayMl: Exact | null, area: Exact | null): Stock | null {
  const perUnit = dose.kind === 'perArea' ? stockPerSquareMetre(dose, product) : ratePerMl(dose, product);
  const units = dose.kind === 'perArea' ? area : sprayMl;
  return perUnit && units && wholeNearest<Stock>(multiply(perUnit, units));
}

type Start = { day: Day; startMinute: number };

function timesOf(shop: Shop, program: Program, recipe: Recipe, { day, startMinute }: Start) {
  const startsAt = atClock(shop.zone, day, startMinute);
  const endsAt = addMinutes(startsAt, program.duration);
  const rei = longestRei(recipe);
  const reopensAt: Instant | null = rei === null ? null : addMinutes(endsAt, rei);
  return { startsAt, endsAt, reopensAt };
}

const NONE = 0 as Stock;

/** A line of a batch before anything is drawn for it. */
export const newLine = (ingredient: Ingredient, amount: Stock | null): IngredientLine => ({
  ingredient,
  amount,
  draws: [],
  short: NONE,
  shortCost: null,
  cost: null,
});

/** The last day of a horizon of whole weeks that begins with a day. */
export const horizonEnd = (today: Day, weeks: number): Day => addDays(today, 7 * weeks - 1);
