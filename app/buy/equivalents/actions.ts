'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { clock } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { doorAction } from '@/lib/door/door-action';
import { goodsOf } from '@/lib/views/goods';
import type { FormState } from '@/shared/forms/form-state';
import { SwitchProduct } from '@/shared/forms/switch-product';
import { refuse } from '@/shared/outcome';

const switchProduct = doorAction({ may: 'grow', form: SwitchProduct }, async (sent, { actor }) => {
  const { commandId, shop: shopId, recipe: id, standing, line, product, dose, use, order, back } = sent;
  const recipe = (await goodsOf(clock, shopId))?.file.recipes.find((one) => one.id === id);
  const was = recipe?.ingredients[line];
  if (!recipe || !was) return refuse({ code: 'not-found', what: 'recipe', id });
  const ingredients = recipe.ingredients.map((one, at) => (at === line ? { product, dose, use, order } : one));
  const expecting = [{ list: 'recipes' as const, id, fingerprint: standing }];
  const part = { recipes: [{ ...recipe, ingredients }] };
  const outcome = await changeShop({ commandId, shopId, actor, part, expecting }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  const undo = { wasProduct: was.product, wasDose: was.dose, wasUse: was.use ?? '', wasOrder: String(was.order ?? '') };
  redirect(`/buy/equivalents?${new URLSearchParams({ recipe: id, product, ...(back === '' && undo) })}`);
});

/** Put another product at an equal dose into a recipe, or what stood there back. It is a new version of the recipe. */
export async function switchProductAction(state: FormState, form: FormData): Promise<FormState> {
  return switchProduct(state, form);
}
