import 'server-only';
import { type Accepting, NOT_ACCEPTED, type RowAsItStands } from '../accept-rows';
import type { PrismaReader } from '../database';
import type { RowFault } from '../row-seals';
import { askThrough } from '../seal-records';
import type { Ask } from '../sealed-rows';
import { sha256 } from '../sha256';
import { kindOfType } from './kind-of-type';
import { rowFaults, type Sealed, sealedTables } from './row-seals';

/** How PostgreSQL finds rows that do not fit their seals, and gives them new ones. */
export const acceptingThrough = (reader: PrismaReader): Accepting => ({
  seen: (shopId) => reader.$transaction((rows) => toAccept(askThrough(rows), shopId), PATIENCE),
  inWrite: (rows, shopId) => toAccept(askThrough(rows), shopId),
  seal: (rows, found) => seal(askThrough(rows), found),
});

const PATIENCE = { maxWait: 10_000, timeout: 60_000 };

async function toAccept(ask: Ask, shopId: string): Promise<RowAsItStands[]> {
  const tables = await tablesByName(ask);
  const faults = (await rowFaults(ask)).filter(
    ({ shop, table }) => (shop === shopId || shop === '') && !NOT_ACCEPTED.includes(table),
  );
  const found: RowAsItStands[] = [];
  for (const fault of faults) found.push(await asItStands(ask, tables.get(fault.table), fault));
  return found;
}

const tablesByName = async (ask: Ask) => new Map((await sealedTables(ask)).map((sealed) => [sealed.table, sealed]));

async function asItStands(ask: Ask, sealed: Sealed | undefined, fault: RowFault): Promise<RowAsItStands> {
  const columns = sealed?.columns.map(({ name, type }) => `${quoted(`t."${name}"`, type)} AS "${name}"`).join(', ');
  const [row] = sealed ? await ask(`SELECT ${columns} ${oneRow(sealed)}`, fault.shop, fault.row) : [];
  const held = row ? Object.fromEntries(Object.entries(row).map(([name, value]) => [name, String(value)])) : null;
  return { ...fault, held, hash: held ? sha256(JSON.stringify(held)) : null };
}

/** A value as SQL writes it: numbers in their digits, all else in quotes. */
const quoted = (value: string, type: string): string =>
  ['whole', 'real'].includes(kindOfType(type))
    ? `coalesce(CAST(${value} AS text), 'NULL')`
    : `quote_nullable(CAST(${value} AS text))`;

const oneRow = ({ table, shop, key }: Sealed): string =>
  `FROM "${table}" AS t WHERE ${shop('t')} = ? AND ${key('t')} = ?`;

async function seal(ask: Ask, found: readonly RowFault[]): Promise<void> {
  const tables = await tablesByName(ask);
  for (const { shop, table, row } of found) {
    await ask('DELETE FROM "RowSeal" WHERE "shopId" = ? AND "tableName" = ? AND "rowKey" = ?', shop, table, row);
    const sealed = tables.get(table);
    if (!sealed) continue;
    await ask(
      `INSERT INTO "RowSeal" ("shopId", "tableName", "rowKey", "hash")
        SELECT ${sealed.shop('t')}, '${table}', ${sealed.key('t')}, ${sealed.seal('t')} ${oneRow(sealed)}`,
      ...[shop, row],
    );
  }
}
