'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { doorAction } from '@/lib/door/door-action';
import { goodsOf } from '@/lib/views/goods';
import { leadToTake, priceToTake } from '@/lib/views/learned-from-orders';
import type { FormState } from '@/shared/forms/form-state';
import { CloseOrder, OrderForm, orderOfForm, TakeLead, TakePrice } from '@/shared/forms/order';
import { accept, type Fault, refuse } from '@/shared/outcome';

const saveOrder = doorAction({ may: 'grow', form: OrderForm }, async (sent, { actor }) => {
  const { commandId, shop: shopId, standing } = sent;
  const goods = await goodsOf(clock, shopId);
  if (!goods) return refuse({ code: 'not-found', what: 'shop', id: shopId });
  const { order, faults } = orderOfForm(sent, goods.file, goods.today);
  if (faults.length > 0) return refuse({ code: 'faults', faults });
  const expecting = [{ list: 'orders' as const, id: order.id, fingerprint: standing || null }];
  const outcome = await changeShop({ commandId, shopId, actor, part: { orders: [order] }, expecting }, clock);
  if (!outcome.ok && outcome.refusal.code === 'faults') {
    return refuse({ code: 'faults', faults: outcome.refusal.faults.map((fault) => beside(fault, sent)) });
  }
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  const message = sent.id === '' ? 'It is ordered, and counts as on its way.' : 'The order is saved.';
  return accept({ message, link: `/buy/orders/${encodeURIComponent(order.id)}` });
});

/** A fault of the order at the field of the form that it came from. */
function beside({ path, message }: Fault, { lines }: OrderForm): Fault {
  const line = /^orders\[0\]\.lines\[(\d+)\]\.(\w+)$/.exec(path);
  const row = lines[Number(line?.[1])]?.row;
  if (row !== undefined) return { path: `lines[${row}].${line?.[2] === 'price' ? 'price' : 'count'}`, message };
  return { path: path.replace(/^orders\[0\]\./, ''), message };
}

/** Note that something was ordered, or change what was. */
export async function saveOrderAction(state: FormState, form: FormData): Promise<FormState> {
  return saveOrder(state, form);
}

const closeOrder = doorAction(
  { may: 'grow', form: CloseOrder },
  async ({ commandId, shop: shopId, id, standing, closed }, { actor }) => {
    const goods = await goodsOf(clock, shopId);
    const order = goods?.file.orders.find((one) => one.id === id);
    if (!goods || !order) return refuse({ code: 'not-found', what: 'order', id });
    const part = { orders: [{ ...order, closedOn: closed === 'yes' ? goods.today : null }] };
    const expecting = [{ list: 'orders' as const, id, fingerprint: standing }];
    const outcome = await changeShop({ commandId, shopId, actor, part, expecting }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({
      message: closed === 'yes' ? 'Closed: nothing more of it is expected.' : 'The rest is expected again.',
    });
  },
);

/** Close an order of which nothing more is expected, or expect the rest of it after all. */
export async function closeOrderAction(state: FormState, form: FormData): Promise<FormState> {
  return closeOrder(state, form);
}

const takePrice = doorAction(
  { may: 'grow', form: TakePrice },
  async ({ commandId, shop: shopId, ...asked }, { actor }) => {
    const taken = await priceToTake(clock, shopId, asked);
    if (!taken.ok) return taken;
    const { offer, expecting, message } = taken.value;
    const outcome = await changeShop({ commandId, shopId, actor, part: { offers: [offer] }, expecting }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    const link = `/shelf/${encodeURIComponent(offer.product)}/offer/${encodeURIComponent(offer.id)}`;
    return accept({ message, link });
  },
);

/** Let what was paid be the price of the offer from the day it came. */
export async function takePriceAction(state: FormState, form: FormData): Promise<FormState> {
  return takePrice(state, form);
}

const takeLead = doorAction(
  { may: 'grow', form: TakeLead },
  async ({ commandId, shop: shopId, supplier, which }, { actor }) => {
    const taken = await leadToTake(clock, shopId, supplier, which);
    if (!taken.ok) return taken;
    const { offers, expecting, message } = taken.value;
    const outcome = await changeShop({ commandId, shopId, actor, part: { offers }, expecting }, clock);
    if (!outcome.ok) return outcome;
    revalidatePath('/', 'layout');
    return accept({ message });
  },
);

/** Let the offers of a supplier take as long as its orders really took. */
export async function takeLeadAction(state: FormState, form: FormData): Promise<FormState> {
  return takeLead(state, form);
}
