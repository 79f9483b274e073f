import 'server-only';
import { showMoney, showStock } from '@/shared/measure/show';
import { showDay } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { candidatesFor, wantedIn } from '../engine/equivalents/candidate';
import { standInsFor, type UseUp, useUp as usedUpInstead } from '../engine/equivalents/stand-ins';
import type { Recipe } from '../engine/shop';
import type { Fig } from './figures';
import { type House, houseNow } from './house';

/** A product in a recipe, and how many others of the shop have its substance. */
export type PlaceSeen = { recipe: string; product: string; dose: string; others: string[]; href: string };

/** A recipe in which a product could stand, and in whose place. */
export type StandInSeen = {
  recipe: string;
  instead: string;
  dose: string;
  allowed: boolean;
  reasons: string[];
  href: string;
};

/** A bottle of which something will die, and where that could be used up before. */
export type UseUpSeen = { key: string; product: string; wasted: Fig; wasteCost: Fig; words: string; href: string };

export type StandInsScreen = Pick<House, 'ways'> & {
  /** The product that is asked about; null when none is. */
  product: { id: string; name: string } | null;
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
    standIns: product
      ? standInsFor(house.shop, product).map(({ recipe, wanted, candidate }) => ({
          ...{ recipe: recipe.name, instead: wanted.ingredient.product.name, allowed: candidate.allowed },
          ...{ reasons: candidate.reasons, dose: wanted.ingredient.dose.text },
          href: equivalentsHref(recipe.id, wanted.ingredient.product.id),
        }))
      : [],
    places: product ? places.filter((place) => place.productId === product.id) : places,
    useUps: usedUpInstead(house.plan)
      .filter(({ waste }) => !product || waste.container.product === product)
      .map((one) => useUpSeen(house, one)),
  };
}

export const equivalentsHref = (recipe: string, product: string): string =>
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

function useUpSeen({ figure, ways, today }: House, one: UseUp): UseUpSeen {
  const { waste, recipe, wanted, amount, sprayings, saves } = one;
  const { lot, place, product } = waste.container;
  const used = showStock(amount, product.form, ways.units);
  const times = sprayings === 1 ? 'one spraying' : `${sprayings} sprayings`;
  const saved = saves === null ? '' : `, which saves ${showMoney(saves, ways.currency)} of it at its cheapest offer`;
  return {
    key: `${lot} ${place} ${recipe.id} ${wanted.ingredient.product.id}`,
    product: product.name,
    wasted: figure('container', lot, place, 'wasted'),
    wasteCost: figure('container', lot, place, 'wasteCost'),
    words: `In ${recipe.name} instead of ${wanted.ingredient.product.name} on ${times} before ${showDay(waste.on, today)}: ${used}${saved}.`,
    href: equivalentsHref(recipe.id, wanted.ingredient.product.id),
  };
}
