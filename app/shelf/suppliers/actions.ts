'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { clock } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { removeFromShop } from '@/lib/commands/remove-from-shop';
import { doorAction } from '@/lib/door/door-action';
import { goodsOf } from '@/lib/views/goods';
import type { FormState } from '@/shared/forms/form-state';
import {
  faultsBeside,
  namesake,
  PutAwayGoods,
  RemoveGoods,
  SupplierForm,
  supplierOfFields,
} from '@/shared/forms/supplier';
import { accept, refuse } from '@/shared/outcome';

const save = doorAction({ may: 'grow', form: SupplierForm }, async (sent, { actor }) => {
  const { commandId, shop: shopId, id, expecting, keepBoth, ...fields } = sent;
  const goods = await goodsOf(clock, shopId);
  if (!goods) return refuse({ code: 'not-found', what: 'shop', id: shopId });
  const other = namesake(goods.file.suppliers, id, fields.name);
  if (other && keepBoth !== 'yes') {
    const message = `There is already a supplier named ${other.name}. Give this one another name, or tick that both are meant.`;
    return refuse({ code: 'faults', faults: [{ path: 'keepBoth', message }] });
  }
  const part = { suppliers: [supplierOfFields(id, fields)] };
  const expected = [{ list: 'suppliers' as const, id, fingerprint: expecting || null }];
  const outcome = await changeShop({ commandId, shopId, actor, part, expecting: expected }, clock);
  if (!outcome.ok) {
    const { refusal } = outcome;
    return refuse(
      refusal.code === 'faults' ? { ...refusal, faults: faultsBeside(refusal.faults, 'suppliers[0]') } : refusal,
    );
  }
  revalidatePath('/', 'layout');
  return accept({ message: `${fields.name} is saved.`, link: `/shelf/suppliers/${encodeURIComponent(id)}` });
});

/** Enter a supplier or change one. */
export async function saveSupplierAction(state: FormState, form: FormData): Promise<FormState> {
  return save(state, form);
}

const putAway = doorAction(
  { may: 'grow', form: PutAwayGoods },
  async ({ commandId, shop: shopId, what, id, expecting, archived }, { actor }) => {
    const goods = await goodsOf(clock, shopId);
    const list = what === 'supplier' ? ('suppliers' as const) : ('offers' as const);
    const thing = goods?.file[list].find((one) => one.id === id);
    if (!thing) return refuse({ code: 'not-found', what, id });
    const part = { [list]: [{ ...thing, archived: archived === 'yes' }] };
    const expected = [{ list, id, fingerprint: expecting }];
    const outcome = await changeShop({ commandId, shopId, actor, part, expecting: expected }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    const away = 'It is put away: it counts in no price, and nothing of it is forgotten.';
    return accept({ message: archived === 'yes' ? away : 'It is back among those that can be bought from.' });
  },
);

/** Put a supplier or an offer away, or take it out again. */
export async function putAwayGoodsAction(state: FormState, form: FormData): Promise<FormState> {
  return putAway(state, form);
}

const remove = doorAction(
  { may: 'grow', form: RemoveGoods },
  async ({ commandId, shop: shopId, what, id }, { actor }) => {
    const outcome = await removeFromShop({ commandId, shopId, actor, what, id }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    redirect('/shelf/suppliers');
  },
);

/** Remove a supplier that was entered by mistake and never used. */
export async function removeGoodsAction(state: FormState, form: FormData): Promise<FormState> {
  return remove(state, form);
}
