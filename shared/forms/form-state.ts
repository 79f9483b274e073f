import type { Fault } from '@/shared/outcome';
import type { EarlierAsked } from './earlier-asked';

/** What was typed into a form, by field, so that an answer can refill it. Fields that may repeat hold a list. */
export type Typed = Record<string, string | string[]>;

/**
 * Where a form stands after it was sent.
 *
 *   idle      not sent yet
 *   invalid   filled in wrong: one sentence per field (`fields`), and one above the button
 *   refused   the shop says no: one sentence; `faults` when a file has several things to put right; `earlier` when it opens
 *             a bench earlier, and a person has to say once more that it is right
 *   done      it happened; `message` says what, and `link` where to look
 */
export type FormState =
  | { status: 'idle' }
  | { status: 'invalid'; typed: Typed; fields: Record<string, string>; message: string }
  | { status: 'refused'; typed: Typed; message: string; faults: Fault[]; earlier?: EarlierAsked }
  | { status: 'done'; message: string; link: string | null };

/** A form nobody has sent yet. */
export const IDLE: FormState = { status: 'idle' };
