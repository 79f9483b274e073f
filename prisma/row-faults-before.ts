import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { knowSeals, type RowFault, rowFaults } from '@/lib/data/row-seals';

/**
 * The rows that do not fit their seals before a migration changes them; none in a database from before rows were sealed.
 *
 * Throws   what SQLite says of a file that it cannot read
 */
export function rowFaultsBefore(file: string): RowFault[] {
  if (!existsSync(file)) return [];
  const database = new Database(file, { readonly: true, fileMustExist: true, timeout: 1_000 });
  try {
    const isSealed = database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'RowSeal'").get() !== undefined;
    if (!isSealed) return [];
    knowSeals(database);
    return rowFaults(database);
  } finally {
    database.close();
  }
}
