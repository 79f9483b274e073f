import type { Column, Seal, Sealable } from '@/lib/engine/record/seal-text';
import { byOwner, inParts, keyOf } from './by-owner';
import type { Dialect } from './dialect';

/** Asks the database, through whichever connection. Every value that it is asked for comes as text, or as a real number. */
export type Ask = ((sql: string, ...values: string[]) => Promise<Record<string, unknown>[]>) & { dialect: Dialect };

/** Records, or just those with some ids. */
type Which = { shopId: string; applications: readonly string[] | null };

/**
 * Everything of a shop that ought to be sealed, as the database really holds it: kinds and values of the columns, and
 * not what a client makes of them, since a damaged value may look sound to a client or stop it.
 *
 * Gives    versions in the order of their records and numbers, each with its benches and products; then confirmations
 */
export async function sealableIn(ask: Ask, which: Which): Promise<Sealable[]> {
  const versions = await rowsOf(ask, 'ApplicationVersion', which, VERSION_ORDER, ALSO_OF_A_VERSION);
  const owner = ({ application, version }: Row) => keyOf(application, version);
  const ofVersion = async (table: string) => byOwner(await rowsOf(ask, table, which, POSITION_ORDER), owner);
  const [benches, products] = [await ofVersion('ApplicationBench'), await ofVersion('ApplicationProduct')];
  const confirmations = await rowsOf(ask, 'AmendmentConfirmation', which, VERSION_ORDER);
  return [
    ...versions.map(
      (row): Sealable => ({
        ...{ kind: 'version', application: row.application, version: row.version, recordedAt: writtenAt(row) },
        parts: [
          { of: 'version', columns: row.columns },
          ...benches(owner(row)).map(({ columns }) => ({ of: 'bench' as const, columns })),
          ...products(owner(row)).map(({ columns }) => ({ of: 'product' as const, columns })),
        ],
      }),
    ),
    ...confirmations.map(
      (row): Sealable => ({
        ...{ kind: 'confirmation', application: row.application, version: row.version, recordedAt: writtenAt(row) },
        parts: [{ of: 'confirmation', columns: row.columns }],
      }),
    ),
  ];
}

type Row = { application: string; version: string; columns: Column[] };

const writtenAt = ({ columns }: Row): string => columns.find(({ name }) => name === 'recordedAt')?.value ?? '';

const VERSION_ORDER = `(SELECT "position" FROM "Application" WHERE "shopId" = its."shopId" AND "id" = its."applicationId"), "applicationId", "number"`;
const POSITION_ORDER = '"applicationId", "number", "position"';

/** What a record is read with and stands elsewhere: its place among the records, and what its recipe was called. */
const ALSO_OF_A_VERSION = [
  `SELECT 'Application.position' AS name, 'INTEGER' AS type, '(SELECT "position" FROM "Application" WHERE "shopId" = its."shopId" AND "id" = its."applicationId")' AS value`,
  `SELECT 'RecipeVersion.name', 'TEXT', '(SELECT "name" FROM "RecipeVersion" WHERE "shopId" = its."shopId" AND "recipeId" = its."recipeId" AND "number" = its."recipeNumber")'`,
].join(' UNION ALL ');

async function rowsOf(ask: Ask, table: string, which: Which, order: string, also?: string): Promise<Row[]> {
  const columns = await columnsOf(ask, table, also);
  const wanted = [...columns.map(kindAndTextIn(ask)), ...columns.flatMap(realIn(ask))].join(', ');
  const whose = 'CAST("applicationId" AS TEXT) AS application, CAST("number" AS TEXT) AS version';
  const select = `SELECT ${whose}, ${wanted} FROM "${table}" AS its WHERE "shopId" = ?`;
  if (which.applications === null) {
    return (await ask(`${select} ORDER BY ${order}`, which.shopId)).map((row) => rowOf(row, columns));
  }
  const found: Row[] = [];
  for (const some of inParts(which.applications)) {
    const named = `AND "applicationId" IN (${some.map(() => '?').join(', ')})`;
    const rows = await ask(`${select} ${named} ORDER BY ${order}`, which.shopId, ...some);
    found.push(...rows.map((row) => rowOf(row, columns)));
  }
  return found;
}

type Known = { name: string; type: string; value: string };

/** The columns that a table has in this database, so that none is ever left unsealed. */
async function columnsOf(ask: Ask, table: string, also?: string): Promise<Known[]> {
  const own = ask.dialect.columnsOfTable;
  const rows = await ask(also ? `${own} UNION ALL ${also}` : own, table);
  return rows.map(({ name, type, value }) => ({ name: String(name), type: String(type), value: String(value) }));
}

const kindAndTextIn =
  ({ dialect }: Ask) =>
  ({ value, type }: Known, at: number): string =>
    `${dialect.kindAndText(value, type)} AS c${at}`;

/** A real number comes apart, as a number. */
const realIn =
  ({ dialect }: Ask) =>
  ({ name, value, type }: Known): string[] => {
    const real = dialect.realIn(value, type);
    return real === null ? [] : [`${real} AS "real ${name}"`];
  };

const KINDS = { i: 'integer', r: 'real', t: 'text', b: 'blob' } as const;

function rowOf(row: Record<string, unknown>, columns: readonly Known[]): Row {
  return {
    application: String(row.application),
    version: String(row.version),
    columns: columns.flatMap(({ name }, at) => {
      const held = row[`c${at}`];
      if (typeof held !== 'string') return [];
      const kind = KINDS[held.charAt(0) as keyof typeof KINDS];
      return { name, kind, value: kind === 'real' ? String(row[`real ${name}`]) : held.slice(1) };
    }),
  };
}

/** The lines of the chain of a shop, in the order of their numbers: all, or from one number on. */
export async function sealsIn(ask: Ask, shopId: string, from?: string): Promise<Seal[]> {
  const since = from === undefined ? '' : 'AND "RecordSeal"."number" >= CAST(? AS INTEGER)';
  const values = [shopId, ...(from === undefined ? [] : [from])];
  const rows = await ask(`${SEALS} WHERE "shopId" = ? ${since} ORDER BY "RecordSeal"."number"`, ...values);
  return rows.map((row) => sealOf(row));
}

/** The last line of the chain of a shop; null before the first. */
export async function lastSealIn(ask: Ask, shopId: string): Promise<Seal | null> {
  const [row] = await ask(`${SEALS} WHERE "shopId" = ? ORDER BY "RecordSeal"."number" DESC LIMIT 1`, shopId);
  return row ? sealOf(row) : null;
}

const SEALS =
  'SELECT CAST("number" AS TEXT) AS number, CAST("applicationId" AS TEXT) AS application, CAST("version" AS TEXT) AS version, ' +
  'CAST("previousHash" AS TEXT) AS "previousHash", CAST("hash" AS TEXT) AS hash, CAST("sealedAt" AS TEXT) AS "sealedAt" FROM "RecordSeal"';

/** What a confirmation is sealed under: the id of its record, and what no id can hold after it. */
const CONFIRMED = '\nconfirmed';

export const sealedUnder = ({ kind, application }: Pick<Sealable, 'kind' | 'application'>): string =>
  kind === 'confirmation' ? `${application}${CONFIRMED}` : application;

function sealOf(row: Record<string, unknown>): Seal {
  const text = (name: string) => String(row[name]);
  const under = text('application');
  const isConfirmation = under.endsWith(CONFIRMED);
  return {
    ...{ number: text('number'), version: text('version'), sealedAt: text('sealedAt') },
    ...{ previousHash: text('previousHash'), hash: text('hash') },
    kind: isConfirmation ? 'confirmation' : 'version',
    application: isConfirmation ? under.slice(0, -CONFIRMED.length) : under,
  };
}
