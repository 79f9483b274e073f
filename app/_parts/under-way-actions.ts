'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { settleSpraying } from '@/lib/commands/settle-spraying';
import { doorAction } from '@/lib/door/door-action';
import type { FormState } from '@/shared/forms/form-state';
import { SettleSpraying } from '@/shared/forms/settle-spraying';
import { accept } from '@/shared/outcome';

const SAID = {
  ended: 'Its end is noted. The record is still to be written.',
  recorded: 'It is on record, without amounts.',
  never: 'It is noted that nothing was sprayed.',
};

const settle = doorAction(SettleSpraying, async ({ shop, ...said }, { actor }) => {
  const outcome = await settleSpraying({ ...said, shopId: shop, actor }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: SAID[said.became] });
});

/** Say what became of a spraying that was begun. */
export async function settleSprayingAction(state: FormState, form: FormData): Promise<FormState> {
  return settle(state, form);
}
