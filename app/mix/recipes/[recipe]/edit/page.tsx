import type { Metadata } from 'next';
import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { recipeFormScreen } from '@/lib/views/recipe-form';
import { one, type Search } from '../../../../_parts/search';
import { RecipeForm } from '../../recipe-form';
import { ReplacedLine } from '../../replaced-line';

export const metadata: Metadata = { title: 'Change a recipe' };

type RecipeParams = { params: Promise<{ recipe: string }>; searchParams: Promise<Search> };

async function EditRecipePage({ params, searchParams }: RecipeParams) {
  const id = decodeURIComponent((await params).recipe);
  const { line, from } = await searchParams;
  const screen = await recipeFormScreen(clock, id, { line: Number(one(line)) - 1, from: one(from) ?? '' });
  const of = { list: 'recipes' as const, id: id };
  if (!screen) return <UnreadOrMissing of={of} />;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href={`/mix/recipes/${encodeURIComponent(id)}`}>{screen.draft.name}</a>
      </p>
      <h1>Change this recipe</h1>
      <p className="soft">Saving makes a new version. What was sprayed by an earlier one keeps it.</p>
      {screen.replaced && <ReplacedLine replaced={screen.replaced} />}
      <RecipeForm screen={screen} />
    </>
  );
}

export default doorPage('grow', EditRecipePage);
