import { z } from 'zod';
import { typedLine } from '../text/one-line';
import { Day } from '../time/day';
import { commandId, shopId } from './command-fields';
import { withMoneyWritten } from './money-fields';

/** Which bottle a form is about, by where it stands in the books. */
const about = {
  commandId: commandId(),
  shop: shopId(),
  lotId: z.string().min(1).max(100),
  place: z.coerce.number().int().min(0).max(999_999),
};

const LONGEST_REASON = 200;

const words = () =>
  typedLine(
    z
      .string()
      .trim()
      .max(LONGEST_REASON, { error: `Shorten this to ${LONGEST_REASON} characters.` }),
  ).default('');

const reason = (example: string) =>
  typedLine(
    z
      .string()
      .trim()
      .min(1, { error: `Say why, for example "${example}". It stays in the ledger.` })
      .max(LONGEST_REASON, { error: `Shorten this to ${LONGEST_REASON} characters.` }),
  );

const amount = () => z.string().trim().max(100, { error: 'Write an amount, such as "600 mL".' }).default('');

/** When something happened, by the shop's own clock, as a browser's field writes it; empty for now. */
const when = () => z.string().trim().max(40).default('');

export const OpenBottle = z.strictObject({ ...about, openedOn: Day });

export const ShutBottle = z.strictObject({ ...about, reason: reason('it was another bottle') });

/** What may have become of the difference that a count finds. */
export const COUNT_REASONS = ['evaporated', 'spilled', 'miscounted', 'used without entry'] as const;

export const CountBottle = z.strictObject({
  ...about,
  found: amount(),
  /** How many movements the ledger had when the form was opened. */
  seen: z.coerce.number().int().min(0),
  why: z.enum(['', ...COUNT_REASONS, 'other']).default(''),
  words: words(),
});

/** Why stock is thrown away. */
export const DISCARD_REASONS = ['expired', 'spoiled', 'spilled', 'returned'] as const;

export const DiscardFromBottle = z
  .strictObject({
    ...about,
    much: z.enum(['all', 'some'], { error: 'Choose all that is left, or an amount.' }),
    amount: amount(),
    why: z.enum([...DISCARD_REASONS, 'other'], { error: 'Choose why.' }),
    words: words(),
    when: when(),
  })
  .refine(({ why, words: said }) => why !== 'other' || said !== '', {
    path: ['words'],
    error: 'Say in words why it is thrown away.',
  });

export const DrawFromBottle = z.strictObject({
  ...about,
  amount: amount(),
  reason: reason('spot spray on the ferns'),
  when: when(),
});

export const MoveBottle = z.strictObject({
  ...about,
  keptIn: typedLine(z.string().trim().max(100, { error: 'Shorten this to 100 characters.' })),
});

const PaidTyped = z.strictObject({
  ...about,
  paid: z
    .string()
    .trim()
    .min(1, { error: 'Write what was paid, such as 24.00; 0 when it cost nothing.' })
    .max(60, { error: 'Write an amount of money, such as 24.00.' }),
});

/** What the lot that a bottle came with cost, where nobody entered it when it came. */
export const PayBottle = withMoneyWritten(PaidTyped, /^paid$/);

export const CorrectBottleDay = z.strictObject({
  ...about,
  expiresOn: z.union([z.literal(''), Day]),
  reason: reason('misread the label'),
});

export const TakeBackLine = z.strictObject({
  ...about,
  movement: z.string().min(1).max(64),
  reason: reason('wrong bottle'),
});

/** A reason out of a list, with words of one's own beside it or in its place; null when neither was given. */
export function reasonIn(why: string, said: string): string | null {
  if (why === '' || why === 'other') return said === '' ? null : said;
  return said === '' ? why : `${why}: ${said}`;
}
