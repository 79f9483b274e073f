'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { makeSharedLink } from '@/lib/commands/make-shared-link';
import { revokeSharedLink } from '@/lib/commands/revoke-shared-link';
import { doorAction } from '@/lib/door/door-action';
import type { FormState } from '@/shared/forms/form-state';
import { MakeLink, RevokeLink } from '@/shared/forms/shared-link';
import { accept } from '@/shared/outcome';

const make = doorAction({ may: 'own', form: MakeLink }, async ({ shop, ...link }, { actor }) => {
  const outcome = await makeSharedLink({ ...link, shopId: shop, actor }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/setup', 'layout');
  return accept({ message: 'The link is made. It stands in the list.' });
});

const revoke = doorAction({ may: 'own', form: RevokeLink }, async ({ shop, ...link }, { actor }) => {
  const outcome = await revokeSharedLink({ ...link, shopId: shop, actor }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/setup', 'layout');
  return accept({ message: 'The link is revoked. It shows nothing any more.' });
});

/** Make a secret link. */
export async function makeLinkAction(state: FormState, form: FormData): Promise<FormState> {
  return make(state, form);
}

/** Let a secret link show nothing any more. */
export async function revokeLinkAction(state: FormState, form: FormData): Promise<FormState> {
  return revoke(state, form);
}
