import { z } from 'zod';
import { shopAsked } from '../forms/command-fields';

const typed = z.string().max(500);

/** What `POST /api/v1/recipe-check` takes: a recipe as it is being typed, readable or not. */
export const RecipeCheckBody = z.strictObject({
  shop: shopAsked(),
  name: typed.describe('What it is called.'),
  targetPh: typed.describe('The pH to bring the spray to, as text; empty when there is none.'),
  useWithinHours: typed.describe('How long the mixed spray may be used, hours, as text; empty when it is not known.'),
  lines: z
    .array(
      z.strictObject({
        product: typed.describe('Id of the product.'),
        dose: typed.describe('The dose as people say it, such as "2 tsp/gal".'),
        use: typed.describe('Which rate of the label applies; empty when none is named.'),
        order: typed.describe('Its own place in the order of mixing; empty for the usual one.'),
      }),
    )
    .max(100)
    .describe('What goes in.'),
});
