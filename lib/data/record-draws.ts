import 'server-only';
import type { Stock } from '@/shared/quantity/amounts';
import { keyOf } from './by-owner';
import { database } from './database';
import { type History, historyOf } from './ledger-rows';
import type { ContainerAt } from './movements';
import { toStock } from './whole';

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

/** What came out of one bottle for a record, and was not taken back. */
export type Draw = ContainerAt & {
  application: string;
  product: string;
  form: 'liquid' | 'powder';
  packText: string;
  amount: Stock;
};

/** Every draw for a record of a shop, or of one of them, in the order in which they were written. */
export async function drawsForRecords(shopId: string, application?: string): Promise<Draw[]> {
  const { reader } = await database();
  const product = { select: { id: true, form: true } };
  const rows = await reader.movement.findMany({
    where: { shopId, kind: 'drawn', applicationId: application ?? { not: null }, reversedBy: { is: null } },
    select: {
      ...{ applicationId: true, lotId: true, place: true, amount: true },
      container: { select: { lot: { select: { packText: true, product } } } },
    },
    orderBy: { number: 'asc' },
  });
  return rows.map(({ applicationId, lotId, place, amount, container: { lot } }) => ({
    ...{ application: applicationId ?? '', lotId, place, amount: toStock(amount) },
    ...{ product: lot.product.id, packText: lot.packText },
    form: lot.product.form === 'powder' ? ('powder' as const) : ('liquid' as const),
  }));
}
