'use server';

import { revalidatePath } from 'next/cache';
import { cookies } from 'next/headers';
import { clock } from '@/lib/clock';
import { makeBackupNow } from '@/lib/commands/back-up';
import { putRight } from '@/lib/commands/put-right';
import { startShop } from '@/lib/commands/start-shop';
import { isServedByHttps } from '@/lib/door/allowed-hosts';
import { doorAction } from '@/lib/door/door-action';
import { shopNamed } from '@/lib/views/shown-shop';
import { DEVICE_SHOP, REMEMBERED_SECONDS } from '@/shared/device-shop';
import { BackUp } from '@/shared/forms/back-up';
import type { FormState } from '@/shared/forms/form-state';
import { PutRightForm } from '@/shared/forms/put-right';
import { ShowShop } from '@/shared/forms/show-shop';
import { StartShop } from '@/shared/forms/start-shop';
import { accept, refuse } from '@/shared/outcome';

const show = doorAction({ may: 'be-here', form: ShowShop }, async ({ shop }) => {
  const found = await shopNamed(shop);
  if (!found) return refuse({ code: 'not-found', what: 'shop', id: shop });
  await look(found.id);
  return accept({ message: `${found.name} is the shop of this device now.`, link: '/today' });
});

/** Let this device work in another shop. */
export async function showShopAction(state: FormState, form: FormData): Promise<FormState> {
  return show(state, form);
}

const start = doorAction({ may: 'own', form: StartShop }, async ({ commandId, here, ...settings }, visitor) => {
  const { personId: ownerId, actor } = visitor;
  const outcome = await startShop({ commandId, settings, ownerId, actor }, clock);
  if (!outcome.ok) return outcome;
  const { shopId } = outcome.value;
  if (here === 'yes') await look(shopId);
  else revalidatePath('/', 'layout');
  const link = here === 'yes' ? '/today' : '/setup#shops';
  return accept({ message: `${settings.name} is there, with nothing in it yet.`, link });
});

/** Start a shop with nothing in it. The device works in it only if the person asks for that. */
export async function startShopAction(state: FormState, form: FormData): Promise<FormState> {
  return start(state, form);
}

const right = doorAction(
  { may: 'own', form: PutRightForm },
  async ({ commandId, shop, list, id, reason, values }, { actor }) => {
    const outcome = await putRight({ commandId, shopId: shop, actor, list, id, reason, values }, clock);
    if (!outcome.ok && outcome.refusal.code === 'faults') {
      const fieldOf = (path: string) => values.find((value) => value.path === path)?.field ?? path;
      const faults = outcome.refusal.faults.map(({ path, message }) => ({ path: fieldOf(path), message }));
      return refuse({ code: 'faults', faults });
    }
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({ message: 'It is put right, and can be read again.', link: '/setup' });
  },
);

/** Put a thing right that cannot be read. */
export async function putRightAction(state: FormState, form: FormData): Promise<FormState> {
  return right(state, form);
}

const backUp = doorAction({ may: 'own', form: BackUp }, async () => {
  const outcome = await makeBackupNow(clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  const { file, manifest } = outcome.value;
  if (manifest.isSound) return accept({ message: `Backed up and checked: ${file}` });
  return accept({ message: `Backed up, but with faults (${manifest.faults[0]}): ${file}` });
});

/** Make a backup now. */
export async function backUpAction(state: FormState, form: FormData): Promise<FormState> {
  return backUp(state, form);
}

async function look(shopId: string): Promise<void> {
  const lasting = { httpOnly: true, sameSite: 'lax', path: '/', maxAge: REMEMBERED_SECONDS } as const;
  (await cookies()).set(DEVICE_SHOP, shopId, { ...lasting, secure: isServedByHttps() });
  revalidatePath('/', 'layout');
}
