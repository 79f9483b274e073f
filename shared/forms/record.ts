import { z } from 'zod';
import { typedLine } from '../text/one-line';
import { commandId, shopId } from './command-fields';

/** Which record a form is about, and as of which of its versions. */
const about = {
  commandId: commandId(),
  shop: shopId(),
  application: z.string().min(1).max(64),
  version: z.coerce.number().int().min(1),
};

const LONGEST_REASON = 300;

const reason = (example: string) =>
  typedLine(
    z
      .string()
      .trim()
      .min(1, { error: `Say why, for example "${example}". It stays beside the record.` })
      .max(LONGEST_REASON, { error: `Shorten this to ${LONGEST_REASON} characters.` }),
  );

/** A field as it was typed. What may stand in it is for the record itself to say. */
const typed = () =>
  z
    .string()
    .trim()
    .max(1_000, { error: 'Shorten this to 1,000 characters.' })
    // A record holds no line breaks.
    .transform((text) => text.replace(/\s*[\r\n]+\s*/g, ' '))
    .default('');
const several = () => z.array(z.string().max(200)).max(100).default([]);

export const AmendRecord = z.strictObject({
  ...about,
  bench: several(),
  /** What is on record, and how much of it, line by line. */
  product: several(),
  amount: several(),
  /** What did not go in after all. */
  gone: several(),
  /** What went in besides. */
  moreProduct: typed(),
  moreAmount: typed(),
  ...{ recipe: typed(), startedAt: typed(), endedAt: typed(), mixedAt: typed(), by: typed(), crop: typed() },
  ...{ location: typed(), plants: typed(), sprayed: typed(), leftover: typed(), leftoverWent: typed() },
  ...{ conditions: typed(), temperature: typed(), pH: typed() },
  reason: reason('wrong bench'),
});
export type AmendRecord = z.output<typeof AmendRecord>;

export const WithdrawRecord = z.strictObject({ ...about, reason: reason('entered twice') });
export const RestoreRecord = z.strictObject({ ...about, reason: reason('it was right after all') });
export const ConfirmRecord = z.strictObject({ ...about, reason: reason('asked Ada, who sprayed') });
