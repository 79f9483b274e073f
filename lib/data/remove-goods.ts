import 'server-only';
import type { Removable } from '@/lib/engine/exchange/uses';
import type { Rows } from './database';

/**
 * What only the books know of something: uses that its shop file no longer shows, because it tells of today.
 *
 * Gives    where, in words; empty when it never left a trace
 */
export async function tracesOf(rows: Rows, shopId: string, what: Removable, id: string): Promise<string[]> {
  if (what === 'supplier') return [];
  if (what === 'offer') {
    const prices = await rows.price.count({ where: { shopId, offerId: id } });
    return prices > 0 ? ['its prices, which are history and stay'] : [];
  }
  const where = { shopId, productId: id };
  const recipes = await rows.ingredient.count({ where });
  const sprayed = await rows.applicationProduct.count({ where });
  return [
    ...(recipes > 0 ? ['an earlier version of a recipe'] : []),
    ...(sprayed > 0 ? ['an earlier version of a spraying record'] : []),
  ];
}

/** Take something out of a shop that nothing refers to, and close the gap that it leaves in the order of its list. */
export async function removeGoods(rows: Rows, shopId: string, what: Removable, id: string): Promise<void> {
  const key = { where: { shopId_id: { shopId, id } } };
  const after = (position: number) => ({
    where: { shopId, position: { gt: position } },
    data: { position: { decrement: 1 } },
  });
  if (what === 'product') {
    await rows.content.deleteMany({ where: { shopId, productId: id } });
    await rows.rate.deleteMany({ where: { shopId, productId: id } });
    const { position } = await rows.product.delete(key);
    await rows.product.updateMany(after(position));
  } else if (what === 'supplier') {
    const { position } = await rows.supplier.delete(key);
    await rows.supplier.updateMany(after(position));
  } else {
    const { position } = await rows.offer.delete(key);
    await rows.offer.updateMany(after(position));
  }
}
