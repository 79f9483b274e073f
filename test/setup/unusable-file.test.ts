import { spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { WITH_TYPES } from '@/lib/command-line/start/prepare.js';
import { readyDatabase } from '@/lib/command-line/start/ready-database.js';
import { database } from '@/lib/data/database';
import { wholeCheck } from '@/lib/data/whole-check';
import { databaseState } from '@/lib/views/database-state';
import { smallShop } from '../lib/commands/small-shop';
import { freePort } from '../run/free-port.js';
import { mount, ownDisk } from './own-disk';

/** A small shop in a closed file. Gives its folder and the file. */
async function closedShop() {
  await smallShop();
  const { file, close } = await database();
  await close();
  return { folder: join(file, '..'), file };
}

/** A step of `npm start` before it says that the shop is ready. */
function step(script: string, folder: string) {
  const env = { ...process.env, DATA_DIR: folder };
  const { status, stderr } = spawnSync(process.execPath, [...WITH_TYPES, script], { env, encoding: 'utf8' });
  return { status, said: stderr };
}

test('a start on a file that another program holds says so in a sentence, and leaves the file as it was', {
  timeout: 60_000,
}, async () => {
  const { folder, file } = await closedShop();
  // Not while it is held: closing any other handle of a file gives up the locks of the process.
  const before = readFileSync(file);
  const other = new Sqlite(file);
  other.pragma('locking_mode = EXCLUSIVE');
  other.exec('BEGIN EXCLUSIVE');
  const { status, said } = step('prisma/migrate.ts', folder);
  other.exec('ROLLBACK');
  other.close();
  expect(status).toBe(1);
  expect(said).toMatch(/locked|another program/i);
  expect(said).toMatch(/Close the other program that has it open, then try again\./);
  expect(said).not.toMatch(/\n\s+at /);
  expect(readFileSync(file)).toEqual(before);
  expect(step('prisma/migrate.ts', folder)).toEqual({ status: 0, said: '' });
});

/** Root may write everywhere, so the look is taken as somebody else. */
const somebody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};

test.runIf(process.platform !== 'win32')('a start that may not write to the file says so', async () => {
  const { file } = await closedShop();
  const folder = mkdtempSync(join(tmpdir(), 'read-only-'));
  try {
    new Sqlite(file).exec(`VACUUM INTO '${join(folder, 'shop.db')}'`);
    chmodSync(join(folder, 'shop.db'), 0o444);
    chmodSync(folder, 0o755);
    const code = `import('${new URL('../../lib/command-line/start/ready-database.js', import.meta.url)}')
      .then(({ readyDatabase }) => readyDatabase(${JSON.stringify(folder)})).catch((error) => console.log(error.message))`;
    const { stdout } = spawnSync(process.execPath, ['-e', code], { ...somebody, encoding: 'utf8' });
    expect(stdout).toContain(`This account may not write to ${join(folder, 'shop.db')}, which the database needs.`);
    chmodSync(join(folder, 'shop.db'), 0o644);
    expect(() => readyDatabase(folder)).not.toThrow();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

/** A whole start, as somebody else where the tests run as root. Gives what it said, up to its end. */
async function wholeStart(folder: string) {
  const env = { ...process.env, DATA_DIR: folder, PORT: String(await freePort()), HOST: '127.0.0.1' };
  const { status, stdout, stderr } = spawnSync(process.execPath, ['lib/command-line/start.js'], {
    ...{ ...somebody, env, encoding: 'utf8', timeout: 30_000 },
  });
  return { status, said: `${stdout}${stderr}` };
}

test.runIf(process.platform !== 'win32').each(['shop.db', 'shop.db-wal', 'shop.db-shm', 'shop.mark'])(
  'a whole start that may not write to %s ends with that sentence, before it says that the shop is ready',
  async (name) => {
    const { file } = await closedShop();
    const folder = mkdtempSync(join(tmpdir(), 'read-only-'));
    try {
      new Sqlite(file).exec(`VACUUM INTO '${join(folder, 'shop.db')}'`);
      if (name !== 'shop.db') writeFileSync(join(folder, name), '');
      chmodSync(join(folder, 'shop.db'), 0o666);
      chmodSync(join(folder, name), 0o444);
      chmodSync(folder, 0o777);
      const { status, said } = await wholeStart(folder);
      expect(said).toContain(`This account may not write to ${join(folder, name)}`);
      expect(said).not.toContain('is ready');
      expect(status).toBe(1);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);

const { disk, hasDisk } = ownDisk('read-only-disk', 'size=8m,mode=777');

test.skipIf(!hasDisk)('so does a start on a disk that can only be read (needs root)', async () => {
  const { file } = await closedShop();
  copyFileSync(file, join(disk, 'shop.db'));
  expect(mount('-o', 'remount,ro', disk)).toBe(true);
  const { status, said } = await wholeStart(disk);
  expect(said).toContain(`The data folder ${disk} is on a disk that can only be read.`);
  expect(said).not.toContain('is ready');
  expect(status).toBe(1);
});

test('what Setup advises for a damaged database leads back to the newest backup', { timeout: 120_000 }, async () => {
  const { folder, file } = await closedShop();
  const run = (script: string, ...words: string[]) => {
    const env = { ...process.env, DATA_DIR: folder };
    return spawnSync(process.execPath, [`lib/command-line/${script}.js`, ...words], {
      env,
      encoding: 'utf8',
      input: 'yes\n',
    });
  };
  expect(run('backup')).toMatchObject({ status: 0 });
  const other = new Sqlite(file);
  other.exec(`UPDATE "Product" SET "name" = 'Another'`);
  other.close();
  const { state, restore } = await databaseState();
  expect(state).toBe('damaged');
  const [, backup = ''] = /npm run restore -- "([^"]+)"/.exec(restore) ?? [];
  await (await database()).close();
  const restored = run('restore', backup);
  expect(`${restored.status} ${restored.stderr}`).toBe('0 ');
  expect(step('prisma/migrate.ts', folder).status).toBe(0);
  expect(await wholeCheck(file)).toMatchObject({ file: [], rows: [], records: [[expect.any(String), []]] });
});
