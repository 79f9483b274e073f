import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { candidatesFor, wantedIn } from '../engine/equivalents/candidate';
import { pricedByUnit } from '../engine/equivalents/equivalents';
import { type StandIn, standInsFor, type UseUp } from '../engine/equivalents/stand-ins';
import type { Recipe } from '../engine/shop';
import { unitWorking } from '../engine/working/equivalent-figures';
import { equivalentAddress } from '../engine/working/season-figures';
import { usedUpIn } from '../engine/working/swap-figures';
import type { Fig } from './figures';
import { type House, houseNow } from './house';

/** A product in a recipe, and how many others of the shop have its substance. */
type PlaceSeen = { recipe: string; product: string; dose: string; others: string[]; href: string };

/** A recipe in which a product could stand, at which dose, what a litre would cost, and in whose place. */
type StandInSeen = {
  recipe: string;
  instead: string;
  /** What stands there now. */
  now: string;
  dose: Fig;
  perLitre: Fig;
  allowed: boolean;
  reasons: string[];
  href: string;
};

/** A bottle of which something will die, and where that could be used up before. */
type UseUpSeen = {
  key: string;
  product: string;
  wasted: Fig;
  wasteCost: Fig;
  /** The first day on which it is of no use any more. */
  diesOn: Day;
  recipe: string;
  instead: string;
  amount: Fig;
  sprayings: Fig;
  saves: Fig;
  href: string;
};

export type StandInsScreen = Pick<House, 'ways'> & {
  /** The product that is asked about; null when none is. */
  product: { id: string; name: string } | null;
  /** What there are bottles of, to ask about. */
  bottles: { id: string; name: string }[];
  standIns: StandInSeen[];
  places: PlaceSeen[];
  useUps: UseUpSeen[];
};

/** Where something else could stand, where a product could, and what about to die could be used up by that. */
export async function standInsScreen(clock: Clock, productId: string | undefined): Promise<StandInsScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const product = house.shop.products.find(({ id }) => id === productId) ?? null;
  const places = house.shop.recipes.flatMap((recipe) => placesIn(house, recipe));
  return {
    ways: house.ways,
    product: product && { id: product.id, name: product.name },
    bottles: house.plan.products
      .filter(({ onHand }) => onHand > 0)
      .map(({ product: { id, name } }) => ({ id, name }))
      .sort((a, b) => a.name.localeCompare(b.name)),
    standIns: product ? standInsFor(house.shop, product).map((place) => standInSeen(house, place)) : [],
    places: product ? places.filter((place) => place.productId === product.id) : places,
    useUps: usedUpIn(house.plan)
      .filter(({ waste }) => !product || waste.container.product === product)
      .map((one) => useUpSeen(house, one)),
  };
}

const equivalentsHref = (recipe: string, product: string): string =>
  `/buy/equivalents?${new URLSearchParams({ recipe, product })}`;

function placesIn({ shop }: House, recipe: Recipe): (PlaceSeen & { productId: string })[] {
  return recipe.ingredients.flatMap(({ product, dose }) => {
    const wanted = wantedIn(shop, recipe, product);
    const others = wanted ? candidatesFor(shop, wanted).slice(1) : [];
    if (others.length === 0) return [];
    return {
      ...{ recipe: recipe.name, product: product.name, productId: product.id, dose: dose.text },
      others: others.map((one) => one.product.name),
      href: equivalentsHref(recipe.id, product.id),
    };
  });
}

function standInSeen({ shop }: House, { recipe, wanted, candidate }: StandIn): StandInSeen {
  const priced = pricedByUnit(shop, wanted, candidate);
  const figure = (of: 'dose' | 'perLitre'): Fig => {
    const working = unitWorking({ wanted, shop }, priced, of);
    if (!working) throw new RangeError(`stand-ins: nothing stands behind "${of}"`);
    return { at: equivalentAddress({ wanted }, candidate.product.id, of), value: working.value };
  };
  const { product, dose } = wanted.ingredient;
  return {
    ...{ recipe: recipe.name, instead: product.name, now: dose.text, allowed: candidate.allowed },
    ...{ dose: figure('dose'), perLitre: figure('perLitre'), reasons: candidate.reasons },
    href: equivalentsHref(recipe.id, product.id),
  };
}

function useUpSeen({ figure }: House, one: UseUp): UseUpSeen {
  const { waste, recipe, wanted } = one;
  const { lot, place, product } = waste.container;
  const its = (what: string) => figure('use-up', lot, place, recipe.id, wanted.ingredient.product.id, what);
  return {
    key: `${lot} ${place} ${recipe.id} ${wanted.ingredient.product.id}`,
    product: product.name,
    wasted: figure('container', lot, place, 'wasted'),
    wasteCost: figure('container', lot, place, 'wasteCost'),
    ...{ diesOn: waste.on, recipe: recipe.name, instead: wanted.ingredient.product.name },
    ...{ amount: its('amount'), sprayings: its('sprayings'), saves: its('saves') },
    href: equivalentsHref(recipe.id, wanted.ingredient.product.id),
  };
}
