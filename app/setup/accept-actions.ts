'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { acceptRecords } from '@/lib/commands/accept-records';
import { acceptRows } from '@/lib/commands/accept-rows';
import { doorAction } from '@/lib/door/door-action';
import { AcceptRowsForm } from '@/shared/forms/accept-rows';
import type { FormState } from '@/shared/forms/form-state';
import { accept } from '@/shared/outcome';

const acceptingRecords = doorAction(
  { may: 'own', form: AcceptRowsForm },
  async ({ commandId, shop, seen, reason }, { actor }) => {
    const outcome = await acceptRecords({ commandId, shopId: shop, actor, seen, reason }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({ message: 'The records are accepted as they stand. The log says so.', link: '/log#accepted' });
  },
);

/** Accept records as they stand that do not fit their chain. */
export async function acceptRecordsAction(state: FormState, form: FormData): Promise<FormState> {
  return acceptingRecords(state, form);
}

const accepting = doorAction(
  { may: 'own', form: AcceptRowsForm },
  async ({ commandId, shop, seen, reason }, { actor }) => {
    const outcome = await acceptRows({ commandId, shopId: shop, actor, seen, reason }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({ message: 'It is accepted as it stands.', link: '/keep-out' });
  },
);

/** Accept damaged rows as they stand. */
export async function acceptRowsAction(state: FormState, form: FormData): Promise<FormState> {
  return accepting(state, form);
}
