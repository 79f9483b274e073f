import { z } from 'zod';
import { REFUSAL_CODES } from '../outcome';

/** What is refused before the shop is asked: at the door, or because it could not be read; and a fault of the program. */
const DOOR_CODES = ['turned-away', 'unreadable', 'fault-of-ours'] as const;

/** What kind of refusal it is, for programs. The sentence beside it is for people, and may be put another way. */
export const ProblemCode = z.enum([...DOOR_CODES, ...REFUSAL_CODES]);
export type ProblemCode = z.infer<typeof ProblemCode>;

/** Any refusal: its code, one sentence, and the places when there are several. */
export const Problem = z.strictObject({
  code: ProblemCode,
  message: z.string(),
  faults: z.array(z.strictObject({ path: z.string(), message: z.string() })).optional(),
  confirm: z
    .string()
    .optional()
    .describe(
      'Only with opens-earlier, where each fault is a bench, and many-bottles, where each is a lot: send the same again with this in the header x-confirm-opening, and in x-confirm-reason, percent-encoded, why it is certain.',
    ),
});
export type Problem = z.infer<typeof Problem>;
