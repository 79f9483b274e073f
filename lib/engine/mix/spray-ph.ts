import type { Recipe } from '../shop';
import type { Ground } from '../strength/dose-in-stock';
import { acidsIn, given } from './acid-doses';
import { alkaliIn, silicaIn, unreckonedIn } from './alkali';
import type { Mixed } from './mix-strength';
import { type Carbonate, carbonateOf, surePhOf, type Water, withAlkali } from './water';

/** A recipe as far as its chemistry goes. */
export type Mixture = Pick<Recipe, 'targetPh'> & { ingredients: readonly Mixed[] };

/** The pH of a mix: the one that its recipe aims at, or the one that comes about by itself. */
export type SprayPh = { pH: number; rests: 'target' | 'water' };

/**
 * The pH that a spray will have.
 *
 * The recipe's target pH, where it has one, since the mix is brought there. Otherwise that of the shop's water with the
 * alkali silicate and the acid that the recipe itself puts in, before any acid is added to correct it.
 *
 * Takes    the ground and the spray for it, where something is dosed per area
 * Gives    null when nobody can say: no target, and the water was never measured, or something in the mix moves the pH by
 *          an unknown amount. That is a silicate or an acid of unknown strength, and whatever `unreckonedIn` finds.
 */
export function sprayPhOf(recipe: Mixture, water: Water | null, ground?: Ground): SprayPh | null {
  if (recipe.targetPh !== null) return { pH: recipe.targetPh, rests: 'target' };
  const pH = water && untouchedPh(onGround(recipe.ingredients, ground), water);
  return pH === null ? null : { pH, rests: 'water' };
}

/** The lines of a mix with the ground and the spray for it, which a dose per area asks for. */
export const onGround = (mix: readonly Mixed[], ground: Ground | undefined): Mixed[] =>
  mix.map(({ product, dose, ground: own }) => ({ product, dose, ground: own ?? ground }));

/**
 * The shop's water with a mix's alkali silicate in it: what an acid meets.
 *
 * Gives    null when the water cannot be as it was measured, or when the alkali is not known
 */
export function mixWater(mix: readonly Mixed[], water: Water): Carbonate | null {
  const [carbonate, alkali] = [carbonateOf(water), alkaliIn(mix)];
  return carbonate === null || alkali === null ? null : withAlkali(carbonate, alkali, silicaIn(mix));
}

function untouchedPh(mix: readonly Mixed[], water: Water): number | null {
  const acids = acidsIn(mix);
  const [carbonate, acidity] = [mixWater(mix, water), given(acids)];
  if (carbonate === null || unreckonedIn(mix).length > 0) return null;
  if (acids.length > 0) return acidity && surePhOf(carbonate, acidity);
  // Water with nothing in it is at its measured pH exactly, which an end of a label's range may be.
  return mix.some(({ product }) => product.alkaliSilicate) ? surePhOf(carbonate) : water.pH;
}
