import { atOnce, eachInSteps, type Steps } from '@/shared/steps';
import { dayNumber } from '@/shared/time/day';
import { type Instant, instantOf, isInstant } from '@/shared/time/instant';
import { dayOf, type Zone } from '@/shared/time/zone';
import type { Spraying } from '../ahead/plan';
import { countingApplications } from '../keepout/counting';
import { reopensAfter } from '../keepout/reopening';
import type { Application, Bench, Product, Recipe, Shop } from '../shop';
import { sourcesOf, withSources } from '../strength/sources';
import type { Unflagged } from './unflagged';

/** Benches get their turn of spray: as recorded, or as planned. */
export type Turn = {
  recipe: Recipe;
  /** Each bench once. */
  spots: readonly Spot[];
  startsAt: Instant;
  /** The number of the day it starts on, on the shop's clock. */
  day: number;
  /** Null when nobody can say. */
  reopensAt: Instant | null;
  /** Null when it is a record. */
  planned: Spraying | null;
};

/** A bench with a number, the same in every turn, by which rules remember it. */
export type Spot = { bench: Bench; number: number };

/**
 * Every application on record and every planned spraying, in the order they start; at the same moment records first,
 * then as planned. Rules that look back walk this once, with what they remember of each bench.
 */
export const turnsOf = (plan: Unflagged): Turn[] => atOnce(turnsInSteps(plan));

/** So many records are looked at between two pauses. */
const FEW_RECORDS = 500;

/** The same with pauses. */
export function* turnsInSteps({ shop, sprayings }: Unflagged): Steps<Turn[]> {
  const spotsOf = spotsBy();
  const counting = countingApplications(shop);
  const records = yield* eachInSteps(counting, FEW_RECORDS, (one) => recordedTurn(shop, one, spotsOf));
  const planned = sprayings.map((spraying) => plannedTurn(spraying, spotsOf));
  return [...records, ...planned].sort((a, b) => a.startsAt - b.startsAt);
}

/** Numbers benches as they are met. A program's list of benches is looked up once, however often it is sprayed. */
function spotsBy(): SpotsOf {
  const spots = new Map<string, Spot>();
  const spotOf = (bench: Bench): Spot => {
    const spot = spots.get(bench.id) ?? { bench, number: spots.size };
    spots.set(bench.id, spot);
    return spot;
  };
  const known = new Map<Bench[], readonly Spot[]>();
  return (benches) => {
    const before = known.get(benches);
    if (before) return before;
    const found = [...new Set(benches.map(spotOf))];
    known.set(benches, found);
    return found;
  };
}

type SpotsOf = (benches: Bench[]) => readonly Spot[];

function recordedTurn({ zone }: Shop, application: Application, spotsOf: SpotsOf): Turn {
  const { recipe, benches } = application;
  const { startsAt, day, reopensAt } = timesOf(zone, application);
  return { recipe, spots: spotsOf(benches), startsAt, day, reopensAt, planned: null };
}

type Times = Pick<Turn, 'startsAt' | 'day' | 'reopensAt'>;
const known = new WeakMap<Application, Times & { zone: Zone }>();

/** When a record began and reopens its benches: it never changes, and every plan and every mix asks. */
function timesOf(zone: Zone, application: Application): Times {
  const before = known.get(application);
  if (before?.zone === zone) return before;
  const { startedAt } = application;
  const [startsAt, day] = isInstant(startedAt) ? [startedAt, dayNumber(dayOf(zone, startedAt))] : LONG_AGO;
  const times = { zone, startsAt, day, reopensAt: reopensAfter(application) };
  known.set(application, times);
  return times;
}

/** 1970-01-02. A start that cannot be read may be any time ago, and such a record never reopens a bench. */
const LONG_AGO: readonly [Instant, number] = [instantOf(86_400_000), 1];

function plannedTurn(planned: Spraying, spotsOf: SpotsOf): Turn {
  const { program, recipe, date, startsAt, reopensAt } = planned;
  return { recipe, spots: spotsOf(program.benches), startsAt, day: dayNumber(date), reopensAt, planned };
}

/**
 * What is in a recipe, each product once, worked out once for each recipe. A stock solution brings what it is made from:
 * the limits of those labels count its applications, too.
 *
 * Takes   which products matter, and whether the limit of a source is at least as strict as that of its solution: then
 *         the source is said alone, since whatever the solution breaks, the source breaks
 */
export function productsOf(
  of: (product: Product) => boolean,
  isStricter: (source: Product, solution: Product) => boolean = () => false,
): (recipe: Recipe) => readonly Product[] {
  const isSaid = (solution: Product): boolean =>
    withSources(solution).some(
      (source) => source !== solution && of(source) && isStricter(source, solution) && !sourcesOf(source).has(solution),
    );
  const known = new Map<Recipe, readonly Product[]>();
  return (recipe) => {
    const before = known.get(recipe);
    if (before) return before;
    const products = [...new Set(recipe.ingredients.flatMap(({ product }) => withSources(product)))].filter(
      (product) => of(product) && !isSaid(product),
    );
    known.set(recipe, products);
    return products;
  };
}

/** What a rule remembers of each bench: blank at first, then whatever the rule has put there. */
export function benchMemory<T>(blank: () => T): (spot: Spot) => T {
  const kept: T[] = [];
  return ({ number }) => {
    const known = kept[number];
    if (known !== undefined) return known;
    const fresh = blank();
    kept[number] = fresh;
    return fresh;
  };
}
