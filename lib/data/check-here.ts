import { postgresqlAddress } from './database-address';
import { type WholeCheck, wholeCheck } from './whole-check';

/** Check the whole database that this program uses: the file, or the PostgreSQL database that DATABASE_URL names. */
export async function checkHere(file: string): Promise<WholeCheck> {
  const address = postgresqlAddress();
  if (address === null) return wholeCheck(file);
  const { wholeCheckOfPostgresql } = await import('./postgresql/whole-check');
  return wholeCheckOfPostgresql(address);
}
