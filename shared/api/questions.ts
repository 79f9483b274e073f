import { z } from 'zod';
import { shopAsked } from '../forms/command-fields';
import { readBy } from '../forms/read-by';
import { readArea } from '../measure/area';
import { readVolume } from '../measure/size';
import { compare, ZERO } from '../quantity/exact';
import { Day, readDay } from '../time/day';
import { readInstant } from '../time/instant';

const shop = shopAsked();

const [FIRST_TODAY, LAST_TODAY] = [Day.parse('2000-01-01'), Day.parse('2999-12-31')];
const MOST_WEEKS = 104;

const today = readBy(readDay)
  .refine((day) => day >= FIRST_TODAY && day <= LAST_TODAY, {
    error: `Give a day from ${FIRST_TODAY} to ${LAST_TODAY}.`,
  })
  .optional()
  .describe('The day the plan begins, YYYY-MM-DD. Left out: today where the shop is.');

const weeks = z
  .string()
  .regex(/^\d{1,3}$/, { error: `Write a whole number from 1 to ${MOST_WEEKS}.` })
  .transform(Number)
  .refine((count) => count >= 1 && count <= MOST_WEEKS, { error: `Write a whole number from 1 to ${MOST_WEEKS}.` })
  .default(26)
  .describe('How many weeks to look ahead, 1 to 104. Left out: 26.');

const now = readBy(readInstant).optional().describe('An ISO 8601 instant with Z or an offset. Left out: now.');

const flags = z
  .enum(['daily', 'once'], { error: 'Write daily or once.' })
  .default('daily')
  .describe(
    'How flags are said. daily: each on each of its days. once: each once, with `days`, every day it stands on; its message is that of the first. Left out: daily.',
  );

/** What `GET /api/v1/plan` is asked. */
export const PlanQuestion = z.strictObject({ today, weeks, flags, shop });

const volume = readBy(readVolume, 'Say how much is mixed, such as volume=2%20gal.')
  .refine((ml) => compare(ml, ZERO) > 0, { error: 'Write a volume above nothing, such as "2 gal".' })
  .describe('The finished volume, taken as it is, such as "2 gal".');

const area = readBy(readArea)
  .optional()
  .describe('The ground that the mix is for, such as "130 sq ft". Only doses per area need it.');

const yearOfWeeks = weeks.unwrap().default(52).describe('How many weeks to look ahead, 1 to 104. Left out: 52.');

const seconds = z
  .string()
  .regex(/^\d{1,2}$/, { error: 'Write whole seconds, from 1 to 60.' })
  .transform(Number)
  .refine((count) => count >= 1 && count <= 60, { error: 'Write whole seconds, from 1 to 60.' })
  .default(10)
  .describe('How long the search may take, 1 to 60 seconds. Left out: 10.');

/** What `GET /api/v1/buy` is asked. */
export const BuyQuestion = z.strictObject({ today, weeks: yearOfWeeks, seconds, shop });

const idOf = (what: string, example: string) =>
  z
    .string({ error: `Name a ${what} of the shop by its id, such as ${example}.` })
    .min(1)
    .max(100);

/** What `GET /api/v1/equivalents` is asked. */
export const EquivalentsQuestion = z.strictObject({
  recipe: idOf('recipe', 'recipe=r1').describe('The id of a recipe of the shop.'),
  product: idOf('product', 'product=p1').describe('The id of a product in that recipe.'),
  today,
  weeks: yearOfWeeks,
  seconds,
  shop,
});

/** What `GET /api/v1/mix` is asked. */
export const MixQuestion = z.strictObject({
  recipe: z
    .string({ error: 'Name a recipe of the shop by its id, such as recipe=r1.' })
    .min(1)
    .max(100)
    .describe('The id of a recipe of the shop.'),
  volume,
  area,
  today,
  shop,
});

/** What `GET /api/v1/keepout` is asked. */
export const KeepoutQuestion = z.strictObject({ now, shop });

/** What `GET /api/v1/shop` is asked. */
export const ShopQuestion = z.strictObject({ shop });

/** What `GET /api/v1/working` is asked: the address of a figure, as the pages' figures carry it. */
export const WorkingQuestion = z.strictObject({
  figure: z.string().min(1).max(4000).describe('The address of a figure, such as spraying/g1/2026-03-03/materialCost.'),
  shop,
});

const looked = (what: string) => z.string().max(200).default('').describe(what);
const dayOrNone = (what: string) =>
  z
    .union([z.literal(''), readBy(readDay)], { error: 'Write a day, such as 2026-03-31.' })
    .default('')
    .describe(what);

/** What `GET /api/v1/log` and its list are asked. */
export const LogQuestion = z.strictObject({
  bench: looked('Only what was sprayed on this bench, by its id.'),
  product: looked('Only what was sprayed with this product, by its id.'),
  from: dayOrNone('Only what was sprayed on this day, YYYY-MM-DD, or later.'),
  to: dayOrNone('Only what was sprayed on this day, YYYY-MM-DD, or before.'),
  person: looked('Only what somebody of this name sprayed or entered; a part of it will do.'),
  shop,
});

/** Nothing to ask. */
export const NoQuestion = z.strictObject({});

/** The token of a secret link. */
export const LinkQuestion = z.strictObject({ link: z.string().min(1).max(100) });
