import 'server-only';
import { byOwner } from './by-owner';
import type { Rows } from './database';
import { moneyText } from './saving';

type Mine = {
  own: { where: { shopId: string; id: { in: string[] } | undefined }; orderBy: { position: 'asc' } };
  owned: (column: 'orderId') => { shopId: string; orderId: { in: string[] } | undefined };
};

/** What was ordered, as a shop file tells it. */
export async function ordersOf(rows: Rows, mine: Mine) {
  const orders = await rows.purchaseOrder.findMany(mine.own);
  const said = await rows.purchaseLine.findMany({ where: mine.owned('orderId'), orderBy: { position: 'asc' } });
  const lines = byOwner(said, ({ orderId }) => orderId);
  return orders.map(({ id, supplierId, placedOn, expectedOn, freight, note, closedOn }) => ({
    ...{ id, supplier: supplierId, placedOn, expectedOn, freight: moneyText(freight), note, closedOn },
    lines: lines(id).map(({ offerId, count, price }) => ({ offer: offerId, count, price: moneyText(price) })),
  }));
}
