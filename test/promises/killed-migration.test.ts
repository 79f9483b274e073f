import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { MIGRATIONS, migrationsIn } from '@/prisma/migration-folders.js';
import { runs } from '../runs';
import { figure } from './figure';

const KILLS = runs(3, 20);
const names = migrationsIn().map(({ name }) => name);
const root = join(import.meta.dirname, '../..');

const A_SHOP = `INSERT INTO "Shop" (id, createdOn, name, timeZone, currency, units, openingHours, fillCapacity, lossPerFill, measuringStep, safetyDays, sameModeInARow, capitalPerYear)
  VALUES ('s', '2026-03-31', 'A', 'UTC', 'EUR', 'us', '{}', '1 L', '0 mL', '0 mL', 1, 2, 0)`;

/** A database as the program of some migrations ago left it, with a shop in it. */
async function olderDatabase(folder: string, migrations: number): Promise<string> {
  const own = join(folder, 'migrations');
  mkdirSync(own);
  for (const name of names.slice(0, migrations)) cpSync(join(MIGRATIONS, name), join(own, name), { recursive: true });
  const file = join(folder, 'older.db');
  await migrate(file, own);
  const database = new Database(file);
  database.exec(A_SHOP);
  database.close();
  return file;
}

const factsOf = (file: string) => {
  const database = new Database(file, { fileMustExist: true });
  try {
    const one = (sql: string) => database.prepare(sql).pluck().get();
    return {
      sound: database.pragma('integrity_check', { simple: true }),
      shops: one('SELECT count(*) FROM "Shop"'),
      applied: Number(one('SELECT count(*) FROM _prisma_migrations WHERE finished_at IS NOT NULL')),
    };
  } finally {
    database.close();
  }
};

/** Start the migration as `npm start` does, and kill it after so long; null lets it end. Gives how long it took. */
async function migrateUntil(data: string, killAfterMs: number | null): Promise<number> {
  const began = performance.now();
  const child = spawn(process.execPath, ['--import', 'tsx', '--conditions=react-server', 'prisma/migrate.ts'], {
    cwd: root,
    env: { ...process.env, DATA_DIR: data },
    stdio: 'ignore',
  });
  if (killAfterMs !== null) setTimeout(() => child.kill('SIGKILL'), killAfterMs);
  await once(child, 'exit');
  return performance.now() - began;
}

test(`a migration killed at ${KILLS} points leaves the old database or the new one, and the next start finishes it`, {
  timeout: 3_600_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'migrating-'));
  const head = names.length;
  let killed = 0;
  for (let older = head - 1; older >= 1; older -= 1) {
    const place = join(folder, `${older}`);
    mkdirSync(place);
    const file = await olderDatabase(place, older);
    const data = join(place, 'data');
    mkdirSync(data);
    const fresh = () => copyFileSync(file, join(data, 'shop.db'));
    fresh();
    const wholeMs = await migrateUntil(data, null);
    for (let kill = 1; kill <= KILLS; kill += 1) {
      fresh();
      await migrateUntil(data, (wholeMs * kill) / (KILLS + 1));
      const after = factsOf(join(data, 'shop.db'));
      expect(after).toMatchObject({ sound: 'ok', shops: 1 });
      expect([older, head]).toContain(after.applied);
      killed += after.applied === older ? 1 : 0;
    }
    await migrateUntil(data, null);
    expect(factsOf(join(data, 'shop.db'))).toEqual({ sound: 'ok', shops: 1, applied: head });
    if (KILLS < 20) break;
  }
  figure(
    18,
    `${KILLS} kills for each earlier release, ${killed} before the end: always the old database or the new one`,
  );
  rmSync(folder, { recursive: true, force: true });
});
