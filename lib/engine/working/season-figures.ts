import { showNumber } from '@/shared/measure/show';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import { dayFromNumber } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Flip } from '../equivalents/break-even';
import type { CurvePoint, Equivalents, Priced } from '../equivalents/equivalents';
import type { SeasonCost } from '../equivalents/season';
import { atLeast, entered, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';

/** The address of a figure of a candidate that could stand in a recipe. */
export const equivalentAddress = (
  { wanted: { recipe, ingredient } }: Pick<Equivalents, 'wanted'>,
  ...path: (string | number)[]
): string => figureAddress('equivalent', recipe.id, ingredient.product.id, ...path);

const shown = (micros: number) => ({ kind: 'money', micros }) as const;
const sprayShown = ({ season: { sprayMl } }: Pick<Equivalents, 'season'>): Shown =>
  sprayMl ? litres(sprayMl) : { kind: 'unknown', because: NO_SPRAY };

const NO_SPRAY = 'The mL per plant of some plants is not known.';

const litres = (ml: Exact): Shown => ({ kind: 'volume', ml: toNumber(ml) });

/** Why there is no season's cost of a candidate. */
function whyNoSeason({ allowed, reasons }: Priced): string {
  return allowed
    ? 'Nobody offers it, or how much a spraying takes is not known: enter an offer, or what the spraying lacks.'
    : `It is not allowed there. ${reasons.join(' ')}`;
}

const SEASON_RULE =
  'The cheapest purchase plan for it alone, from an empty shelf and without waiting: whole packs + freight + money tied up − what is left and will still be used.';

/** The working of what a season costs with a candidate, as it is planned. */
export function seasonWorking(found: Equivalents, candidate: Priced): FoundWorking {
  const { wanted } = found;
  const sprayed = worked('Sprayed in the season', sprayShown(found), 'as planned', sprayAddress(found));
  return {
    title: `A season of ${wanted.recipe.name} with ${candidate.product.name}`,
    ...costOfSeason(candidate.season, whyNoSeason(candidate)),
    steps: [sprayed, ...stepsOf(found, candidate, candidate.season)],
  };
}

const sprayAddress = (found: Equivalents): string => equivalentAddress(found, 'sprayed');

const NO_TIME = ' There was no time to look through all of them: it may come out cheaper.';

const costOfSeason = (season: SeasonCost | null, because: string): Pick<FoundWorking, 'value' | 'rule'> => ({
  value: season ? { ...shown(season.total), ...atLeast(season.noFreight.length) } : { kind: 'unknown', because },
  rule: season && !season.inTime ? `${SEASON_RULE}${NO_TIME}` : SEASON_RULE,
});

function stepsOf(found: Equivalents, candidate: Priced, season: SeasonCost | null): Step[] {
  if (!season) return [];
  const { product } = candidate;
  const { packs, goods, freight, noFreight, capital, left, needed } = season;
  const never =
    noFreight.length === 0 ? '' : `; that of ${noFreight.join(' and ')} was never entered, and counts nothing`;
  return [
    worked('Equal dose', doseShown(candidate), 'as strong as now', equivalentAddress(found, product.id, 'dose')),
    entered('It takes', { kind: 'stock', amount: needed, form: product.form }, 'dose × spray, each spraying'),
    ...packs.map(({ offer, count, cost }) =>
      entered(`Of the packs, ${count} × ${offer.packText}`, shown(cost), offer.supplier.name),
    ),
    entered('Packs', shown(goods), 'added'),
    entered('Freight', shown(freight), `added${never}`),
    entered('Money tied up', shown(capital), 'added'),
    entered('Left, and still to be used', shown(left), 'taken off'),
  ];
}

export const doseShown = ({ dose }: Priced): Shown =>
  dose
    ? { kind: 'ratio', value: toNumber(dose.dose), unit: dose.unit }
    : { kind: 'unknown', because: 'The strength or density of one of the two is not known.' };

/** The working of what dies of a candidate in a season. */
export const wasteWorking = (candidate: Priced): FoundWorking => ({
  title: `What would die of ${candidate.product.name} in a season`,
  value: money(candidate.season?.wasteCost ?? null, whyNoSeason(candidate)),
  rule: 'What is left in packs after their last usable day within the season, as a part of their price. It is inside the season’s cost.',
  steps: (candidate.season?.packs ?? []).map(({ offer, count, cost }) =>
    entered(`${count} × ${offer.packText}, ${offer.supplier.name}`, shown(cost), 'bought over the season'),
  ),
});

/** The working of what is sprayed of the recipe in the season. */
export const sprayedWorking = ({ season, wanted }: Equivalents): FoundWorking => ({
  title: `What is sprayed of ${wanted.recipe.name} in a season`,
  value: sprayShown({ season }),
  rule: `Every spraying of the recipe in ${season.horizon.days / 7} weeks, added up: whole fills, as they are planned.`,
  steps: season.sprayings.map(({ date, spray }) =>
    entered(
      'Spraying',
      spray ? litres(spray.total) : { kind: 'unknown', because: NO_SPRAY },
      showDay(date, dayFromNumber(season.horizon.start)),
    ),
  ),
});

/** The working of how much is sprayed at another use than planned. */
export function otherUse(found: Equivalents, point: CurvePoint | undefined): FoundWorking | null {
  if (!point) return null;
  return {
    title: 'Another use than planned',
    value: litres(point.sprayMl),
    rule: 'The spray of the season × how many times the plan.',
    steps: [
      worked('Planned', sprayShown(found), 'the season', sprayAddress(found)),
      entered('Times the plan', { kind: 'ratio', value: toNumber(point.times), unit: 'times' }, 'a step of the curve'),
    ],
  };
}

/** The working of what a season of another use costs with a candidate: a point of its curve. */
export function pointWorking(found: Equivalents, candidate: Priced, point: CurvePoint, season: SeasonCost | null) {
  return atOtherUse(found, candidate, season, {
    ml: point.sprayMl,
    from: `${showNumber(toNumber(point.times))} times the plan`,
  });
}

function atOtherUse(
  found: Equivalents,
  candidate: Priced,
  season: SeasonCost | null,
  spray: { ml: Exact; from: string },
): FoundWorking {
  return {
    title: `A season of ${found.wanted.recipe.name} with ${candidate.product.name} at another use`,
    ...costOfSeason(season, 'There was no time to work it out.'),
    steps: [entered('Sprayed in the season', litres(spray.ml), spray.from), ...stepsOf(found, candidate, season)],
  };
}

/**
 * The working of the use at which the ranking flips: `N`; and of what a season costs with one of the two on either side:
 * `N/before/CANDIDATE` or `N/behind/CANDIDATE`.
 */
export function turnWorking(found: Equivalents, [number = '', side, id]: string[]): FoundWorking | null {
  const flip = found.breakEven.flips[Number(number)];
  if (!flip) return null;
  if (side === undefined) return turnItself(found, flip, number);
  const at = flip.between.findIndex((product) => product.id === id);
  const candidate = found.candidates.find(({ product }) => product.id === id);
  if ((side !== 'before' && side !== 'behind') || at < 0 || !candidate) return null;
  const from = side === 'before' ? 'a little nearer to the plan' : 'where the order has turned';
  return atOtherUse(found, candidate, flip[side].seasons[at] ?? null, { ml: flip[side].seasonMl, from });
}

function turnItself(found: Equivalents, flip: Flip, number: string): FoundWorking {
  const { between, seasonMl, isAbove } = flip;
  const [best, other] = between;
  const costs = (side: 'before' | 'behind', where: string): Step[] =>
    between.map(({ id, name }, at) =>
      worked(
        `${name} at ${where}`,
        shown(flip[side].seasons[at]?.total ?? 0),
        side === 'before' ? 'still in the order of the plan' : 'the order has turned',
        equivalentAddress(found, 'turn', number, side, id),
      ),
    );
  return {
    title: `Where ${other.name} becomes cheaper than ${best.name}`,
    value: litres(seasonMl),
    rule: `The season is priced with both at ${isAbove ? 'more and more' : 'less and less'} spray, each spraying alike, until the order turns; then the span is halved eight times. Whole packs make the cost a staircase, so this is the nearest step.`,
    steps: [
      worked('Planned', sprayShown(found), 'this shop’s own use', sprayAddress(found)),
      entered('A little before it', litres(flip.before.seasonMl), 'nearer to the plan'),
      ...costs('before', 'that use'),
      ...costs('behind', 'the use above'),
    ],
  };
}
