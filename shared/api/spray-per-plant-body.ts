import { z } from 'zod';

const typed = z.string().max(100);

/** What `POST /api/v1/spray-per-plant` takes, as it was typed: trials, or what is known of a plant's leaves. */
export const SprayPerPlantBody = z.union([
  z.strictObject({
    trials: z
      .array(
        z.strictObject({
          plants: typed.describe('How many plants were sprayed.'),
          putIn: typed.describe('What went into the sprayer, such as "1 L".'),
          left: typed.describe('What was left in it, such as "640 mL"; empty for nothing.'),
        }),
      )
      .max(20)
      .describe('Trials: spray some plants, and note what is gone.'),
  }),
  z.strictObject({
    leaves: z.strictObject({
      areaCm2: typed.describe('The area of one side of all leaves of a plant, cm².'),
      sides: z.enum(['1', '2']).describe('Whether one side or both are sprayed.'),
      mlPer100Cm2: typed.describe('What stays on 100 cm² of leaf until it runs off, mL.'),
      source: typed.describe('Where that is from.'),
    }),
  }),
]);
