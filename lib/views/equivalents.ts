import 'server-only';
import type { Clock } from '../clock';
import { fingerprint } from '../data/fingerprint';
import { newCommandId } from '../data/new-id';
import type { Assumed } from '../engine/buying/assumed';
import type { Equivalents, Priced } from '../engine/equivalents/equivalents';
import { equivalentWorking } from '../engine/working/equivalent-figures';
import { equivalentAddress } from '../engine/working/season-figures';
import { equivalentsNow } from './equivalents-now';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { type LineTo, type SwitchSeen, switchAhead } from './switch-ahead';

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
  /** Whether there was no time to look for cheaper packs. */
  isRough: boolean;
  /** Null for what stands there now, and for what is not allowed. */
  change: (SwitchSeen & { commandId: string }) | null;
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
  /** How much is sprayed in the season as it is planned. */
  sprayed: Fig;
  turns: TurnSeen[];
  /** Whether every use was looked at, from a sixteenth of the plan to sixteen times it. */
  isWhole: boolean;
  /** What nobody entered about the candidates, and the seasons' costs take for granted. */
  assumed: Assumed[];
  /** What was just switched from, and can be taken back. */
  before: { name: string; to: LineTo; commandId: string } | null;
};

/** A use from which on, or below which, another product is the cheapest over a season. */
type TurnSeen = { at: Fig; isAbove: boolean; cheaper: string; than: string };

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
    candidates: found.candidates.map((candidate) => candidateSeen(house, found, candidate)),
    sprayed: figureOf(found, 'sprayed'),
    turns: breakEven.flips.map(({ between: [best, other], isAbove }, number) => ({
      ...{ at: figureOf(found, 'turn', number), isAbove, cheaper: other.name, than: best.name },
    })),
    isWhole: breakEven.isWhole,
    assumed: found.assumed,
    before: beforeOf(house, asked.was),
  };
}

function candidateSeen(house: House, found: Equivalents, candidate: Priced): CandidateSeen {
  const { product, allowed, reasons, alsoBrings, season } = candidate;
  const its = (figure: string) => figureOf(found, product.id, figure);
  const change = switchAhead(house, found, product.id);
  return {
    ...{ id: product.id, name: product.name, allowed, reasons, alsoBrings },
    isNow: product.id === found.wanted.ingredient.product.id,
    isBest: found.best?.product.id === product.id,
    ...{ dose: its('dose'), perGram: its('perGram'), perLitre: its('perLitre') },
    ...{ season: its('season'), waste: its('waste') },
    packs: season?.packs.map(({ offer, count }) => `${count} × ${offer.packText}, ${offer.supplier.name}`) ?? [],
    isRough: season !== null && !season.inTime,
    change: change && { ...change, commandId: newCommandId() },
  };
}

function figureOf(found: Equivalents, ...path: (string | number)[]): Fig {
  const working = equivalentWorking(found, path.map(String));
  if (!working) throw new RangeError(`equivalents: nothing stands behind "${path.join('/')}"`);
  return { at: equivalentAddress(found, ...path), value: working.value };
}

function beforeOf({ shop }: House, was: LineTo | undefined): EquivalentsScreen['before'] {
  const product = was && shop.products.find(({ id }) => id === was.product);
  return product ? { name: product.name, to: was, commandId: newCommandId() } : null;
}
