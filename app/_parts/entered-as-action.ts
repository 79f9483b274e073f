'use server';

import { revalidatePath } from 'next/cache';
import { cookies } from 'next/headers';
import { isServedByHttps } from '@/lib/door/allowed-hosts';
import { doorAction } from '@/lib/door/door-action';
import { ENTERED_AS } from '@/lib/door/visitor';
import { EnteredAs } from '@/shared/forms/entered-as';
import type { FormState } from '@/shared/forms/form-state';
import { accept } from '@/shared/outcome';

const sign = doorAction({ may: 'be-here', form: EnteredAs }, async ({ who }) => {
  const year = 365 * 24 * 60 * 60;
  (await cookies()).set(ENTERED_AS, who, {
    httpOnly: true,
    sameSite: 'lax',
    path: '/',
    maxAge: year,
    secure: isServedByHttps(),
  });
  revalidatePath('/', 'layout');
  return accept({ message: `What is entered here from now on is signed ${who}.` });
});

/** Remember in this browser who works with it: every entry of the ledger and the log says so. */
export async function enteredAsAction(state: FormState, form: FormData): Promise<FormState> {
  return sign(state, form);
}
