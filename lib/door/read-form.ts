import type { z } from 'zod';
import type { FormState, Typed } from '@/shared/forms/form-state';
import { withoutTabs } from '@/shared/text/text-fault';

/** A form read by its contract, or the state to show instead. `typed` refills the fields either way. */
export type ReadForm<T> =
  | { ok: true; value: T; typed: Typed }
  | { ok: false; state: Extract<FormState, { status: 'invalid' }> };

/**
 * Read a sent form by its contract.
 *
 * Takes    a contract; fields that came more than once, or whose name ends in `[]`, arrive as lists
 * Gives    the value, or 'invalid' with the first sentence for each field; what was typed, without passwords
 * Refuses  whatever the contract refuses, unknown fields included when it is strict
 */
export function readForm<S extends z.ZodType>(contract: S, form: FormData): ReadForm<z.output<S>> {
  const { fields, typed } = fieldsOf(form);
  const reading = contract.safeParse(fields);
  if (reading.success) return { ok: true, value: reading.data, typed };

  const wrong: Record<string, string> = {};
  const elsewhere: string[] = [];
  for (const issue of reading.error.issues) {
    const field = issue.path[0];
    if (field === undefined) elsewhere.push(issue.message);
    else wrong[String(field)] ??= issue.message;
  }
  const count = Object.keys(wrong).length;
  const message = elsewhere[0] ?? howMany(count);
  return { ok: false, state: { status: 'invalid', typed, fields: wrong, message } };
}

/** The sentence above the button when some fields were filled in wrong. */
export const howMany = (count: number): string =>
  count === 1 ? 'One field needs another look.' : `${count} fields need another look.`;

/** What was typed into such a field goes back to no page: it must be typed again. */
const isSecret = (field: string): boolean => /password/i.test(field);

/** What was pasted out of a spreadsheet holds tabs where spaces are meant. A password is taken as it is. */
const pasted = (value: FormDataEntryValue, field: string): FormDataEntryValue =>
  typeof value === 'string' && !isSecret(field) ? withoutTabs(value) : value;

function fieldsOf(form: FormData): { fields: Record<string, unknown>; typed: Typed } {
  const fields: Record<string, unknown> = Object.create(null);
  const typed: Typed = Object.create(null);
  for (const name of new Set(form.keys())) {
    // React's own fields carry the action's id, not anything a person typed.
    if (name.startsWith('$ACTION')) continue;
    const values = form.getAll(name).map((value) => pasted(value, name));
    const isList = values.length > 1 || name.endsWith('[]');
    const key = name.replace(/\[\]$/, '');
    fields[key] = isList ? values : values[0];
    const texts = values.filter((value) => typeof value === 'string');
    if (isSecret(key)) typed[key] = '';
    else if (texts.length > 0) typed[key] = isList ? texts : (texts[0] ?? '');
  }
  return { fields: { ...fields }, typed: { ...typed } };
}
