import 'server-only';
import { byOwner } from './by-owner';
import type { Rows } from './database';
import { moneyText } from './saving';

/** What was ordered, as a shop file tells it. */
export async function ordersOf(rows: Rows, mine: { where: { shopId: string }; orderBy: { position: 'asc' } }) {
  const orders = await rows.purchaseOrder.findMany(mine);
  const lines = byOwner(await rows.purchaseLine.findMany(mine), ({ orderId }) => orderId);
  return orders.map(({ id, supplierId, placedOn, expectedOn, freight, note, closedOn }) => ({
    ...{ id, supplier: supplierId, placedOn, expectedOn, freight: moneyText(freight), note, closedOn },
    lines: lines(id).map(({ offerId, count, price }) => ({ offer: offerId, count, price: moneyText(price) })),
  }));
}
