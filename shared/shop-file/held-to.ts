import { z } from 'zod';
import type { Fault } from '../outcome';
import { GIVE_A_YEAR } from '../time/accepted-years';
import { isAcceptedInstant } from '../time/instant';
import { Change, Lot } from './contract';
import { id, maybe, words } from './fields';
import { Application, Passed } from './record';

const TAKEN = 'That is nothing. Write an amount above 0, such as "5 mL".';
const USE_BY = 'Write whole days, from 0 to 3650.';

/** What the contract says of single fields, for commands and forms that write them one by one. */
export const PIECES = {
  lot: Lot.shape,
  change: Change.shape,
  record: Application.shape,
  passed: Passed.shape,
  id: id(),
  /** Milliseconds since 1970. */
  moment: z
    .number()
    .refine(isAcceptedInstant, { error: `That is too far away. ${GIVE_A_YEAR}` })
    .nullish(),
  /** µL or mg of something that is taken: whole, and more than nothing. */
  taken: z.int({ error: TAKEN }).min(1, { error: TAKEN }).nullable(),
  useByDays: z.int({ error: USE_BY }).min(0, { error: USE_BY }).max(3_650, { error: USE_BY }).nullable(),
  /** Why something was done. Ledgers and records keep it for ever; a shop file has no place for some of them. */
  reason: words(500, 'Say why.'),
  reasonOrNone: maybe(words(500, 'Say why.')),
  /** Who did something. */
  who: words(200, 'Say who.'),
  fileName: words(300, 'Give the file a name.'),
} as const;

/** A place in what was sent, what may stand there, and what does. */
type Held = readonly [path: string, piece: z.ZodType, value: unknown];

/** The first fault of each value that the contract of the shop file would refuse, at its place in what was sent. */
export const heldTo = (...held: readonly Held[]): Fault[] =>
  held.flatMap(([path, piece, value]) => {
    const [issue] = piece.safeParse(value).error?.issues ?? [];
    return issue ? [{ path, message: issue.message }] : [];
  });
