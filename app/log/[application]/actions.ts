'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { type Amended, type AmendedAs, amendApplication } from '@/lib/commands/amend-application';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { type Done, doorAction } from '@/lib/door/door-action';
import { amendedIn } from '@/lib/views/amend-form';
import type { FormState } from '@/shared/forms/form-state';
import { AmendRecord, ConfirmRecord, RestoreRecord, WithdrawRecord } from '@/shared/forms/record';
import { accept, type Outcome, refuse } from '@/shared/outcome';

type About = { commandId: string; shop: string; application: string; version: number; reason: string };

const amendAs = (about: About, change: Amended, actor: string) => {
  const { commandId, shop: shopId, application, version: seen, reason } = about;
  return amendApplication({ commandId, shopId, actor, application, seen, change, reason }, clock);
};

const amend = doorAction({ may: 'grow', form: AmendRecord }, async (sent, { actor }) => {
  const read = await amendedIn(sent);
  if (!read) return refuse({ code: 'not-found', what: 'record', id: sent.application });
  if (read.faults.length > 0) return refuse({ code: 'faults', faults: read.faults });
  return told(atFields(await amendAs(sent, read.change, actor)), sent.application, 'The record is amended.');
});

/** Correct a record: a further version of it, with who, when and why. */
export async function amendRecordAction(state: FormState, form: FormData): Promise<FormState> {
  return amend(state, form);
}

const withdraw = doorAction({ may: 'grow', form: WithdrawRecord }, async (sent, { actor }) =>
  told(await amendAs(sent, { withdrawn: true }, actor), sent.application, 'The record is withdrawn.'),
);

/** Say that a record was entered in error. It stays, and counts nowhere once that is confirmed. */
export async function withdrawRecordAction(state: FormState, form: FormData): Promise<FormState> {
  return withdraw(state, form);
}

const restore = doorAction({ may: 'grow', form: RestoreRecord }, async (sent, { actor }) =>
  told(await amendAs(sent, { withdrawn: false }, actor), sent.application, 'The record counts again.'),
);

/** Let a withdrawn record count again. */
export async function restoreRecordAction(state: FormState, form: FormData): Promise<FormState> {
  return restore(state, form);
}

const confirm = doorAction({ may: 'own', form: ConfirmRecord }, async (sent, { actor }): Promise<Outcome<Done>> => {
  const { commandId, shop: shopId, application, version, reason } = sent;
  const outcome = await confirmAmendment({ commandId, shopId, actor, application, version, reason }, clock);
  revalidatePath('/', 'layout');
  return outcome.ok ? accept({ message: 'Confirmed. The record counts as it says now.' }) : outcome;
});

/** Say a second time that an amendment is right which opens a bench earlier, or withdraws the record. */
export async function confirmRecordAction(state: FormState, form: FormData): Promise<FormState> {
  return confirm(state, form);
}

/** Faults of the record beside the fields of the form, which have names of their own. */
function atFields<T>(outcome: Outcome<T>): Outcome<T> {
  if (outcome.ok || outcome.refusal.code !== 'faults') return outcome;
  const faults = outcome.refusal.faults.map(({ path, message }) => ({ path: fieldOf(path), message }));
  return refuse({ code: 'faults', faults });
}

function fieldOf(path: string): string {
  if (path.startsWith('benches')) return 'bench';
  if (path.startsWith('products')) return 'amount';
  return path === 'temperatureC' ? 'temperature' : path;
}

const UNTIL_CONFIRMED =
  'Because it would open a bench earlier, or withdraws the record, the later end stays until somebody confirms it on the record.';

/** Every page that shows the record is made anew. */
function told(outcome: Outcome<AmendedAs>, application: string, message: string): Outcome<Done> {
  revalidatePath('/', 'layout');
  if (!outcome.ok) return outcome;
  const isOpen = outcome.value.closedUntil !== null;
  const link = `/log/${encodeURIComponent(application)}`;
  return accept({ message: isOpen ? `${message} ${UNTIL_CONFIRMED}` : message, link });
}
