import 'server-only';
import type { Rows } from './database';

/**
 * The number of the next line in the books of a shop. Movements and changes of containers are counted together, so that
 * what happened to a bottle stands in the order in which it was written down, whatever the clocks say.
 */
export async function nextLine(rows: Rows, shopId: string): Promise<bigint> {
  // The last row by the index, and not a maximum, which the database would look for among all rows of the shop.
  const newest = { where: { shopId }, orderBy: { number: 'desc' }, select: { number: true } } as const;
  const moved = (await rows.movement.findFirst(newest))?.number ?? 0n;
  const changed = BigInt((await rows.containerChange.findFirst(newest))?.number ?? 0);
  return (moved > changed ? moved : changed) + 1n;
}
