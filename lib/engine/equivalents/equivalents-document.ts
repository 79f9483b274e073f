import { moneyText } from '@/shared/measure/money';
import { type Micros, micros } from '@/shared/quantity/amounts';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { LeftOut } from '@/shared/shop-file/left-out';
import { assumedIn } from '../buying/assumed';
import { signedMoneyText } from '../buying/buy-document';
import type { Equivalents, Priced } from './equivalents';

export type EquivalentsDocument = ReturnType<typeof equivalentsDocument>;

/**
 * What could stand in a recipe, as the `shop` command and the HTTP API print it.
 *
 * Units   doses in mL or g per litre of spray (per m² where the recipe doses by area), not rounded; mL of spray
 * Rounds  costs per gram and per litre only, to six places, a half away from zero
 * Gives   null for whatever is unknown, and for the season of what is not allowed
 */
export const equivalentsDocument = (
  { wanted, candidates, best, breakEven, assumed }: Equivalents,
  leftOut: readonly LeftOut[] = [],
) => ({
  substance: wanted.substance,
  mgPerL: wanted.mgPerLitre && toNumber(wanted.mgPerLitre),
  candidates: candidates.map(candidateIn),
  best: best?.product.id ?? null,
  breakEven: breakEven.flips.map(({ between: [a, b], seasonMl }) => ({
    between: [a.id, b.id],
    seasonMl: toNumber(seasonMl),
  })),
  assumed: assumedIn([...leftOut, ...assumed]),
});

const candidateIn = ({ product, dose, allowed, reasons, perGram, perLitre, season, alsoBrings }: Priced) => ({
  product: product.id,
  dose: dose && toNumber(dose.dose),
  doseUnit: dose?.unit ?? (product.form === 'liquid' ? 'mL/L' : 'g/L'),
  allowed,
  reasons,
  costPerGram: perGram && rounded(perGram),
  costPerLitre: perLitre && rounded(perLitre),
  seasonCost: season && signedMoneyText(season.total),
  packs: season?.packs.map(({ offer, count }) => ({ offer: offer.id, count })) ?? [],
  wasteCost: season && moneyText(micros(season.wasteCost)),
  alsoBrings,
});

const rounded = (amount: Exact): string => moneyText(wholeNearest<Micros>(amount));
