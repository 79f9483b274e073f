import { divide, type Exact, exact, fraction, multiply } from '@/shared/quantity/exact';
import type { Day } from '@/shared/time/day';
import { cheapestOffer, unitPrice } from '../ahead/cheapest-offer';
import { pricedOn } from '../ahead/price-in-force';
import { type Assumed, assumedOfGoods } from '../buying/assumed';
import type { Solver } from '../buying/solver';
import type { Ingredient, Product, Recipe, Shop } from '../shop';
import { strengthIn } from '../strength/strength-of';
import { type BreakEven, breakEvens } from './break-even';
import { type Candidate, candidatesFor, doseNumber, type Wanted, wantedIn } from './candidate';
import { type Season, type SeasonCost, seasonCost, seasonOf } from './season';

/** A candidate with what it costs on three bases: per gram of the substance, per litre of spray, per season. */
export type Priced = Candidate & {
  /** The dose as a number in its unit; null when it cannot be worked out. */
  dose: { dose: Exact; unit: string } | null;
  /** Micros, exact; null when nobody offers it, or its strength is not known. */
  perGram: Exact | null;
  perLitre: Exact | null;
  /** Null when it is not allowed, when nobody offers it, or when an amount is not known. */
  season: SeasonCost | null;
};

/** What could stand in a recipe in the place of a product. */
export type Equivalents = {
  wanted: Wanted;
  season: Season;
  /** The product that stands there now first. */
  candidates: Priced[];
  /** The allowed one that costs least over the season. */
  best: Priced | null;
  breakEven: BreakEven;
  /** What nobody entered about the candidates, and the seasons' costs take for granted. */
  assumed: Assumed[];
};

/**
 * Every product that could bring a recipe's substance at the equal dose, allowed or not and why, and what each costs.
 *
 *   per gram   = price of the cheapest offer per unit ÷ strength
 *   per litre  = price of the cheapest offer per unit × dose
 *   per season = the purchase plan for it alone over what the recipe sprays, from an empty shelf, without waiting
 *
 * Takes    the recipe, the product that stands in it, the first day, the weeks, and a solver
 * Gives    null when the recipe does not have the product, or the product lists no substance
 */
export function equivalentsOf(
  given: Shop,
  asked: { recipe: Recipe; product: Product },
  { today, weeks }: { today: Day; weeks: number },
  solver: Solver,
): Equivalents | null {
  const shop = pricedOn(given, today);
  const wanted = wantedIn(shop, asked.recipe, asked.product);
  if (!wanted) return null;
  const season = seasonOf(shop, asked.recipe, today, weeks);
  const candidates = candidatesFor(shop, wanted).map((one) => priced(shop, wanted, season, one, solver));
  const best = cheapestOf(candidates);
  return {
    ...{ wanted, season, candidates, best },
    breakEven: best ? breakEvens(season, candidates, best, solver) : NO_TURN,
    assumed: assumedOfGoods(shop, new Set(candidates.map(({ product }) => product)), 'without waiting'),
  };
}

const NO_TURN: BreakEven = { flips: [], isWhole: true };

/** What a candidate costs on the three bases. */
function priced(shop: Shop, wanted: Wanted, season: Season, candidate: Candidate, solver: Solver): Priced {
  const { ingredient, allowed } = candidate;
  const cost = allowed && ingredient ? seasonCost(season, ingredient, solver) : null;
  return { ...pricedByUnit(shop, wanted, candidate), season: cost };
}

/** What a candidate costs per gram and per litre, without a season. */
export function pricedByUnit(shop: Shop, wanted: Wanted, candidate: Candidate): Priced {
  const { product, ingredient } = candidate;
  const offer = cheapestOffer(shop.offers.filter((one) => one.product === product));
  const price = offer && unitPrice(offer);
  const strength = strengthIn(product, wanted.substance);
  const dose = ingredient && doseNumber(shop, wanted.recipe, ingredient);
  return {
    ...candidate,
    dose,
    perGram: price && strength && strength.over !== 0n ? divide(multiply(price, THOUSAND), strength) : null,
    perLitre: price && ingredient && perLitre(price, dose),
    season: null,
  };
}

const THOUSAND = exact(1000n);

/** A dose per litre is mL or g, a price is for a µL or a mg; a dose per area has no cost per litre of its own. */
const perLitre = (price: Exact, dose: Priced['dose']): Exact | null =>
  dose?.unit.endsWith('/L') ? multiply(price, multiply(dose.dose, THOUSAND)) : null;

/** The allowed candidate with the lowest season cost; between equals, the first. */
function cheapestOf(candidates: readonly Priced[]): Priced | null {
  return candidates.reduce<Priced | null>((best, one) => {
    if (!one.season) return best;
    return best?.season && best.season.total <= one.season.total ? best : one;
  }, null);
}

/** What was priced when the time was over may be too dear, and is no point of a curve. */
const inTime = (cost: SeasonCost | null): SeasonCost | null => (cost?.inTime ? cost : null);

/** What the season costs with each of some ingredients at so many times its use: for a chart of cost against use. */
export type CurvePoint = { sprayMl: Exact; times: Exact; seasons: (SeasonCost | null)[] };

/**
 * What the season costs with each candidate at other uses than planned: so many steps up to the plan, and as many beyond
 * it up to twice the plan.
 *
 * Takes    the candidates that may be used, in the order in which their costs are wanted
 * Gives    null for what there was no time for; no points when some spraying takes an unknown amount of spray
 */
export function seasonCurve(
  season: Season,
  ingredients: readonly Ingredient[],
  solver: Solver,
  steps = 10,
): CurvePoint[] {
  const { sprayMl } = season;
  if (!sprayMl) return [];
  return Array.from({ length: 2 * steps }, (_, index) => {
    const times = fraction(BigInt(index + 1), BigInt(steps));
    const seasons = ingredients.map((one) => inTime(seasonCost(season, one, solver, times)));
    return { sprayMl: multiply(sprayMl, times), times, seasons };
  });
}
