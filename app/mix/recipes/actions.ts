'use server';

import { revalidatePath } from 'next/cache';
import { doorAction } from '@/lib/door/door-action';
import type { FormState } from '@/shared/forms/form-state';
import { fieldOfRecipePath, RecipeForm, recipeOfDraft } from '@/shared/forms/recipe';
import { idFor } from '@/shared/forms/sent-fields';
import { accept } from '@/shared/outcome';
import { saveThing } from '../../_parts/save-thing';

const save = doorAction({ may: 'grow', form: RecipeForm }, async (sent, { actor }) => {
  const id = sent.id ?? idFor(sent.draft.name, sent.commandId, 'recipe');
  const { recipe, faults } = recipeOfDraft(id, sent.draft);
  const outcome = await saveThing({
    ...{ sent, actor, faults, part: { recipes: [recipe] }, of: { list: 'recipes', id } },
    fieldOf: (path) => fieldOfRecipePath(sent.draft, path),
  });
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: `${recipe.name} is saved.`, link: `/mix/recipes/${encodeURIComponent(id)}` });
});

/** Save a recipe: a new one, or a further version of one. */
export async function saveRecipeAction(state: FormState, form: FormData): Promise<FormState> {
  return save(state, form);
}
