'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { doorAction } from '@/lib/door/door-action';
import { goodsOf } from '@/lib/views/goods';
import type { FormState } from '@/shared/forms/form-state';
import { OfferForm, offerOfForm, twinOf } from '@/shared/forms/offer';
import { faultsBeside } from '@/shared/forms/supplier';
import { accept, refuse } from '@/shared/outcome';

const save = doorAction({ may: 'grow', form: OfferForm }, async (sent, { actor }) => {
  const { commandId, shop: shopId, id, expecting, keepBoth } = sent;
  const goods = await goodsOf(clock, shopId);
  if (!goods) return refuse({ code: 'not-found', what: 'shop', id: shopId });
  const { offer, faults } = offerOfForm(sent, goods.today);
  if (faults.length > 0) return refuse({ code: 'faults', faults });
  const twin = twinOf(goods.file, offer);
  if (twin && keepBoth !== 'yes') {
    const message = `This supplier already offers a pack of that size, ${twin.pack} at ${twin.price}. Change its price there, or tick that both are meant.`;
    return refuse({ code: 'faults', faults: [{ path: 'keepBoth', message }] });
  }
  const expected = [{ list: 'offers' as const, id, fingerprint: expecting || null }];
  const outcome = await changeShop({ commandId, shopId, actor, part: { offers: [offer] }, expecting: expected }, clock);
  if (!outcome.ok) {
    const { refusal } = outcome;
    return refuse(
      refusal.code === 'faults' ? { ...refusal, faults: faultsBeside(refusal.faults, 'offers[0]') } : refusal,
    );
  }
  revalidatePath('/', 'layout');
  const link = `/shelf/${encodeURIComponent(offer.product)}/offer/${encodeURIComponent(id)}`;
  const isNew = sent.was === null || offer.since !== sent.was.since;
  return accept({ message: `${offer.pack} is saved${isNew ? `, at ${offer.price} since ${offer.since}` : ''}.`, link });
});

/** Enter an offer or change one. A price that differs is a new line of its history. */
export async function saveOfferAction(state: FormState, form: FormData): Promise<FormState> {
  return save(state, form);
}
