import type { Micros } from '@/shared/quantity/amounts';
import { type Exact, exact, multiply, toNumber } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { doseFindings, rangeText } from '../rules/dose-outside-label';
import { byGravity, type Severity } from '../rules/flag';
import { sameWords } from '../rules/in-words';
import { toEnterFor } from '../rules/missing-figures';
import type { Ingredient, Offer, Product, Recipe, Shop } from '../shop';
import { ratePerMl, stockPerSquareMetre } from '../strength/dose-in-stock';
import { withSources } from '../strength/sources';
import { mixStrength, type SubstanceStrength } from './mix-strength';
import { type Bought, priceToday } from './solution-price';

/** A line that cannot be read: which of its two fields is wrong, and what to write instead. */
export type LineFault = { kind: 'fault'; field: 'product' | 'dose'; message: string };

/** What one line of a recipe comes to. */
export type CheckedLine = {
  kind: 'read';
  form: Product['form'];
  /** µL or mg off the shelf, unrounded; null when it is not known. A dose per area is not in any volume of spray. */
  amount: { perLitre: number; perGallon: number; perFill: number } | { perSquareMetre: number } | null;
  /** What to enter before the amount is known; null when it is. */
  missing: string | null;
  label: CheckedLabel;
  strength: SubstanceStrength[];
  cost: LineCost;
};

/** What the label says beside the dose. `fits` is null when nobody can say: no rate, or none that can be compared. */
export type CheckedLabel = {
  ranges: string[];
  fits: boolean | null;
  severity: Severity | null;
  message: string | null;
};

/** A pack as it is sold. */
export type SoldAs = { pack: string; price: Micros; supplier: string };

/** What a litre of spray takes of the product in money, and at which offer; or what to enter first. */
export type LineCost = {
  perLitre: Micros | null;
  at: SoldAs | null;
  /** What a stock solution is made from, which nobody sells: each source, how it is sold, and µL or mg of it in each mL. */
  madeOf: (SoldAs & { product: string; form: Product['form']; perMl: number })[];
  missing: string | null;
};

/** What one line of a recipe comes to: amount, label, strength and cost. */
export function checkedLine(shop: Shop, recipe: Recipe, line: Ingredient): CheckedLine {
  const { product, dose } = line;
  const rate = ratePerMl(dose, product);
  const amount = rate ? inSpray(rate, shop) : onGround(line);
  return {
    kind: 'read',
    form: product.form,
    amount,
    missing: amount ? null : toEnterFor(dose, product, []),
    label: labelOf(recipe, line),
    strength: mixStrength([line]).strength,
    cost: costOf(shop, line, rate),
  };
}

const GALLON_ML = exact('3785.411784');
const LITRE_ML = exact(1000n);

function inSpray(rate: Exact, { sprayer }: Shop): CheckedLine['amount'] {
  const inMl = (ml: Exact) => toNumber(multiply(rate, ml));
  return { perLitre: inMl(LITRE_ML), perGallon: inMl(GALLON_ML), perFill: inMl(sprayer.capacity) };
}

function onGround({ dose, product }: Ingredient): CheckedLine['amount'] {
  const rate = dose.kind === 'perArea' ? stockPerSquareMetre(dose, product) : null;
  return rate && { perSquareMetre: toNumber(rate) };
}

function labelOf(recipe: Recipe, line: Ingredient): CheckedLabel {
  const { rates } = line.product.label;
  const named = line.use === null ? rates : rates.filter(({ use }) => sameWords(use, line.use ?? ''));
  const ranges = (named.length > 0 ? named : rates).map(rangeText);
  if (meetsOnGround(line, named)) return { ranges, fits: null, severity: 'note', message: BY_BENCHES };
  const about = withSources(line.product);
  const [finding] = doseFindings(recipe, { benches: [], sprayMl: null })
    .filter(({ product }) => about.includes(product))
    .sort(byGravity);
  const fits = finding ? false : rates.length === 0 ? null : true;
  return { ranges, fits, severity: finding?.severity ?? null, message: finding?.message() ?? null };
}

/** A dose per volume meets a rate per area only over the ground and the spray of some benches, and a recipe has none. */
const meetsOnGround = ({ dose }: Ingredient, rates: Product['label']['rates']): boolean =>
  rates.some(({ min, max }) => [min, max].some((end) => end && (end.kind === 'perArea') !== (dose.kind === 'perArea')));

const BY_BENCHES =
  'One of the dose and the label goes by area and the other by spray. Whether they fit depends on the benches, and shows where they are sprayed.';

function costOf({ offers }: Shop, { product, dose }: Ingredient, rate: Exact | null): LineCost {
  const { unit, offer, from, missing } = priceToday(offers, product);
  const [at, madeOf] = [offer && soldAs(offer), from.map(sourceOf)];
  const unknown = (missing: string | null) => ({ perLitre: null, at, madeOf, missing });
  if (dose.kind === 'perArea') return unknown(byGround(product));
  if (!rate) return unknown(toEnterFor(dose, product, []));
  if (!unit) return unknown(missing);
  return { perLitre: wholeNearest<Micros>(multiply(multiply(unit, rate), LITRE_ML)), at, madeOf, missing: null };
}

/** What a stock solution is made from, as it is sold. */
export const sourceOf = ({ source: { name, form }, offer, share }: Bought): LineCost['madeOf'][number] => ({
  ...{ product: name, form, perMl: toNumber(share) },
  ...soldAs(offer),
});

const soldAs = ({ packText, price, supplier }: Offer): SoldAs => ({ pack: packText, price, supplier: supplier.name });

const byGround = ({ name }: Product): string =>
  `${name} goes by area, so what a litre costs depends on the ground that it is sprayed on.`;
