import { doorRoute } from '@/lib/door/door-route';
import { recipeCheckAnswer } from '@/lib/views/recipe-form';
import { NoQuestion } from '@/shared/api/questions';
import { RecipeCheckBody } from '@/shared/api/recipe-check-body';

/** What a recipe comes to while it is typed. It changes nothing, and is a POST only because a recipe is long. */
export const POST = doorRoute(
  { may: 'grow', query: NoQuestion, body: RecipeCheckBody, looks: true },
  ({ body: { shop, ...draft } }) => recipeCheckAnswer(shop, draft),
);
