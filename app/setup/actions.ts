'use server';

import { revalidatePath } from 'next/cache';
import { cookies } from 'next/headers';
import { clock } from '@/lib/clock';
import { startShop } from '@/lib/commands/start-shop';
import { doorAction } from '@/lib/door/door-action';
import { SHOWN_SHOP, shopNamed } from '@/lib/views/shown-shop';
import type { FormState } from '@/shared/forms/form-state';
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

async function look(shopId: string): Promise<void> {
  const year = 365 * 24 * 60 * 60;
  (await cookies()).set(SHOWN_SHOP, shopId, { httpOnly: true, sameSite: 'lax', path: '/', maxAge: year });
  revalidatePath('/', 'layout');
}
