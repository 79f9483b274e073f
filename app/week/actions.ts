'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { clock } from '@/lib/clock';
import { moveSpraying } from '@/lib/commands/move-spraying';
import { doorAction } from '@/lib/door/door-action';
import type { FormState } from '@/shared/forms/form-state';
import { MoveSpraying } from '@/shared/forms/move-spraying';
import { showClockTime } from '@/shared/time/clock-time';

const move = doorAction({ may: 'spray', form: MoveSpraying }, async ({ shop, from, ...spraying }, { actor }) => {
  const outcome = await moveSpraying({ ...spraying, shopId: shop, actor }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  const was = `${outcome.value.day}T${showClockTime(outcome.value.at)}`;
  const asked = new URLSearchParams({ from, moved: spraying.program, on: spraying.on, was });
  redirect(`/week?${asked}`);
});

/** Move a planned spraying, and say on the page how to undo it. */
export async function moveSprayingAction(state: FormState, form: FormData): Promise<FormState> {
  return move(state, form);
}
