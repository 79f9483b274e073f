import 'server-only';
import { headers } from 'next/headers';
import { unstable_rethrow } from 'next/navigation';
import type { z } from 'zod';
import type { FormState, Typed } from '@/shared/forms/form-state';
import { explain, type Outcome } from '@/shared/outcome';
import { letIn } from '../access/let-in';
import type { May } from '../access/may';
import { cookiesIn } from '../access/session-cookie';
import { whoAsks } from '../access/who-asks';
import { withConfirmation } from '../confirmation';
import { ownHosts } from './allowed-hosts';
import { secondsToWait, tooManyChanges } from './change-rate';
import { markEntered } from './entered';
import { incidentSentence, logIncident, REQUEST_ID_HEADER, troubleSaid } from './incident';
import { judgeKnock } from './judge-knock';
import { howMany, type ReadForm, readForm } from './read-form';
import { type SecondWord, secondWordIn } from './second-word';
import { addressOfVisitor, type Visitor, visitorOf } from './visitor';

/** What to tell the person when it is done, and where to look. */
export type Done = { message: string; link?: string };

/** A form's action as React calls it. */
export type FormAction = (state: FormState, form: FormData) => Promise<FormState>;

/** What an action asks: of whoever sends it, and of the form. */
export type ActionContract<S extends z.ZodType> = { may: May; form: S };

/**
 * Every server action is made by this: who, read, command, refresh, go.
 *
 * Next runs an action for any POST that names it, at any path, with or without an Origin header. So the request
 * is judged here again, whatever the proxy did, and nothing runs before that.
 *
 * Takes    what whoever sends it must be allowed in the shop that the form names, the form's contract, and what to do with
 *          a form that fits it (the command, then revalidatePath or redirect)
 * Gives    the next state of the form; `redirect` and `notFound` inside pass through
 * Refuses  a request that is not from our own page; a person who is not signed in, or may not do this in that shop; more
 *          changes than a person makes; a form the contract refuses; whatever the command refuses. Faults whose paths are
 *          all names of fields stand beside those fields
 */
export function doorAction<S extends z.ZodType>(
  contract: ActionContract<S>,
  run: (value: z.output<S>, visitor: Visitor) => Promise<Outcome<Done>>,
): FormAction {
  return async (...sent) => {
    const turned = await judgeAction();
    if (turned) return refused(turned);
    // Next hands on whatever was decoded from the request, which need not be a state and a form.
    const form = [...sent].find((part: unknown) => part instanceof FormData);
    if (!(form instanceof FormData)) return refused('This form could not be read. Reload the page and send it again.');

    const word = secondWordIn(form);
    const read = readForm(contract.form, word.form);
    try {
      return await answered(contract.may, word, read, run);
    } catch (error) {
      unstable_rethrow(error);
      const reference = logIncident('action', error);
      return refused(troubleSaid(error) ?? incidentSentence(reference), typedIn(read));
    }
  };
}

async function answered<T>(
  may: May,
  word: SecondWord,
  read: ReadForm<T>,
  run: (value: T, visitor: Visitor) => Promise<Outcome<Done>>,
): Promise<FormState> {
  const given = await headers();
  const header = (name: string) => given.get(name);
  const cookie = cookiesIn(header('cookie'));
  const asker = await whoAsks(cookie);
  const shops = word.form.getAll('shop').filter((shop) => typeof shop === 'string');
  const notIn = letIn(asker, may, shops, cookie);
  if (notIn) return refused(explain(notIn), typedIn(read));
  if (!read.ok) return read.state;
  const seconds = await secondsToWait(addressOfVisitor(header));
  if (seconds !== null) return refused(tooManyChanges(seconds), read.typed);
  const outcome = await withConfirmation(word.confirmation, () => run(read.value, visitorOf(asker, header)));
  return stateAfter(outcome, read.typed, word.reason);
}

/** What was typed goes back to whoever sent it, so that it is typed once. */
const typedIn = <T>(read: ReadForm<T>): Typed => (read.ok ? read.typed : read.state.typed);

async function judgeAction(): Promise<string | null> {
  const sent = await headers();
  markEntered(sent.get(REQUEST_ID_HEADER));
  const knock = { method: 'POST', path: '/', header: (name: string) => sent.get(name) };
  return judgeKnock(knock, ownHosts())?.message ?? null;
}

function stateAfter(outcome: Outcome<Done>, typed: Typed, reason: string): FormState {
  if (outcome.ok) return { status: 'done', message: outcome.value.message, link: outcome.value.link ?? null };
  const { refusal } = outcome;
  if (refusal.code === 'opens-earlier') {
    const { token, openings } = refusal;
    return { ...refused(explain(refusal), typed), earlier: { token, openings, reason } };
  }
  if (refusal.code === 'many-bottles') {
    const { token, said } = refusal;
    return { ...refused(explain(refusal), typed), earlier: { token, openings: said, reason, about: 'bottles' } };
  }
  if (refusal.code !== 'faults') return refused(explain(refusal), typed);
  const fields = Object.fromEntries(refusal.faults.toReversed().map(({ path, message }) => [path, message]));
  const elsewhere = refusal.faults.filter(({ path }) => !(path in typed));
  if (elsewhere.length > 0) return refused(explain(refusal), typed, refusal.faults);
  return { status: 'invalid', typed, fields, message: howMany(Object.keys(fields).length) };
}

type Refused = Extract<FormState, { status: 'refused' }>;

function refused(message: string, typed: Typed = {}, faults: { path: string; message: string }[] = []): Refused {
  return { status: 'refused', typed, message, faults };
}
