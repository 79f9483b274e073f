import type { Metadata } from 'next';
import { UnreadOf } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { recipesScreen } from '@/lib/views/recipes';
import { FirstVisit } from '../../_parts/first-visit';
import { RecipeList } from './recipe-list';

export const metadata: Metadata = { title: 'Recipes' };

async function RecipesPage() {
  const screen = await recipesScreen(clock);
  if (!screen) return <FirstVisit />;
  const count = screen.recipes.length;
  return (
    <>
      <UnreadOf of={{ list: 'recipes' }} />
      <p>
        <a href="/mix">Mix</a>
      </p>
      <h1>Recipes</h1>
      <p className="soft">{count === 1 ? '1 recipe' : `${count} recipes`}</p>
      <RecipeList recipes={screen.recipes} ways={screen.ways} />
      <p className="apart">
        <a className="button" data-main="" href="/mix/recipes/new">
          Write a new recipe
        </a>
      </p>
    </>
  );
}

export default doorPage('see-shop', RecipesPage);
