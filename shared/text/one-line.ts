import type { z } from 'zod';
import { textFault } from './text-fault';

/** A field of one line of text in a form: whatever no text may hold is refused beside it, as the shop file refuses it. */
export const oneLine = <Field extends z.ZodType<string>>(field: Field) =>
  field.refine((text) => textFault(text) === null, {
    error: ({ input }) => textFault(String(input)) ?? 'This cannot be kept.',
  });
