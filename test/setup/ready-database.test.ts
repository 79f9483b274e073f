import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { readyDataFolder } from '@/lib/command-line/start/data-folder.js';
import { readyDatabase } from '@/lib/command-line/start/ready-database.js';
import { changeShop } from '@/lib/commands/change-shop';
import { keepSafetySheet } from '@/lib/commands/keep-safety-sheet';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { markFile, readMark, writeMark } from '@/lib/data/shop-mark.js';
import { inTurn } from '@/lib/data/writer';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { refuseForgotten } from '@/prisma/refuse-forgotten';
import { SMALL, smallShop } from '../lib/commands/small-shop';
import { CLOCK } from '../lib/data/fresh-database';

/** A shop that the server has taken over, with a change in it. Gives its folder, its file and its id. */
async function takenOver() {
  const shopId = await smallShop();
  await inTurn(async ({ keeper }) => keeper.takeOver());
  await rename(shopId, 'First');
  const { file } = await database();
  return { folder: join(file, '..'), file, shopId };
}

const rename = (shopId: string, name: string) =>
  changeShop({ commandId: newId(), shopId, part: { benches: [{ ...SMALL.benches[0], id: 'b', name }] } }, CLOCK);

const benchIn = (file: string): unknown => {
  const raw = new Sqlite(file);
  try {
    return raw.prepare('SELECT "name" FROM "Bench"').pluck().get();
  } finally {
    raw.close();
  }
};

/** As a kill −9 leaves the files: copies of them while they are open. Gives the folder. */
function killed(file: string): string {
  const folder = mkdtempSync(join(file, '..', 'killed-'));
  for (const name of readdirSync(join(file, '..'))) {
    if (/^shop\.(db|mark)/.test(name) && name !== 'shop.db-shm')
      copyFileSync(join(file, '..', name), join(folder, name));
  }
  return folder;
}

/** What the start does before it serves: look, hold against the mark, bring up to date. */
async function readied(folder: string): Promise<void> {
  const file = join(folder, 'shop.db');
  readyDatabase(folder);
  if (existsSync(file)) refuseForgotten(file);
  await migrate(file);
}

test('a stop leaves everything in the one file, and nothing beside it but the mark', async () => {
  const { folder, file, shopId } = await takenOver();
  await rename(shopId, 'Last');
  await (await database()).close();
  expect(readdirSync(folder).sort()).toEqual(['shop.db', 'shop.mark']);
  const copy = join(folder, 'copy.db');
  copyFileSync(file, copy);
  expect(benchIn(copy)).toBe('Last');
});

test('a stop waits for writes that are under way', async () => {
  const { file, shopId } = await takenOver();
  const { close } = await database();
  const writing = Promise.all(['Second', 'Third', 'Fourth'].map((name) => rename(shopId, name)));
  await new Promise((resolve) => setTimeout(resolve, 1));
  await close();
  expect(await writing).toMatchObject([{ ok: true }, { ok: true }, { ok: true }]);
  expect(benchIn(file)).toBe('Fourth');
});

test('after a kill everything is there, and so it is after a second one amid the start', async () => {
  const { file } = await takenOver();
  const folder = killed(file);
  await readied(folder);
  await readied(folder);
  expect(benchIn(join(folder, 'shop.db'))).toBe('First');
});

test('the log stays small, however much is written', async () => {
  const { file, shopId } = await takenOver();
  const { watch } = await database();
  let largest = 0;
  for (let round = 0; round < 6; round += 1) {
    const bytes = Buffer.concat([
      Buffer.from('%PDF-1.7\n'),
      Buffer.alloc(3 * 2 ** 20, round),
      Buffer.from('\n%%EOF\n'),
    ]);
    const sheet = { commandId: newId(), shopId, product: 'p', fileName: 'a.pdf', bytes };
    expect(await keepSafetySheet(sheet, CLOCK)).toMatchObject({ ok: true });
    largest = Math.max(largest, watch.logSize);
  }
  expect(statSync(file).size).toBeGreaterThan(12 * 2 ** 20);
  expect(largest).toBeLessThan(4 * 2 ** 20);
});

test('a log that another database left does not undo a restore: it is refused, and the advice leads out', async () => {
  const { folder, file, shopId } = await takenOver();
  await (await database()).close();
  const copy = join(folder, 'my-copy.db');
  copyFileSync(file, copy);
  await inTurn(async ({ keeper }) => keeper.takeOver());
  await rename(shopId, 'After the copy');
  const after = killed(file);
  const there = join(after, 'shop.db');
  copyFileSync(copy, there);
  expect(() => readyDatabase(after)).toThrow(/log of another database: .*shop\.db-wal/);
  // As the sentence says.
  for (const name of ['shop.db-wal', 'shop.db-shm']) rmSync(join(after, name), { force: true });
  await readied(after);
  expect(benchIn(there)).toBe('First');
});

test('changes that were confirmed and are gone with the log are counted, and the advice leads out', async () => {
  const { file } = await takenOver();
  const folder = killed(file);
  const log = readFileSync(join(folder, 'shop.db-wal'));
  rmSync(join(folder, 'shop.db-wal'));
  await expect(readied(folder)).rejects.toThrow(/1 change is missing/);
  writeFileSync(join(folder, 'shop.db-wal'), log);
  await readied(folder);
  expect(benchIn(join(folder, 'shop.db'))).toBe('First');

  const other = killed(file);
  rmSync(join(other, 'shop.db-wal'));
  await expect(readied(other)).rejects.toThrow(/delete .*shop\.mark/);
  rmSync(join(other, 'shop.mark'));
  await readied(other);
  expect(benchIn(join(other, 'shop.db'))).toBe('Bench');
});

test.each([
  ['empty', (file: string) => truncateSync(file, 0), /is empty/],
  ['overwritten', (file: string) => writeFileSync(file, 'x'.repeat(5_000)), /not a database of this program/],
  ['shorter than a header', (file: string) => truncateSync(file, 60), /not a database of this program/],
  ['taken away', (file: string) => rmSync(file), /no database at .* a shop has been kept/],
  [
    'a folder',
    (file: string) => {
      rmSync(file);
      mkdirSync(file);
    },
    /is not a file/,
  ],
])(
  'a database that is %s gets no demo: the start refuses, and restoring as it says leads out',
  async (_, damage, word) => {
    const { folder, file } = await takenOver();
    await (await database()).close();
    const copy = join(folder, 'my-copy');
    copyFileSync(file, copy);
    damage(file);
    await expect(readied(folder)).rejects.toThrow(word);
    // Every file that begins with shop.db goes out of the folder, and the copy comes in its place.
    for (const name of readdirSync(folder).filter((one) => one.startsWith('shop.db'))) {
      renameSync(join(folder, name), join(folder, `moved-${name}`));
    }
    copyFileSync(copy, file);
    await readied(folder);
    expect(benchIn(file)).toBe('First');
  },
);

test('a folder that never held a shop gets a database; a log without its database does not count as one', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ready-'));
  expect(readyDatabase(folder)).toBe(undefined);
  writeFileSync(join(folder, 'shop.db-wal'), 'x');
  expect(() => readyDatabase(folder)).toThrow(/a shop has been kept/);
  rmSync(folder, { recursive: true });
});

test('a mark that cannot be read says only that there was a shop', async () => {
  const { file } = await takenOver();
  await (await database()).close();
  writeFileSync(markFile(file), '\0\0\0');
  expect(readMark(file)).toEqual({ database: null, commands: 0 });
  await readied(join(file, '..'));
  writeMark(file, { database: '0000000a', commands: 7 });
  expect(readMark(file)).toEqual({ database: '0000000a', commands: 7 });
});

test.runIf(process.platform !== 'win32')('the data folder and its files are for the owner alone', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ready-'));
  const mode = (path: string) => (statSync(path).mode & 0o777).toString(8);
  for (const name of ['shop.db', 'shop.db-wal', 'shop.mark']) writeFileSync(join(folder, name), 'x', { mode: 0o644 });
  chmodSync(folder, 0o755);
  readyDataFolder('/', { DATA_DIR: folder });
  expect(mode(folder)).toBe('700');
  expect(readdirSync(folder).map((name) => mode(join(folder, name)))).toEqual(['600', '600', '600']);
  // A folder with other things in it is not ours to close; our files in it are.
  chmodSync(folder, 0o755);
  chmodSync(join(folder, 'shop.db'), 0o644);
  writeFileSync(join(folder, 'letter.txt'), 'x', { mode: 0o644 });
  readyDataFolder('/', { DATA_DIR: folder });
  expect([mode(folder), mode(join(folder, 'shop.db')), mode(join(folder, 'letter.txt'))]).toEqual([
    '755',
    '600',
    '644',
  ]);
  const fresh = join(folder, 'new', 'data');
  readyDataFolder('/', { DATA_DIR: fresh });
  expect(mode(fresh)).toBe('700');
  rmSync(folder, { recursive: true });
});

test.runIf(process.getuid?.() === 0)(
  'a database that this account may not write is named (needs root to try)',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'ready-'));
    chmodSync(folder, 0o777);
    const file = join(folder, 'shop.db');
    new Sqlite(file).exec('CREATE TABLE a (b)').close();
    chmodSync(file, 0o644);
    const asked = `import('${join(process.cwd(), 'lib/command-line/start/ready-database.js')}').then((start) => start.readyDatabase('${folder}'))`;
    const { stderr } = spawnSync(process.execPath, ['-e', asked], { uid: 65_534, gid: 65_534, encoding: 'utf8' });
    expect(stderr).toMatch(/may not write to .*shop\.db, which the database needs/);
    rmSync(folder, { recursive: true });
  },
);
