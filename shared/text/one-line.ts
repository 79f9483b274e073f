import { z } from 'zod';
import { onOneLine, textFault } from './text-fault';

/** A field of one line of text in a form: whatever no text may hold is refused beside it, as the shop file refuses it. */
export const oneLine = <Field extends z.ZodType<string>>(field: Field) =>
  field.refine((text) => textFault(text) === null, {
    error: ({ input }) => textFault(String(input)) ?? 'This cannot be kept.',
  });

/** The same as a person types or pastes it: a tab or a line break, as between two cells of a spreadsheet, becomes a space. */
export const typedLine = <Field extends z.ZodType<string>>(field: Field) =>
  z.preprocess((typed) => (typeof typed === 'string' ? onOneLine(typed) : typed), oneLine(field));
