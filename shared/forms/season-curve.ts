import { z } from 'zod';
import { shopId } from './command-fields';

/** Which product of which recipe a season is compared for. */
export const SeasonCurveQuestion = z.strictObject({
  shop: shopId(),
  recipe: z.string().min(1).max(100),
  product: z.string().min(1).max(100),
});
