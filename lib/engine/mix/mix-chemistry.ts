import { type Exact, toNumber } from '@/shared/quantity/exact';
import type { Product, Recipe, Shop } from '../shop';
import type { Ground } from '../strength/dose-in-stock';
import { acidDoses } from './acid-doses';
import { alkaliOf } from './alkali';
import { type Conductivity, estimateConductivity } from './conductivity';
import { type ElementStrength, type Mixed, mixStrength, type SubstanceStrength } from './mix-strength';
import { type OwnAcid, ownAcidIn } from './own-acid';
import { mixWater, onGround } from './spray-ph';
import { type AcidNeed, sureAcidNeeded, surePhOf, waterFault } from './water';

/** How strong a mix is, and what brings it to its pH. */
export type MixChemistry = {
  strength: SubstanceStrength[];
  elements: ElementStrength[];
  pH: MixPh;
  conductivity: Conductivity;
};

export type MixPh = {
  /** Before any acid, with what is alkaline in the mix; null when the water was never measured. */
  before: number | null;
  target: number | null;
  acidMeqPerL: number | null;
  /** Each of the shop's acids, alone reaching the target: mL or g for the whole batch, null when it is not known. */
  acids: { product: Product; amount: number | null; missing: string | null }[];
  /** What the recipe's own acid makes of that, and how much of each acid is still to be added; null without one. */
  own: (OwnAcid & { acids: { product: Product; amount: number | null }[] }) | null;
  /** What to know when no acid is to be added, or why nobody can say; null when acid is to be added. */
  message: string | null;
};

/** The chemistry of a recipe in a batch: strength, nutrients, pH before, and the acid that its target takes. */
export function chemistryOf(shop: Shop, recipe: Recipe, ground: Ground, batchMl: Exact): MixChemistry {
  const mix = onGround(recipe.ingredients, ground);
  const { water, conductivityLimit: limit } = shop;
  return {
    ...mixStrength(mix),
    pH: phFor(shop, recipe, mix, toNumber(batchMl)),
    conductivity: estimateConductivity({ recipe, water, ground, limit }),
  };
}

function phFor(shop: Shop, { targetPh }: Recipe, mix: Parameters<typeof mixWater>[0], batchMl: number): MixPh {
  const water = shop.water && mixWater(mix, shop.water);
  const before = water && surePhOf(water);
  const need = water && targetPh !== null ? sureAcidNeeded(water, targetPh) : null;
  const inBatch = (meqPerL: number) => (need ? dosesIn(shop, { ...need, meqPerL }, batchMl) : []);
  const found = ownAcidIn(mix, water, need);
  const own = found && { ...found, acids: found.left ? inBatch(found.left) : [] };
  if (!need) {
    const message = before !== null && targetPh === null ? null : whyNoWater(shop, mix);
    return { before, target: targetPh, acidMeqPerL: null, acids: [], own, message };
  }
  const acids = inBatch(need.meqPerL);
  return {
    before,
    target: targetPh,
    acidMeqPerL: need.meqPerL,
    acids,
    own,
    message: need.message ?? (before === null ? whyNoWater(shop, mix) : null),
  };
}

const dosesIn = ({ products }: Shop, need: AcidNeed, batchMl: number): MixPh['acids'] =>
  acidDoses(products, need).map(({ product, perLitre, missing }) => ({
    product,
    amount: perLitre === null ? null : (perLitre * batchMl) / ML_PER_LITRE,
    missing,
  }));

function whyNoWater({ water }: Shop, mix: readonly Mixed[]): string {
  if (!water) return 'Enter the alkalinity and the pH of the water, to see what acid it takes.';
  const fault = waterFault(water);
  if (fault) return fault;
  const [unknown] = alkaliOf(mix).filter(({ silica, meqPerL }) => silica === null && meqPerL !== null);
  return unknown
    ? `Enter the SiO2 of ${unknown.product.name} from its label: it decides how high the pH goes.`
    : 'Something alkaline in this mix is of unknown strength, so nobody can say what acid it takes.';
}

const ML_PER_LITRE = 1000;
