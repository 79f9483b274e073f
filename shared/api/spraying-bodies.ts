import { z } from 'zod';
import { readBy } from '../forms/read-by';
import { readVolume } from '../measure/size';
import { oneLine } from '../text/one-line';
import { readDay } from '../time/day';
import { readInstant } from '../time/instant';

const id = z.string().min(1).max(64);
const commandId = () =>
  z
    .string()
    .regex(/^[0-9a-f]{32}$/, { error: 'Write 32 characters of 0-9 and a-f, made once for each telling.' })
    .describe('Made anew for each telling. Sending it again makes nothing twice.');
const spraying = () =>
  z
    .string()
    .regex(/^[0-9a-f]{32}$/, { error: 'Write 32 characters of 0-9 and a-f, made once for each spraying.' })
    .describe('Which spraying: the commandId that its finished mix will be sent with.');

/** What `POST /api/v1/mix/spraying` takes: a spraying was begun, or its last plant is sprayed. */
export const SprayingBody = z.strictObject({
  commandId: commandId(),
  shop: id
    .optional()
    .describe('The id of a shop. Left out: the shop that the device works in, or the only one there is.'),
  spraying: spraying(),
  recipe: id.describe('The id of the recipe.'),
  benches: z.array(id).min(1, { error: 'Name at least one bench that is sprayed.' }).max(500),
  planned: z
    .strictObject({ program: id, on: readBy(readDay) })
    .nullable()
    .default(null)
    .describe('Which planned spraying it is, by the day on which its program has it. Null: none, or not known yet.'),
  startedAt: readBy(readInstant).describe('When spraying began.'),
  endedAt: readBy(readInstant)
    .nullable()
    .default(null)
    .describe('When the last plant was sprayed. Null: it is going on. Told again, the latest end counts.'),
  by: oneLine(z.string().trim().min(1).max(200)).nullable().default(null).describe('Who sprays.'),
  passed: z
    .array(
      z.strictObject({
        rule: oneLine(z.string().trim().min(1).max(60)),
        reason: oneLine(z.string().trim().min(1).max(500)),
      }),
    )
    .max(20)
    .default([])
    .describe('Each rule that said stop, and why it is sprayed all the same.'),
});
export type SprayingBody = z.input<typeof SprayingBody>;

/** What `POST /api/v1/mix/spraying/never` takes: what was begun never came to be. */
export const NeverSprayedBody = z.strictObject({
  commandId: commandId(),
  shop: id
    .optional()
    .describe('The id of a shop. Left out: the shop that the device works in, or the only one there is.'),
  spraying: id.describe('Which spraying.'),
  reason: oneLine(z.string().trim().min(1).max(500)).describe('How that is known.'),
});

/** What `POST /api/v1/mix/judge` takes: what is about to be sprayed. */
export const JudgeBody = z.strictObject({
  shop: id
    .optional()
    .describe('The id of a shop. Left out: the shop that the device works in, or the only one there is.'),
  recipe: id.describe('The id of the recipe.'),
  benches: z.array(id).min(1, { error: 'Name at least one bench that is sprayed.' }).max(500),
  sprayed: readBy(readVolume)
    .nullable()
    .default(null)
    .describe('How much spray there is, such as "2 gal". Null: what the benches take.'),
  spraying: id
    .nullable()
    .default(null)
    .describe('Which spraying, where it was told of already: it is not held against itself.'),
});

/** What it answers: each rule that says stop, in words. */
export const JudgeAnswer = z.object({
  stops: z.array(z.object({ rule: z.string(), messages: z.array(z.string()) })),
});

/** What the tellings answer. */
export const SprayingTold = z.object({ spraying: z.string() });
