import 'server-only';
import type { Instant } from '@/shared/time/instant';
import { database, type Rows } from './database';
import { sha256 } from './sha256';
import { small, toInstant, toStored } from './whole';
import type { Stamp } from './writer';

/** A safety data sheet that is kept with a product, without its bytes. The highest number that is not put away counts. */
export type SheetKept = {
  product: string;
  number: number;
  fileName: string;
  size: number;
  actor: string;
  recordedAt: Instant;
  isAway: boolean;
};

const LAST_CHANGE = { orderBy: { step: 'desc' }, take: 1, select: { isAway: true } } as const;
const KEPT = {
  ...{ productId: true, number: true, fileName: true, size: true, actor: true, recordedAt: true },
  changes: LAST_CHANGE,
} as const;

/** Every sheet of a shop, or of one of its products, the newest of each first. */
export async function sheetsKept(shopId: string, product?: string): Promise<SheetKept[]> {
  const { reader } = await database();
  const rows = await reader.safetySheet.findMany({
    where: { shopId, productId: product },
    select: KEPT,
    orderBy: [{ productId: 'asc' }, { number: 'desc' }],
  });
  return rows.map(({ productId, recordedAt, changes: [last], ...row }) => ({
    ...row,
    product: productId,
    recordedAt: toInstant(recordedAt),
    isAway: last?.isAway ?? false,
  }));
}

/** A sheet with its bytes; without a number, the newest that is not put away. Null when there is none, or when it is not as it was kept. */
export async function sheetWithBytes(
  shopId: string,
  product: string,
  number?: number,
): Promise<{ fileName: string; bytes: Uint8Array } | null> {
  const { reader } = await database();
  const counts = number ?? (await sheetsKept(shopId, product)).find(({ isAway }) => !isAway)?.number;
  if (counts === undefined) return null;
  const row = await reader.safetySheet.findFirst({ where: { shopId, productId: product, number: counts } });
  return row && sha256(row.bytes) === row.hash ? { fileName: row.fileName, bytes: row.bytes } : null;
}

/** The one writer of sheets: a further version beside those that are kept. Gives its number. */
export async function keepSheet(
  rows: Rows,
  stamp: Stamp,
  { product: productId, fileName, bytes }: { product: string; fileName: string; bytes: Uint8Array },
): Promise<number> {
  const { shopId, actor, commandId, recordedAt } = stamp;
  stamp.touched.addOutside();
  const last = await rows.safetySheet.aggregate({ where: { shopId, productId }, _max: { number: true } });
  const number = small((last._max.number ?? 0) + 1);
  const file = { fileName, size: small(bytes.length), hash: sha256(bytes), bytes: new Uint8Array(bytes) };
  await rows.safetySheet.create({
    data: { shopId, productId, number, ...file, actor, commandId, recordedAt: toStored(recordedAt) },
  });
  return number;
}

/**
 * Put a sheet away, or take it out again: a further line beside it, and the sheet itself stays.
 *
 * Gives    false when there is no such sheet
 */
export async function shelveSheet(
  rows: Rows,
  { shopId, actor, commandId, recordedAt, touched }: Stamp,
  { product: productId, number, isAway }: { product: string; number: number; isAway: boolean },
): Promise<boolean> {
  touched.addOutside();
  const of = { shopId, productId, number: small(number) };
  const sheet = await rows.safetySheet.findFirst({ where: of, select: { changes: { select: { step: true } } } });
  if (!sheet) return false;
  const line = { ...of, step: small(sheet.changes.length + 1), isAway };
  await rows.safetySheetChange.create({ data: { ...line, actor, commandId, recordedAt: toStored(recordedAt) } });
  return true;
}
