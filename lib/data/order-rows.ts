import 'server-only';
import { plainMoney } from '@/lib/engine/exchange/plain-text';
import { byOwner } from './by-owner';
import type { Rows } from './database';
import { toMicros } from './whole';

/** What was ordered, as a shop file tells it. */
export async function ordersOf(rows: Rows, mine: { where: { shopId: string }; orderBy: { position: 'asc' } }) {
  const orders = await rows.purchaseOrder.findMany(mine);
  const lines = byOwner(await rows.purchaseLine.findMany(mine), ({ orderId }) => orderId);
  return orders.map(({ id, supplierId, placedOn, expectedOn, freight, note, closedOn }) => ({
    ...{ id, supplier: supplierId, placedOn, expectedOn, freight: money(freight), note, closedOn },
    lines: lines(id).map(({ offerId, count, price }) => ({ offer: offerId, count, price: money(price) })),
  }));
}

const money = (stored: bigint | null): string | null => (stored === null ? null : plainMoney(toMicros(stored)));
