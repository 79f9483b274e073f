import 'server-only';
import { database } from './database';

/** What a shop and its benches are called, in the shop's order, read by themselves. Null when there is no such shop. */
export async function benchNames(shopId: string) {
  const { reader } = await database();
  const shop = await reader.shop.findUnique({ where: { id: shopId }, select: { name: true } });
  if (!shop) return null;
  const [where, orderBy, select] = [{ shopId }, { position: 'asc' }, { id: true, name: true }] as const;
  return { shop: shop.name, benches: await reader.bench.findMany({ where, orderBy, select }) };
}
