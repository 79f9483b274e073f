import 'server-only';
import { keyOf } from './by-owner';
import { database } from './database';
import { type History, historyOf } from './ledger-rows';
import type { ContainerAt } from './movements';

/** A bottle that a record drew from, with everything that ever happened to it. */
export type DrawnFrom = ContainerAt & { product: string; history: History };

/** The bottles that a record drew from, in the order in which they were drawn. */
export async function drawnFor(shopId: string, applicationId: string): Promise<DrawnFrom[]> {
  const { reader } = await database();
  const rows = await reader.movement.findMany({
    where: { shopId, applicationId },
    select: { lotId: true, place: true, container: { select: { lot: { select: { productId: true } } } } },
    orderBy: { number: 'asc' },
  });
  const spots = new Map(rows.map((row) => [keyOf(row.lotId, row.place), row]));
  const drawn: DrawnFrom[] = [];
  for (const { lotId, place, container } of spots.values()) {
    const history = await historyOf(shopId, { lotId, place });
    if (history) drawn.push({ lotId, place, product: container.lot.productId, history });
  }
  return drawn;
}
