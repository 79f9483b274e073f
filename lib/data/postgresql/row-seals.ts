import { type Column, tablesOf } from '../postgresql-digests';
import { NOT_IN_A_SEAL, NOT_SEALED, type RowFault } from '../row-seals';
import type { Ask } from '../sealed-rows';
import { kindOfType } from './kind-of-type';

/*
 * The seals of rows on PostgreSQL: the same text and the same hash as `rowSeal` makes of the same row on SQLite, so that a
 * shop keeps its seals when it moves.
 */

/** One sealed table: how SQL names the shop, the key and the seal of a row that has some name. */
export type Sealed = { table: string; columns: readonly Column[]; shop: Named; key: Named; seal: Named };
type Named = (row: string) => string;

/** How a table is sealed; null for one that has no seals. Takes every column of it. */
export function sealedOf(table: string, all: readonly Column[]): Sealed | null {
  if (NOT_SEALED.includes(table)) return null;
  const columns = all
    .filter(({ name }) => !NOT_IN_A_SEAL.includes(`${table}.${name}`))
    .toSorted((one, other) => (one.name < other.name ? -1 : 1));
  const owner = table === 'Shop' ? 'id' : 'shopId';
  const keys = all.filter(({ key, name }) => key > 0 && name !== owner).toSorted((one, other) => one.key - other.key);
  const hasOwner = all.some(({ name }) => name === owner);
  return {
    ...{ table, columns },
    shop: (row) => (hasOwner ? `${row}."${owner}"` : "''"),
    key: (row) => keys.map(({ name }) => `CAST(${row}."${name}" AS text)`).join(' || chr(10) || ') || "''",
    seal: (row) => `kept.seal(concat(${[`'${table}' || chr(10)`, ...columns.map(lineOf(row))].join(', ')}))`,
  };
}

export const columnsSealed = ({ columns }: Sealed): string[] => columns.map(({ name }) => name);

/** The line of a column that holds something; NULL, which `concat` leaves out, for one that does not. */
const lineOf =
  (row: string) =>
  ({ name, type }: Column): string =>
    `'${name} ' || ${written(`${row}."${name}"`, type)} || chr(10)`;

function written(value: string, type: string): string {
  const lines = {
    whole: `'integer ' || CAST(${value} AS text)`,
    real: `'real ' || kept.decimals(${value})`,
    'yes-no': `'integer ' || CAST(CAST(${value} AS integer) AS text)`,
    bytes: `'blob ' || encode(${value}, 'hex')`,
    text: `'text ' || kept.signs(CAST(${value} AS text)) || ' ' || CAST(${value} AS text)`,
  };
  return lines[kindOfType(type)];
}

/** Every table that has seals. */
export const sealedTables = async (ask: Ask): Promise<Sealed[]> =>
  [...(await tablesOf(ask))].flatMap(([table, columns]) => sealedOf(table, columns) ?? []);

/**
 * Every row that does not fit its seal, tables in the order of their names, as `rowFaults` finds them on SQLite.
 *
 * Takes    a connection in a transaction that sees one moment
 */
export async function rowFaults(ask: Ask): Promise<RowFault[]> {
  const tables = await sealedTables(ask);
  const found: RowFault[] = [];
  for (const { table, shop, key, seal } of tables) {
    const own = `s."tableName" = '${table}'`;
    const wrong = await ask(`SELECT ${shop('t')} AS shop, '${table}' AS "table", ${key('t')} AS row,
        CASE WHEN s."hash" IS NULL THEN 'unsealed' ELSE 'changed' END AS wrong
      FROM "${table}" AS t LEFT JOIN "RowSeal" s ON s."shopId" = ${shop('t')} AND ${own} AND s."rowKey" = ${key('t')}
      WHERE s."hash" IS DISTINCT FROM ${seal('t')} ORDER BY 1, 3`);
    const gone = await ask(`SELECT s."shopId" AS shop, '${table}' AS "table", s."rowKey" AS row, 'missing' AS wrong
      FROM "RowSeal" s WHERE ${own} AND (s."shopId", s."rowKey") NOT IN (SELECT ${shop('t')}, ${key('t')} FROM "${table}" AS t)
      ORDER BY 1, 3`);
    found.push(...[...wrong, ...gone].map(asFault));
  }
  // Seals of SQLite's own tables come along with a shop that moves, and are checked there.
  const known = ["'sqlite_schema'", ...tables.map(({ table }) => `'${table}'`)].join(', ');
  const strangers = await ask(`SELECT "shopId" AS shop, "tableName" AS "table", "rowKey" AS row, 'missing' AS wrong
    FROM "RowSeal" WHERE "tableName" NOT IN (${known}) ORDER BY 1, 2, 3`);
  return [...found, ...strangers.map(asFault)];
}

const asFault = ({ wrong, shop, table, row }: Record<string, unknown>): RowFault => ({
  wrong: wrong === 'missing' || wrong === 'unsealed' ? wrong : 'changed',
  ...{ shop: String(shop), table: String(table), row: String(row) },
});
