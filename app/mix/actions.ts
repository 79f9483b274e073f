'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { recordApplication } from '@/lib/commands/record-application';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { doorAction } from '@/lib/door/door-action';
import { missedTurn } from '@/lib/views/missed-turn';
import { DoneSpraying } from '@/shared/forms/done-spraying';
import type { FormState } from '@/shared/forms/form-state';
import { SkipSpraying } from '@/shared/forms/skip-spraying';
import { accept, refuse } from '@/shared/outcome';

const skip = doorAction({ may: 'spray', form: SkipSpraying }, async ({ shop, ...spraying }, { actor }) => {
  const outcome = await skipSpraying({ ...spraying, shopId: shop, actor }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: 'It is noted as skipped.' });
});

/** Leave a planned spraying out. */
export async function skipSprayingAction(state: FormState, form: FormData): Promise<FormState> {
  return skip(state, form);
}

const done = doorAction(
  { may: 'spray', form: DoneSpraying },
  async ({ commandId, shop: shopId, ...planned }, { actor }) => {
    const turn = await missedTurn(shopId, clock, planned);
    if (!turn) return refuse({ code: 'changed-meanwhile', id: planned.program });
    const outcome = await recordApplication({ ...turn, commandId, shopId, actor, planned }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({
      message: 'It is on record with the times of its plan, without amounts.',
      link: `/log/${encodeURIComponent(outcome.value.application)}`,
    });
  },
);

/** Put a missed spraying on record as it was planned. */
export async function doneSprayingAction(state: FormState, form: FormData): Promise<FormState> {
  return done(state, form);
}
