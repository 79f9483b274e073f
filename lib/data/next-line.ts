import 'server-only';
import type { Rows } from './database';

/**
 * The number of the next line in the books of a shop. Movements and changes of containers are counted together, so that
 * what happened to a bottle stands in the order in which it was written down, whatever the clocks say.
 */
export async function nextLine(rows: Rows, shopId: string): Promise<bigint> {
  const highest = { where: { shopId }, _max: { number: true } } as const;
  const movements = await rows.movement.aggregate(highest);
  const changes = await rows.containerChange.aggregate(highest);
  const moved = movements._max.number ?? 0n;
  const changed = BigInt(changes._max.number ?? 0);
  return (moved > changed ? moved : changed) + 1n;
}
