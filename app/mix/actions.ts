'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { doorAction } from '@/lib/door/door-action';
import type { FormState } from '@/shared/forms/form-state';
import { SkipSpraying } from '@/shared/forms/skip-spraying';
import { accept } from '@/shared/outcome';

const skip = doorAction(SkipSpraying, async ({ shop, ...spraying }, { actor }) => {
  const outcome = await skipSpraying({ ...spraying, shopId: shop, actor }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: 'It is noted as skipped.' });
});

/** Leave a planned spraying out. */
export async function skipSprayingAction(state: FormState, form: FormData): Promise<FormState> {
  return skip(state, form);
}
