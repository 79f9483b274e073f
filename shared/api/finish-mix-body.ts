import { z } from 'zod';
import { readBy } from '../forms/read-by';
import { readVolume } from '../measure/size';
import { compare, ZERO } from '../quantity/exact';
import { oneLine } from '../text/one-line';
import { readDay } from '../time/day';
import { readInstant } from '../time/instant';

const id = z.string().min(1).max(64);
const words = (longest: number) => oneLine(z.string().trim().min(1).max(longest)).nullable();
const size = z.string().trim().min(1).max(60);

const Poured = z.strictObject({
  product: id.describe('The id of the product.'),
  from: z
    .array(
      z.strictObject({
        lotId: id.describe('The lot of the bottle, as its label and the sheet name it.'),
        place: z.int().min(0).max(999_999).describe('The place of the bottle in its lot, from 0.'),
        amount: size.describe('How much came out of it, such as "4 mL".'),
        heldMore: z
          .boolean()
          .default(false)
          .describe(
            'Whether the bottle really held that much, where the books have less: it is then counted up first.',
          ),
        ranOut: z
          .boolean()
          .default(false)
          .describe('Whether it is empty now, where the books have something left: it is then counted to nothing.'),
      }),
    )
    .max(20)
    .describe('The bottles it really came from, in the order they were used.'),
  elsewhere: size.nullable().default(null).describe('How much came from a bottle that is not in the books.'),
});

/** What `POST /api/v1/mix/finish` takes: one mix from the first pour to the last plant, as it really was. */
export const FinishMixBody = z.strictObject({
  commandId: z
    .string()
    .regex(/^[0-9a-f]{32}$/, { error: 'Write 32 characters of 0-9 and a-f, made once for each mix.' })
    .describe('Made on the device when the mix is begun. Sending it again, from wherever, makes nothing twice.'),
  shop: id
    .optional()
    .describe('The id of a shop. Left out: the shop that the device works in, or the only one there is.'),
  recipe: id.describe('The id of the recipe.'),
  planned: z
    .strictObject({ program: id, on: readBy(readDay) })
    .nullable()
    .default(null)
    .describe('Which planned spraying this was, by the day on which its program has it. Null: none.'),
  benches: z.array(id).min(1, { error: 'Name at least one bench that was sprayed.' }).max(500),
  plants: words(300).default(null).describe('Which plants, when not all on the benches.'),
  startedAt: readBy(readInstant).describe('When spraying began.'),
  endedAt: readBy(readInstant).describe('When it ended. Intervals count from here.'),
  mixedAt: readBy(readInstant)
    .nullable()
    .default(null)
    .describe('When the first fill was mixed. Null: when spraying began.'),
  sprayed: readBy(readVolume)
    .refine((ml) => compare(ml, ZERO) > 0, { error: 'Write how much spray was mixed, such as "2 gal".' })
    .describe('How much spray was mixed, such as "2 gal".'),
  by: words(200).default(null).describe('Who sprayed. Null: whoever sends this.'),
  poured: z.array(Poured).max(50).describe('What went in.'),
  leftover: readBy(readVolume).nullable().default(null).describe('How much spray was left over.'),
  leftoverWent: words(300).default(null).describe('What became of it.'),
  temperatureC: z.number().min(-60).max(70).nullable().default(null).describe('How warm it was, °C.'),
  conditions: words(300).default(null).describe('Weather, or the house: calm, shaded.'),
  pH: z.number().min(0).max(14).nullable().default(null).describe('What the pH meter said.'),
  acid: id.nullable().default(null).describe('Which of the products poured is the acid that brought the pH there.'),
  passed: z
    .array(
      z.strictObject({ rule: oneLine(z.string().trim().min(1).max(60)), reason: oneLine(z.string().trim().max(500)) }),
    )
    .max(20)
    .default([])
    .describe('Each rule that said stop, and why it was sprayed all the same.'),
  plannedCost: z.string().max(60).nullable().default(null).describe('What the sheet said the products would cost.'),
});
export type FinishMixBody = z.output<typeof FinishMixBody>;
