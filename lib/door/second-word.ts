import 'server-only';
import { LONGEST_SURE_REASON, SURE_FIELDS, SURE_HEADERS } from '@/shared/forms/earlier-asked';
import type { Confirmation } from '../confirmation';

/*
 * The second word that a change needs which opens a bench earlier, as forms and programs send it. A form that was refused
 * for it asks for the reason and a tick; a program sends the same as two headers.
 */

/** What a form says a second time, taken out of it, so that its own contract never sees it. */
export type SecondWord = {
  form: FormData;
  /** What was typed as the reason, to fill the field again. */
  reason: string;
  /** Null unless there are a reason and the tick. */
  confirmation: Confirmation | null;
};

export function secondWordIn(sent: FormData): SecondWord {
  const text = (name: string): string => {
    const value = sent.get(name);
    return typeof value === 'string' ? value : '';
  };
  const [token, typed, sure] = [text(SURE_FIELDS.token), text(SURE_FIELDS.reason), text(SURE_FIELDS.sure)];
  const form = new FormData();
  const own = new Set<string>(Object.values(SURE_FIELDS));
  for (const [name, value] of sent.entries()) if (!own.has(name)) form.append(name, value);
  const reason = readReason(typed);
  const isSure = token !== '' && reason !== null && sure !== '';
  return { form, reason: typed.slice(0, LONGEST_SURE_REASON), confirmation: isSure ? { token, reason } : null };
}

/** The same out of the headers of a program: the token of the refusal, and the reason in percent-encoding. */
export function secondWordOf(header: (name: string) => string | null): Confirmation | null {
  const [token, reason] = [header(SURE_HEADERS.token), readReason(decoded(header(SURE_HEADERS.reason) ?? ''))];
  return token !== null && reason !== null ? { token, reason } : null;
}

function readReason(typed: string): string | null {
  const reason = typed.trim();
  return reason !== '' && reason.length <= LONGEST_SURE_REASON && !/\p{C}/u.test(reason) ? reason : null;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
