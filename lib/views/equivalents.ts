import 'server-only';
import { decimalText } from '@/shared/measure/decimal-text';
import type { Dose } from '@/shared/measure/dose';
import { showVolume } from '@/shared/measure/show';
import { toNumber } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Clock } from '../clock';
import { fingerprint } from '../data/fingerprint';
import { newCommandId } from '../data/new-id';
import { planAhead } from '../engine/ahead/plan-ahead';
import { planDifferences } from '../engine/ahead/plan-differences';
import type { Equivalents, Priced } from '../engine/equivalents/equivalents';
import type { Flag } from '../engine/rules/flag';
import { shopOfFile } from '../engine/shop-of-file';
import { equivalentAddress, equivalentWorking } from '../engine/working/equivalent-figures';
import { clearedWords, costWords, stockWords } from './difference-words';
import { equivalentsNow } from './equivalents-now';
import type { Fig } from './figures';
import { gravestFirst } from './flags-by-gravity';
import { type House, houseNow } from './house';

/** A line of a recipe, as a form sends it. */
export type LineTo = { product: string; dose: string; use: string; order: string };

/** What a switch would do, before anybody does it. */
export type SwitchSeen = { to: LineTo; commandId: string; effects: string[]; flags: Flag[] };

export type CandidateSeen = {
  id: string;
  name: string;
  isNow: boolean;
  isBest: boolean;
  allowed: boolean;
  reasons: string[];
  alsoBrings: string[];
  dose: Fig;
  perGram: Fig;
  perLitre: Fig;
  season: Fig;
  waste: Fig;
  packs: string[];
  /** Null for what stands there now, and for what is not allowed. */
  change: SwitchSeen | null;
};

export type EquivalentsScreen = Pick<House, 'today' | 'ways'> & {
  shopId: string;
  recipe: { id: string; name: string };
  product: { id: string; name: string };
  substance: string;
  dose: string;
  line: number;
  standing: string;
  candidates: CandidateSeen[];
  breakEven: string[];
  /** What was just switched from, and can be taken back. */
  before: { name: string; to: LineTo; commandId: string } | null;
};

type Asked = { recipe: string; product: string; was?: LineTo | undefined };

/** What could stand in a recipe in the place of a product. Null when there is no such place, or no known substance. */
export async function equivalentsScreen(clock: Clock, asked: Asked): Promise<EquivalentsScreen | null> {
  const house = await houseNow(clock);
  const recipe = house?.file.recipes.find(({ id }) => id === asked.recipe);
  const line = recipe?.ingredients.findIndex(({ product }) => product === asked.product) ?? -1;
  const found = house && line >= 0 ? await equivalentsNow(house, asked) : null;
  if (!house || !recipe || !found) return null;
  const { wanted, breakEven } = found;
  return {
    ...{ today: house.today, ways: house.ways, shopId: house.id, line, standing: fingerprint(recipe) },
    recipe: { id: recipe.id, name: recipe.name },
    product: { id: wanted.ingredient.product.id, name: wanted.ingredient.product.name },
    ...{ substance: wanted.substance, dose: wanted.ingredient.dose.text },
    candidates: found.candidates.map((candidate) => candidateSeen(house, found, candidate, { recipe, line })),
    breakEven: breakEven.map(({ between: [a, b], seasonMl }) => {
      const at = showVolume(toNumber(seasonMl) * 1_000, house.ways.units);
      return `Between ${a.name} and ${b.name} it turns at ${at} of spray a season.`;
    }),
    before: beforeOf(house, asked.was),
  };
}

type Place = { recipe: ShopFile['recipes'][number]; line: number };

function candidateSeen(house: House, found: Equivalents, candidate: Priced, place: Place): CandidateSeen {
  const { product, allowed, reasons, alsoBrings, season, ingredient } = candidate;
  const isNow = product.id === found.wanted.ingredient.product.id;
  const its = (figure: string) => figureOf(found, product.id, figure);
  return {
    ...{ id: product.id, name: product.name, isNow, allowed, reasons, alsoBrings },
    isBest: found.best?.product.id === product.id,
    ...{ dose: its('dose'), perGram: its('perGram'), perLitre: its('perLitre') },
    ...{ season: its('season'), waste: its('waste') },
    packs: season?.packs.map(({ offer, count }) => `${count} × ${offer.packText}, ${offer.supplier.name}`) ?? [],
    change: isNow || !allowed || !ingredient ? null : switchSeen(house, found, place, ingredient.dose, product.id),
  };
}

function figureOf(found: Equivalents, candidate: string, figure: string): Fig {
  const working = equivalentWorking(found, [candidate, figure]);
  if (!working) throw new RangeError(`equivalents: nothing stands behind "${candidate}/${figure}"`);
  return { at: equivalentAddress(found, candidate, figure), value: working.value };
}

function switchSeen(
  { file, plan, today, shop }: House,
  { wanted }: Equivalents,
  { recipe, line }: Place,
  dose: Dose,
  product: string,
): SwitchSeen {
  const now = wanted.ingredient;
  const to = {
    product,
    dose: now.dose.kind === 'substance' ? now.dose.text : doseText(dose),
    use: now.use ?? '',
    order: '',
  };
  const ingredients = recipe.ingredients.map((one, at) => (at === line ? lineOf(to) : one));
  const recipes = file.recipes.map((one) => (one.id === recipe.id ? { ...one, ingredients } : one));
  const next = planAhead(shopOfFile({ ...file, recipes }), today, plan.weeks);
  const differences = planDifferences(plan, next);
  const effects = [
    ...costWords(shop, differences),
    ...stockWords(differences),
    ...clearedWords(differences.cleared.length),
  ];
  return { to, commandId: newCommandId(), effects, flags: gravestFirst(firstOfKind(differences.newFlags)) };
}

/** The same comes up at many sprayings; the first of each kind says it. */
const firstOfKind = (flags: Flag[]): Flag[] =>
  flags.filter(
    ({ rule, product }, at) => flags.findIndex((one) => one.rule === rule && one.product === product) === at,
  );

/** A line as a shop file writes it. */
export const lineOf = ({ product, dose, use, order }: LineTo): Place['recipe']['ingredients'][number] => ({
  ...{ product, dose, use: use || null, order: order === '' ? null : Number(order) },
});

/** A dose as somebody would type it. */
function doseText(dose: Dose): string {
  switch (dose.kind) {
    case 'volume':
      return `${decimalText(dose.mlPerLitre, 'down')} mL/L`;
    case 'mass':
      return `${decimalText(dose.gPerLitre, 'down')} g/L`;
    case 'perArea':
      return `${decimalText(dose.perSquareMetre, 'down')} ${dose.measure === 'volume' ? 'mL' : 'g'}/m2`;
    case 'substance':
      return dose.text;
  }
}

function beforeOf({ shop }: House, was: LineTo | undefined): EquivalentsScreen['before'] {
  const product = was && shop.products.find(({ id }) => id === was.product);
  return product ? { name: product.name, to: was, commandId: newCommandId() } : null;
}
