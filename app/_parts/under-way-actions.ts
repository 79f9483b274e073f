'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { denySpraying } from '@/lib/commands/deny-spraying';
import { recordApplication } from '@/lib/commands/record-application';
import { tellSpraying } from '@/lib/commands/tell-spraying';
import { doorAction } from '@/lib/door/door-action';
import { underWayHere } from '@/lib/views/under-way';
import type { FormState } from '@/shared/forms/form-state';
import { SettleSpraying } from '@/shared/forms/settle-spraying';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { readLocalTime } from '@/shared/time/local-time';

const SAID = {
  ended: 'Its end is noted. The record is still to be written.',
  recorded: 'It is on record, without amounts.',
  never: 'It is noted that nothing was sprayed.',
};

const missing = (path: string, message: string) => refuse({ code: 'faults', faults: [{ path, message }] });

/** It ended; it ended, and goes on record without amounts; or nothing was sprayed. */
async function settled(said: SettleSpraying, actor: string | undefined): Promise<Outcome<object>> {
  const { commandId, shop: shopId, became, reason } = said;
  const its = await underWayHere(shopId, said.spraying);
  if (!its) return refuse({ code: 'not-found', what: 'spraying', id: said.spraying });
  const by = { commandId, shopId, ...(actor !== undefined && { actor }) };
  if (became === 'never') {
    if (reason === '') return missing('reason', 'Write how you know that nothing was sprayed.');
    return denySpraying({ ...by, spraying: said.spraying, reason }, clock);
  }
  const ended = readLocalTime(said.endedAt, its.zone);
  if (!ended.ok) return missing('endedAt', ended.message);
  if (ended.value < its.startedAt) return missing('endedAt', 'That is before it began. Write when it ended.');
  const sprayed = { ...by, ...its.of, startedAt: its.startedAt, endedAt: ended.value };
  if (became === 'recorded') return recordApplication(sprayed, clock);
  return tellSpraying({ ...sprayed, planned: its.planned, by: its.by, passed: [] }, clock);
}

const settle = doorAction({ may: 'spray', form: SettleSpraying }, async (said, { actor }) => {
  const outcome = await settled(said, actor);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: SAID[said.became] });
});

/** Say what became of a spraying that was begun. */
export async function settleSprayingAction(state: FormState, form: FormData): Promise<FormState> {
  return settle(state, form);
}
