import type { Micros } from '@/shared/quantity/amounts';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { cheapestOffer } from '../ahead/cheapest-offer';
import type { CurvePoint, Equivalents, Priced } from '../equivalents/equivalents';
import type { Offer, Shop } from '../shop';
import {
  doseShown,
  otherUse,
  pointWorking,
  seasonWorking,
  sprayedWorking,
  turnWorking,
  wasteWorking,
} from './season-figures';
import { entered, type FoundWorking, money, type Shown, type Step, text } from './shown';

/**
 * The working of a figure of what could stand in a recipe, after the recipe and the product that stands there now:
 * `CANDIDATE/dose`, `CANDIDATE/perGram`, `CANDIDATE/perLitre`, `CANDIDATE/season`, `CANDIDATE/waste` or `CANDIDATE/at/K`,
 * a point of its curve; `sprayed`; `use/K`, the use of such a point; `turn/N`, a use at which the ranking flips.
 *
 * Takes   the curve, where a point of it is asked about, with the candidates that have a season in their order
 */
export function equivalentWorking(found: Equivalents, path: string[], curve: CurvePoint[] = []): FoundWorking | null {
  const [id, figure, ...rest] = path;
  if (path.length === 1 && id === 'sprayed') return sprayedWorking(found);
  if (id === 'turn' && isNumber(figure)) return turnWorking(found, path.slice(1));
  if (id === 'use' && isNumber(figure)) return otherUse(found, curve[Number(figure)]);
  const candidate = found.candidates.find(({ product }) => product.id === id);
  if (!candidate) return null;
  switch (figure) {
    case 'season':
      return seasonWorking(found, candidate);
    case 'waste':
      return wasteWorking(candidate);
    case 'at':
      return pointOfCurve(found, candidate, curve, rest[0]);
    default:
      return unitWorking({ wanted: found.wanted, shop: found.season.shop }, candidate, figure);
  }
}

const isNumber = (text: string | undefined): boolean => /^\d{1,3}$/.test(text ?? '');

function pointOfCurve(found: Equivalents, candidate: Priced, curve: CurvePoint[], at = ''): FoundWorking | null {
  const point = isNumber(at) ? curve[Number(at)] : undefined;
  const place = found.candidates.filter(({ season }) => season !== null).indexOf(candidate);
  return point && place >= 0 ? pointWorking(found, candidate, point, point.seasons[place] ?? null) : null;
}

/** What can be told of a candidate without pricing a season: `dose`, `perGram` or `perLitre`. */
export function unitWorking(found: Unpriced, candidate: Priced, figure: string | undefined): FoundWorking | null {
  switch (figure) {
    case 'dose':
      return doseWorking(found, candidate);
    case 'perGram':
    case 'perLitre':
      return perWorking(found, candidate, figure);
    default:
      return null;
  }
}

type Unpriced = Pick<Equivalents, 'wanted'> & { shop: Shop };

const offerOf = ({ shop }: Unpriced, { product }: Priced): Offer | null =>
  cheapestOffer(shop.offers.filter((offer) => offer.product.id === product.id));

function doseWorking({ wanted }: Unpriced, candidate: Priced): FoundWorking {
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

function perWorking(found: Unpriced, candidate: Priced, figure: 'perGram' | 'perLitre'): FoundWorking {
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
