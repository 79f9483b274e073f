'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { doorAction } from '@/lib/door/door-action';
import { beginSearch, stopSearch } from '@/lib/views/purchase-plan';
import type { FormState } from '@/shared/forms/form-state';
import { BeginPlan, StopPlan } from '@/shared/forms/purchase-plan';
import { accept } from '@/shared/outcome';

const begin = doorAction({ may: 'grow', form: BeginPlan }, async ({ shop, weeks, seconds }) => {
  const outcome = await beginSearch({ shop, weeks, seconds }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/buy/plan');
  return accept({ message: 'It is being looked for.' });
});

/** Look for the best plan. It changes nothing in the books. */
export async function beginPlanAction(state: FormState, form: FormData): Promise<FormState> {
  return begin(state, form);
}

const stop = doorAction({ may: 'grow', form: StopPlan }, async ({ shop, weeks }) => {
  const outcome = await stopSearch({ shop, weeks }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/buy/plan');
  return accept({ message: 'Stopped. The best plan found by then is shown.' });
});

/** Be content with the best plan found so far. */
export async function stopPlanAction(state: FormState, form: FormData): Promise<FormState> {
  return stop(state, form);
}
