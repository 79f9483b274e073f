import { resolve } from 'node:path';
import { databaseName, postgresqlAddress } from '@/lib/data/database-address';
import { recordsOfPostgresql, wholeCheckOfPostgresql } from '@/lib/data/postgresql/whole-check';
import { type RecordsChecked, recordsOfFile } from '@/lib/data/records-of-file';
import { wholeCheck } from '@/lib/data/whole-check';
import { faultSentence } from '@/lib/engine/record/chain';
import { NO_HASH } from '@/lib/engine/record/seal-text';
import type { Fault } from '@/shared/outcome';

/** What `shop verify` prints, and what it says is wrong. */
export type Verified = { document: object | null; faults: Fault[] };

/**
 * Check all of a database: the file itself, the records of every shop against the chain that seals them, and every other
 * row against its seal.
 *
 * Takes    the path as it was typed, and the folder it was typed in; left out, the database that the shop uses
 * Gives    how many records, versions and lines each shop has, and the hash of the newest line, to be compared with one
 *          that was printed or exported before; and every fault, each naming its record, or its table and row
 */
export async function verify(typed: string | undefined, folder: string): Promise<Verified> {
  const address = typed === undefined ? postgresqlAddress() : null;
  const file = typed === undefined ? databaseName() : resolve(folder, typed);
  try {
    const shops = await (address === null ? recordsOfFile(file) : recordsOfPostgresql(address));
    const { file: lines, rows } = await (address === null ? wholeCheck(file) : wholeCheckOfPostgresql(address));
    const others = [
      ...lines.map((message) => ({ path: '', message })),
      ...rows.map(({ shop, table, row, message }) => ({ path: `${shop ?? ''}.${table}.${row}`, message })),
    ];
    const faults = [...shops.flatMap(faultsIn), ...others];
    const document = { ok: faults.length === 0, database: file, shops: shops.map(shopIn), others };
    return { document, faults };
  } catch (error) {
    return { document: null, faults: [{ path: '', message: (error as Error).message }] };
  }
}

const faultsIn = ({ shop, faults }: RecordsChecked): Fault[] =>
  faults.map((fault) => ({ path: `${shop}.${fault.application}.${fault.version}`, message: faultSentence(fault) }));

function shopIn({ shop, name, things, seals, faults, accepted }: RecordsChecked) {
  const versions = things.filter(({ kind }) => kind === 'version');
  return {
    ...{ shop, name, ok: faults.length === 0 },
    records: new Set(versions.map(({ application }) => application)).size,
    versions: versions.length,
    confirmations: things.length - versions.length,
    lines: seals.length,
    newestHash: seals.at(-1)?.hash ?? NO_HASH,
    firstFault: faults[0] ? faultSentence(faults[0]) : null,
    faults: faults.map((fault) => ({ ...fault, message: faultSentence(fault) })),
    accepted: accepted.map((fault) => ({ ...fault, message: faultSentence(fault) })),
  };
}
