'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { receiveDelivery } from '@/lib/commands/receive-delivery';
import { receiveLot } from '@/lib/commands/receive-lot';
import { receiveOrder } from '@/lib/commands/receive-order';
import { doorAction } from '@/lib/door/door-action';
import { offersOf } from '@/lib/views/receive';
import type { FormState } from '@/shared/forms/form-state';
import { type Delivery, type DeliveryLine, ReceiveDelivery, ReceiveOne } from '@/shared/forms/receive';
import { accept, type Fault, refuse } from '@/shared/outcome';

const receiveOne = doorAction({ may: 'grow', form: ReceiveOne }, async ({ shop, keptIn, ...lot }, { actor }) => {
  const outcome = await receiveLot({ ...lot, shopId: shop, actor, keptIn: keptIn || null }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  const { lot: id } = outcome.value;
  return accept({ message: `${bottles(lot.count)} on the shelf.`, link: received([id]) });
});

/** Put on the shelf what came in without an order. */
export async function receiveOneAction(state: FormState, form: FormData): Promise<FormState> {
  return receiveOne(state, form);
}

const receiveAll = doorAction({ may: 'grow', form: ReceiveDelivery }, async (delivery, { actor }) => {
  const outcome = delivery.order === null ? await withoutOrder(delivery, actor) : await ofOrder(delivery, actor);
  if (!outcome.ok && outcome.refusal.code === 'faults') {
    return refuse({ code: 'faults', faults: outcome.refusal.faults.map((fault) => inForm(fault, delivery.lines)) });
  }
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return outcome;
});

async function withoutOrder({ commandId, shop, receivedOn, keptIn, lines }: Delivery, actor: string) {
  const offers = await offersOf(shop);
  const gone = lines.flatMap(({ offer }, at) => (offers.has(offer) ? [] : [at]));
  if (gone.length > 0) {
    return refuse({ code: 'faults', faults: gone.map((at) => ({ path: `lots[${at}].count`, message: GONE })) });
  }
  const lots = lines.flatMap(({ offer, count, paid, expiresOn }) => {
    const sold = offers.get(offer);
    return sold ? [{ ...sold, count, paid, expiresOn, keptIn: keptIn || null }] : [];
  });
  const outcome = await receiveDelivery({ commandId, shopId: shop, actor, receivedOn, lots }, clock);
  if (!outcome.ok) return outcome;
  return accept({ message: `${bottles(countOf(lines))} on the shelf.`, link: received(outcome.value.lots) });
}

async function ofOrder({ commandId, shop, order, receivedOn, keptIn, restIsOff, lines }: Delivery, actor: string) {
  const came = lines.map(({ row, ...line }) => ({ ...line, keptIn: keptIn || null }));
  const input = { commandId, shopId: shop, actor, order: order ?? '', receivedOn, came, restIsOff };
  const outcome = await receiveOrder(input, clock);
  if (!outcome.ok) return outcome;
  const { expected } = outcome.value;
  const rest = expected === 0 ? 'Nothing more is expected.' : `${packs(expected)} still expected.`;
  const link = `/buy/orders/${encodeURIComponent(order ?? '')}`;
  return accept({ message: `${bottles(countOf(lines))} on the shelf. ${rest}`, link });
}

/** Put on the shelf what a delivery brought, all of it or nothing. */
export async function receiveDeliveryAction(state: FormState, form: FormData): Promise<FormState> {
  return receiveAll(state, form);
}

const GONE = 'This offer is no longer there. Reload the page.';

/** A fault of a lot of the delivery, at the row of the form that it came from. */
function inForm({ path, message }: Fault, lines: DeliveryLine[]): Fault {
  const parts = /^lots\[(\d+)\]\.(\w+)$/.exec(path);
  const row = lines[Number(parts?.[1])]?.row;
  if (row === undefined) return { path, message };
  return { path: `lots[${row}].${parts?.[2] === 'paid' ? 'paid' : 'count'}`, message };
}

const bottles = (count: number): string => `${count} ${count === 1 ? 'bottle stands' : 'bottles stand'}`;

const packs = (count: number): string => (count === 1 ? '1 pack is' : `${count} packs are`);

const countOf = (lines: DeliveryLine[]): number => lines.reduce((sum, { count }) => sum + count, 0);

const received = (lots: string[]): string => `/shelf/receive?lots=${lots.map(encodeURIComponent).join(',')}`;
