'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { confirmClock } from '@/lib/commands/confirm-clock';
import { doorAction } from '@/lib/door/door-action';
import { ConfirmClock } from '@/shared/forms/confirm-clock';
import type { FormState } from '@/shared/forms/form-state';
import { accept } from '@/shared/outcome';

const confirm = doorAction(
  { may: 'own', form: ConfirmClock },
  async ({ commandId, shop, shownAt, wasRight }, { actor }) => {
    const outcome = await confirmClock({ commandId, shopId: shop, actor, shownAt, wasRight }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({ message: 'The time is confirmed. The board counts by it again.', link: '/keep-out' });
  },
);

/** Say that this machine's clock is right. */
export async function confirmClockAction(state: FormState, form: FormData): Promise<FormState> {
  return confirm(state, form);
}
