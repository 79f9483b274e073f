import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { readyPostgresql } from '@/prisma/ready-postgresql';

/** Ask a database once, on a connection of its own that is none of the program's. */
export async function askOnce(
  address: string,
  sql: string,
  values: unknown[] = [],
): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: address });
  await client.connect();
  try {
    return (await client.query(sql, values)).rows;
  } finally {
    await client.end();
  }
}

/** A new database of shops on a server, copied from one that was filled before. Gives its address. */
export async function newDatabase(server: string): Promise<string> {
  const name = `of_${randomBytes(6).toString('hex')}`;
  await askOnce(`${server}/postgres`, `CREATE DATABASE "${name}" TEMPLATE "${TEMPLATE}" STRATEGY file_copy`);
  return `${server}/${name}`;
}

export async function dropDatabase(address: string): Promise<void> {
  const { pathname } = new URL(address);
  await askOnce(address.replace(pathname, '/postgres'), `DROP DATABASE "${pathname.slice(1)}" WITH (FORCE)`);
}

const TEMPLATE = 'template_of_shops';

/** Make the database that all others are copied from. */
export async function makeTemplate(server: string): Promise<void> {
  await askOnce(`${server}/postgres`, `CREATE DATABASE "${TEMPLATE}"`);
  await readyPostgresql(`${server}/${TEMPLATE}`);
}
