import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Rows } from './database';
import { type Saving, storedMoney } from './saving';
import { small } from './whole';

type FileOrder = ShopFile['orders'][number];

/** Save orders with their lines. */
export async function saveOrders(rows: Rows, shopId: string, orders: Saving<FileOrder>[]): Promise<void> {
  for (const { item, position, isNew } of orders) {
    if (isNew) {
      await rows.purchaseOrder.create({ data: { shopId, id: item.id, position: small(position), ...orderRow(item) } });
    } else {
      await rows.purchaseLine.deleteMany({ where: { shopId, orderId: item.id } });
      await rows.purchaseOrder.update({ where: { shopId_id: { shopId, id: item.id } }, data: orderRow(item) });
    }
  }
  await rows.purchaseLine.createMany({
    data: orders.flatMap(({ item }) =>
      item.lines.map(({ offer, count, price }, position) => {
        return { shopId, orderId: item.id, position, offerId: offer, count: small(count), price: storedMoney(price) };
      }),
    ),
  });
}

const orderRow = ({ supplier, placedOn, expectedOn, freight, note, closedOn }: FileOrder) => ({
  ...{ supplierId: supplier, placedOn, expectedOn, note, closedOn },
  freight: storedMoney(freight),
});
