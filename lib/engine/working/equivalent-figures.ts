import { type Micros, micros } from '@/shared/quantity/amounts';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { cheapestOffer } from '../ahead/cheapest-offer';
import type { Equivalents, Priced } from '../equivalents/equivalents';
import type { Offer } from '../shop';
import { count, entered, type FoundWorking, figureAddress, money, type Shown, type Step, text } from './shown';

/** The address of a figure of a candidate that could stand in a recipe. */
export const equivalentAddress = ({ wanted: { recipe, ingredient } }: Equivalents, ...path: string[]): string =>
  figureAddress('equivalent', recipe.id, ingredient.product.id, ...path);

/**
 * The working of a figure of a candidate, after the recipe and the product that stands there now:
 * `CANDIDATE/dose`, `CANDIDATE/perGram`, `CANDIDATE/perLitre`, `CANDIDATE/season` or `CANDIDATE/waste`.
 */
export function equivalentWorking(found: Equivalents, [id, figure]: string[]): FoundWorking | null {
  const candidate = found.candidates.find(({ product }) => product.id === id);
  if (!candidate) return null;
  switch (figure) {
    case 'dose':
      return doseWorking(found, candidate);
    case 'perGram':
      return perWorking(found, candidate, 'perGram');
    case 'perLitre':
      return perWorking(found, candidate, 'perLitre');
    case 'season':
      return seasonWorking(found, candidate);
    case 'waste':
      return wasteWorking(candidate);
    default:
      return null;
  }
}

const offerOf = ({ season: { shop } }: Equivalents, { product }: Priced): Offer | null =>
  cheapestOffer(shop.offers.filter((offer) => offer.product.id === product.id));

const doseShown = ({ dose }: Priced): Shown =>
  dose
    ? { kind: 'ratio', value: toNumber(dose.dose), unit: dose.unit }
    : { kind: 'unknown', because: 'The strength or density of one of the two is not known.' };

function doseWorking({ wanted }: Equivalents, candidate: Priced): FoundWorking {
  const { ingredient, substance, mgPerLitre } = wanted;
  return {
    title: `Equal dose of ${candidate.product.name}`,
    value: doseShown(candidate),
    rule: 'The dose of what stands there now × its strength ÷ the strength of this one, so that as much of the substance is in the spray.',
    steps: [
      entered(ingredient.product.name, text(ingredient.dose.text), `the recipe ${wanted.recipe.name}`),
      entered(`${substance} in the spray`, mgShown(mgPerLitre), 'dose × strength'),
      ...contentSteps(candidate, substance),
    ],
  };
}

const mgShown = (mg: Exact | null): Shown =>
  mg ? { kind: 'ratio', value: toNumber(mg), unit: 'mg/L' } : { kind: 'unknown', because: 'It cannot be worked out.' };

const contentSteps = ({ product }: Priced, substance: string): Step[] =>
  product.contents
    .filter((one) => one.substance.toLowerCase() === substance.toLowerCase())
    .map(({ amount, basis }) => entered(`${substance} in ${product.name}`, text(`${amount} ${basis}`), 'its label'));

const PER = {
  perGram: {
    what: 'A gram of the substance',
    rule: 'Price of the cheapest offer by the unit ÷ strength. Without freight.',
  },
  perLitre: {
    what: 'A litre of spray',
    rule: 'Price of the cheapest offer by the unit × the equal dose. Without freight.',
  },
};

function perWorking(found: Equivalents, candidate: Priced, figure: 'perGram' | 'perLitre'): FoundWorking {
  const offer = offerOf(found, candidate);
  const cost = candidate[figure];
  const because = offer ? 'Its strength or its dose is not known.' : 'No supplier offers it.';
  const { what, rule } = PER[figure];
  return {
    title: `${what} in ${candidate.product.name}`,
    value: money(cost && wholeNearest<Micros>(cost), because),
    rule,
    steps: [
      entered(
        'One pack',
        money(offer?.price ?? null, because),
        offer ? `${offer.packText}, ${offer.supplier.name}` : 'no offer',
      ),
      ...(figure === 'perLitre'
        ? [entered('Equal dose', doseShown(candidate), 'as strong as now')]
        : contentSteps(candidate, found.wanted.substance)),
    ],
  };
}

function whyNoSeason({ allowed, reasons }: Priced): string {
  return allowed ? 'Nobody offers it, or an amount is not known.' : `It is not allowed there. ${reasons.join(' ')}`;
}

function seasonWorking({ season, wanted }: Equivalents, candidate: Priced): FoundWorking {
  const cost = candidate.season;
  const litres: Shown = { kind: 'volume', ml: toNumber(season.sprayMl) };
  return {
    title: `A season of ${wanted.recipe.name} with ${candidate.product.name}`,
    value: cost ? { kind: 'money', micros: cost.total } : { kind: 'unknown', because: whyNoSeason(candidate) },
    rule: 'The cheapest purchase plan for it alone, from an empty shelf and without waiting: whole packs + freight + money tied up − what is left and will still be used.',
    steps: [
      entered('Sprayed in the season', litres, `${season.sprayings.length} sprayings, 52 weeks`),
      entered('Equal dose', doseShown(candidate), 'as strong as now'),
      ...(cost?.packs ?? []).map(({ offer, count: packs }) =>
        entered(`${offer.packText}, ${offer.supplier.name}`, count(packs, 'packs'), 'bought over the season'),
      ),
    ],
  };
}

const wasteWorking = (candidate: Priced): FoundWorking => ({
  title: `What would die of ${candidate.product.name} in a season`,
  value: money(candidate.season && micros(candidate.season.wasteCost), whyNoSeason(candidate)),
  rule: 'What is left in opened packs after their last usable day, as a part of their price. It is inside the season’s cost.',
  steps: (candidate.season?.packs ?? []).map(({ offer, count: packs }) =>
    entered(`${offer.packText}, ${offer.supplier.name}`, count(packs, 'packs'), 'bought over the season'),
  ),
});
