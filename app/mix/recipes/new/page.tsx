import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { recipeFormScreen } from '@/lib/views/recipe-form';
import { FirstVisit } from '../../../_parts/first-visit';
import { RecipeForm } from '../recipe-form';

export const metadata: Metadata = { title: 'A new recipe' };

async function NewRecipePage() {
  const screen = await recipeFormScreen(clock, null);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/mix/recipes">Recipes</a>
      </p>
      <h1>A new recipe</h1>
      <RecipeForm screen={screen} />
    </>
  );
}

export default doorPage('grow', NewRecipePage);
