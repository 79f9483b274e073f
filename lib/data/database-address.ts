import { databaseFile } from './database-file';
import { postgresqlAddressIn, withoutAccount } from './postgresql-address.js';

/** The address of the PostgreSQL database that holds the shops; null when they are kept in the file of the data folder. */
export const postgresqlAddress = (): string | null => postgresqlAddressIn(process.env);

/** Which database is used, for people: the path of its file, or its address without account and password. */
export function databaseName(): string {
  const address = postgresqlAddress();
  return address === null ? databaseFile() : withoutAccount(address);
}
