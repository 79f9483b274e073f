import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { recipeFormScreen } from '@/lib/views/recipe-form';
import { RecipeForm } from '../../recipe-form';

export const metadata: Metadata = { title: 'Change a recipe' };

type RecipeParams = { params: Promise<{ recipe: string }> };

export default async function EditRecipePage({ params }: RecipeParams) {
  const id = decodeURIComponent((await params).recipe);
  const screen = await recipeFormScreen(clock, id);
  if (!screen) notFound();
  return (
    <>
      <p>
        <a href={`/mix/recipes/${encodeURIComponent(id)}`}>{screen.draft.name}</a>
      </p>
      <h1>Change this recipe</h1>
      <p className="soft">Saving makes a new version. What was sprayed by an earlier one keeps it.</p>
      <RecipeForm screen={screen} />
    </>
  );
}
