import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import * as fc from 'fast-check';
import pg from 'pg';
import { afterAll, expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { keepSafetySheet } from '@/lib/commands/keep-safety-sheet';
import { lookInto } from '@/lib/data/backup-contents';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { inTurn } from '@/lib/data/writer';
import { loadDemo } from '@/prisma/load-demo';
import { moveFromPostgresql, moveToPostgresql } from '@/prisma/move';
import { startPostgresql } from '@/test/run/postgresql.js';
import { runs } from '@/test/runs';
import { anyShopFile } from '../any-shop-file';
import { CLOCK, freshDatabase } from '../fresh-database';

const server = await startPostgresql();
const folder = mkdtempSync(join(tmpdir(), 'move-'));
let made = 0;

afterAll(() => {
  server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

async function ask(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(sql).finally(() => client.end());
}

async function emptyDatabase(): Promise<string> {
  made += 1;
  await ask(`${server?.url}/postgres`, `CREATE DATABASE "of_${made}"`);
  return `${server?.url}/of_${made}`;
}

/** The demo shop with a safety sheet, closed. Gives its file. */
async function demoFile(): Promise<string> {
  await freshDatabase();
  const shopId = (await loadDemo(CLOCK)) ?? '';
  const { file } = await database();
  const product = String(new Sqlite(file).prepare('SELECT "id" FROM "Product"').pluck().get());
  const bytes = Buffer.from('%PDF-1.7\nsheet \0\x01\xff\n%%EOF\n', 'latin1');
  expect(await keepSafetySheet({ commandId: newId(), shopId, product, fileName: 'a.pdf', bytes }, CLOCK)).toMatchObject(
    { ok: true },
  );
  await inTurn(async ({ keeper }) => keeper.takeOver());
  await (await database()).close();
  return file;
}

test.runIf(server)(
  'a shop that goes to PostgreSQL and comes back is the same: counts, hashes, seals and chain',
  async () => {
    const file = await demoFile();
    const was = await lookInto(file);
    const url = await emptyDatabase();
    const there = await moveToPostgresql(file, url);
    expect(there).toEqual(was.contents?.tables);
    const back = join(folder, 'back.db');
    expect(await moveFromPostgresql(url, back)).toEqual(there);
    const is = await lookInto(back);
    expect(is.faults).toEqual([]);
    expect(is.contents).toEqual(was.contents);
    // A second shop never goes on top of the first.
    await expect(moveToPostgresql(file, url)).rejects.toThrow(/holds a shop already/);
  },
);

test.runIf(server)('whatever shop it is, it comes back the same', { timeout: 600_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(anyShopFile, async (shop) => {
      await freshDatabase();
      const brought = await importShopFile({ commandId: newId(), file: shop, into: { isDemo: false } }, CLOCK);
      fc.pre(brought.ok);
      const { file } = await database();
      await (await database()).close();
      const url = await emptyDatabase();
      const back = join(folder, `any-${made}.db`);
      await moveToPostgresql(file, url);
      await moveFromPostgresql(url, back);
      expect((await lookInto(back)).contents).toEqual((await lookInto(file)).contents);
    }),
    { numRuns: runs(3, 60), ...(runs(0, 1) === 0 && { seed: 16 }) },
  );
});

test.runIf(server)('a row that changed on the way is found, and nothing is kept', async () => {
  const file = await demoFile();
  const url = await emptyDatabase();
  await moveToPostgresql(file, url);
  await ask(url, `UPDATE "Product" SET "name" = "name" || '!' WHERE "id" = (SELECT min("id") FROM "Product")`);
  const back = join(folder, 'changed.db');
  // All of it is copied as it stands, and then the seal of that row no longer fits.
  await expect(moveFromPostgresql(url, back)).rejects.toThrow(/not sound.*Product/);
  await expect(lookInto(back)).resolves.toMatchObject({ contents: null });
});

test.runIf(server)('a damaged file is not moved', async () => {
  const file = await demoFile();
  const raw = new Sqlite(file);
  raw.exec(`UPDATE "Product" SET "reiMinutes" = 1`);
  raw.close();
  await expect(moveToPostgresql(file, await emptyDatabase())).rejects.toThrow(/not sound/);
});
