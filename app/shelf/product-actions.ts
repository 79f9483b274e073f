'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { clock } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { putAwaySheet } from '@/lib/commands/put-away-sheet';
import { removeFromShop } from '@/lib/commands/remove-from-shop';
import { doorAction } from '@/lib/door/door-action';
import { shopOfForm } from '@/lib/views/product-form';
import type { FormState } from '@/shared/forms/form-state';
import { ProductForm, SHELF_PAGES } from '@/shared/forms/product';
import { faultsInForm } from '@/shared/forms/product-faults';
import { productOfForm, YES } from '@/shared/forms/product-fields';
import { PutAway, PutAwaySheetForm, RemoveProduct } from '@/shared/forms/put-away';
import { accept, refuse } from '@/shared/outcome';
import { idFromName } from '@/shared/shop-file/id-from-name';

const save = doorAction(
  { may: 'grow', form: ProductForm },
  async ({ commandId, shop, id, standing, keepBoth, fields }, { actor }) => {
    const file = await shopOfForm(shop);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shop });
    const was = file.products.find((one) => one.id === id) ?? null;
    const taken = file.products.map((one) => one.id);
    const product = productOfForm(fields, id || idFromName(fields.name ?? '', taken, SHELF_PAGES), file.shop.units);
    const twin = file.products.find((one) => one.id !== id && isSameName(one.name, product.name));
    if (twin && was?.name !== product.name && keepBoth !== YES) {
      const message = `There is already a product of this name, ${twin.kind}, ${twin.form}. Keep both?`;
      return refuse({ code: 'faults', faults: [{ path: 'keepBoth', message }] });
    }
    const expecting = [{ list: 'products' as const, id: product.id, fingerprint: standing || null }];
    const part = { products: [product] };
    const outcome = await changeShop({ commandId, shopId: shop, actor, part, expecting }, clock);
    if (!outcome.ok) {
      if (outcome.refusal.code !== 'faults') return outcome;
      const elsewhere = { recipes: file.recipes, wasForm: was?.form ?? null };
      return refuse({ code: 'faults', faults: faultsInForm(outcome.refusal.faults, fields, elsewhere) });
    }
    revalidatePath('/', 'layout');
    return accept({ message: `${product.name} is kept.`, link: `/shelf/${encodeURIComponent(product.id)}` });
  },
);

const isSameName = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase();

/** Enter a product, or correct one. */
export async function saveProductAction(state: FormState, form: FormData): Promise<FormState> {
  return save(state, form);
}

const putAway = doorAction(
  { may: 'grow', form: PutAway },
  async ({ commandId, shop, product: id, standing, archived }, { actor }) => {
    const product = (await shopOfForm(shop))?.products.find((one) => one.id === id);
    if (!product) return refuse({ code: 'not-found', what: 'product', id });
    const part = { products: [{ ...product, archived: archived === YES }] };
    const expecting = [{ list: 'products' as const, id, fingerprint: standing }];
    const outcome = await changeShop({ commandId, shopId: shop, actor, part, expecting }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    const message =
      archived === YES
        ? 'It is put away: offered nowhere any more. Recipes that hold it are planned as before.'
        : 'It is back on the shelf.';
    return accept({ message });
  },
);

/** Put a product away, or take it out again. */
export async function putAwayAction(state: FormState, form: FormData): Promise<FormState> {
  return putAway(state, form);
}

const remove = doorAction({ may: 'grow', form: RemoveProduct }, async ({ commandId, shop, product: id }, { actor }) => {
  const outcome = await removeFromShop({ commandId, shopId: shop, actor, what: 'product', id }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  redirect('/shelf');
});

/** Remove a product that nothing ever used. */
export async function removeProductAction(state: FormState, form: FormData): Promise<FormState> {
  return remove(state, form);
}

const shelveSheet = doorAction(
  { may: 'grow', form: PutAwaySheetForm },
  async ({ commandId, shop: shopId, product, number, away }, { actor }) => {
    const outcome = await putAwaySheet({ commandId, shopId, actor, product, number, isAway: away === 'yes' }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({
      message:
        away === 'yes' ? 'It is put away. Its file is kept.' : 'It is out again, and counts if it is the newest.',
    });
  },
);

/** Put a safety data sheet away, or take it out again. */
export async function shelveSheetAction(state: FormState, form: FormData): Promise<FormState> {
  return shelveSheet(state, form);
}
