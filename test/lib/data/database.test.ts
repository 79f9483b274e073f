import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { database, openDatabase, type Rows } from '@/lib/data/database';
import { type Pragma, READER_PRAGMAS, WRITER_PRAGMAS } from '@/lib/data/pragmas';
import { figure } from '@/test/promises/figure';
import { freshDatabase } from './fresh-database';

async function pragma(client: Rows, name: string): Promise<string> {
  const [row] = await client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`);
  return String(Object.values(row ?? {})[0]);
}

test('what is confirmed is on the disk, and nothing waits for longer than a second', async () => {
  await freshDatabase();
  const { writer, reader } = await database();
  for (const client of [writer, reader]) {
    expect(await pragma(client, 'journal_mode')).toBe('wal');
    expect(await pragma(client, 'synchronous')).toBe('2');
    expect(await pragma(client, 'foreign_keys')).toBe('1');
    expect(Number(await pragma(client, 'busy_timeout'))).toBeLessThanOrEqual(1_000);
  }
  expect(await pragma(reader, 'query_only')).toBe('1');
  figure(3, '4 of 4 on both connections');
});

const wrongly = (pragmas: Pragma[], name: string, set: string): Pragma[] =>
  pragmas.map((one) => (one.name === name ? { ...one, set } : one));

test.each([
  { side: 'writer' as const, name: 'journal_mode', set: 'DELETE' },
  { side: 'writer' as const, name: 'synchronous', set: 'NORMAL' },
  { side: 'writer' as const, name: 'foreign_keys', set: 'OFF' },
  { side: 'writer' as const, name: 'busy_timeout', set: '5000' },
  { side: 'writer' as const, name: 'recursive_triggers', set: 'OFF' },
  { side: 'reader' as const, name: 'query_only', set: 'OFF' },
  { side: 'reader' as const, name: 'busy_timeout', set: '5000' },
])('with $name = $set on the $side the program does not start, and says why', async ({ side, name, set }) => {
  const folder = await freshDatabase();
  const wanted = { writer: WRITER_PRAGMAS, reader: READER_PRAGMAS };
  // A journal is a setting of the file, so both connections have to be wrong for it to stay wrong.
  const planted =
    name === 'journal_mode'
      ? { writer: wrongly(WRITER_PRAGMAS, name, set), reader: wrongly(READER_PRAGMAS, name, set) }
      : { ...wanted, [side]: wrongly(wanted[side], name, set) };
  await expect(openDatabase(join(folder, 'shop.db'), planted)).rejects.toThrow(new RegExp(`${name} = .* is needed: `));
});

test('nothing is written through the connection that reads', async () => {
  await freshDatabase();
  const { reader } = await database();
  const write = reader.$executeRawUnsafe(`UPDATE "Shop" SET "name" = 'x'`);
  await expect(write).rejects.toThrow(/readonly/);
});

test('a mistyped path makes no new database', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-and-bottle-'));
  const file = join(folder, 'shoop.db');
  await expect(openDatabase(file)).rejects.toThrow(/There is no database at .*Check DATA_DIR/);
  expect(existsSync(file)).toBe(false);
  rmSync(folder, { recursive: true });
});

test('a database that is asked for again, also by a reloaded program, is the one that is open', async () => {
  await freshDatabase();
  expect(await database()).toBe(await database());
});
