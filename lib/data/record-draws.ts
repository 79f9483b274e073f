import 'server-only';
import type { Stock } from '@/shared/quantity/amounts';
import { keyOf, MOST_NAMED } from './by-owner';
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

/** Every draw for some records of a shop, in the order in which they were written. */
export async function drawsForRecords(shopId: string, applications: readonly string[]): Promise<Draw[]> {
  const { reader } = await database();
  const isNamed = applications.length <= MOST_NAMED;
  const rows = await reader.movement.findMany({
    where: {
      ...{ shopId, kind: 'drawn', reversedBy: { is: null } },
      applicationId: isNamed ? { in: [...applications] } : { not: null },
    },
    select: { applicationId: true, lotId: true, place: true, amount: true },
    orderBy: { number: 'asc' },
  });
  const lots = await lotsDrawnFrom(shopId);
  return rows.flatMap(({ applicationId, lotId, place, amount }) => {
    const lot = lots.get(lotId);
    return lot ? [{ ...lot, application: applicationId ?? '', lotId, place, amount: toStock(amount) }] : [];
  });
}

/** What is said of every lot beside a draw. Read by shop, because a query that named each lot would name too many. */
async function lotsDrawnFrom(shopId: string): Promise<Map<string, Pick<Draw, 'product' | 'form' | 'packText'>>> {
  const { reader } = await database();
  const lots = await reader.lot.findMany({ where: { shopId }, select: { id: true, productId: true, packText: true } });
  const powders = await reader.product.findMany({ where: { shopId, form: 'powder' }, select: { id: true } });
  const isPowder = new Set(powders.map(({ id }) => id));
  return new Map(
    lots.map(({ id, productId, packText }) => [
      id,
      { product: productId, packText, form: isPowder.has(productId) ? 'powder' : 'liquid' },
    ]),
  );
}
