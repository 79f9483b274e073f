'use server';

import { revalidatePath } from 'next/cache';
import { cookies } from 'next/headers';
import { clock } from '@/lib/clock';
import { makeBackupNow } from '@/lib/commands/back-up';
import { putRight } from '@/lib/commands/put-right';
import { startShop } from '@/lib/commands/start-shop';
import { doorAction } from '@/lib/door/door-action';
import { SHOWN_SHOP, shopNamed } from '@/lib/views/shown-shop';
import { BackUp } from '@/shared/forms/back-up';
import type { FormState } from '@/shared/forms/form-state';
import { PutRightForm } from '@/shared/forms/put-right';
import { ShowShop } from '@/shared/forms/show-shop';
import { StartShop } from '@/shared/forms/start-shop';
import { accept, refuse } from '@/shared/outcome';

const show = doorAction(ShowShop, async ({ shop }) => {
  const found = await shopNamed(shop);
  if (!found) return refuse({ code: 'not-found', what: 'shop', id: shop });
  await look(found.id);
  return accept({ message: `${found.name} is shown now.`, link: '/today' });
});

/** Look at another shop in this browser. */
export async function showShopAction(state: FormState, form: FormData): Promise<FormState> {
  return show(state, form);
}

const start = doorAction(StartShop, async ({ commandId, ...settings }) => {
  const outcome = await startShop({ commandId, settings }, clock);
  if (!outcome.ok) return outcome;
  await look(outcome.value.shopId);
  return accept({ message: `${settings.name} is there, with nothing in it yet.`, link: '/today' });
});

/** Start a shop with nothing in it, and look at it. */
export async function startShopAction(state: FormState, form: FormData): Promise<FormState> {
  return start(state, form);
}

const right = doorAction(PutRightForm, async ({ commandId, shop, list, id, reason, values }, { actor }) => {
  const outcome = await putRight({ commandId, shopId: shop, actor, list, id, reason, values }, clock);
  if (!outcome.ok && outcome.refusal.code === 'faults') {
    const fieldOf = (path: string) => values.find((value) => value.path === path)?.field ?? path;
    const faults = outcome.refusal.faults.map(({ path, message }) => ({ path: fieldOf(path), message }));
    return refuse({ code: 'faults', faults });
  }
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: 'It is put right, and can be read again.', link: '/setup' });
});

/** Put a thing right that cannot be read. */
export async function putRightAction(state: FormState, form: FormData): Promise<FormState> {
  return right(state, form);
}

const backUp = doorAction(BackUp, async () => {
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
  const year = 365 * 24 * 60 * 60;
  (await cookies()).set(SHOWN_SHOP, shopId, { httpOnly: true, sameSite: 'lax', path: '/', maxAge: year });
  revalidatePath('/', 'layout');
}
