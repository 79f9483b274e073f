import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterAll, expect, test } from 'vitest';
import { lookInto } from '@/lib/data/backup-contents';
import { backupsIn } from '@/lib/data/backup-files.js';
import { sealAll } from '@/lib/data/row-seals';
import { preparedShop } from '../bench/prepared-shop';
import { freePort } from '../run/free-port.js';
import { isLong, runs } from '../runs';
import { figure } from './figure';
import { booksIn, bringIn, mixesIn, mixOf } from './one-bottle';
import { commandId, type Served, serve } from './served';

const BACKUPS = runs(3, 20);
const CLIENTS = 4;
const root = join(import.meta.dirname, '../..');
const all = mkdtempSync(join(tmpdir(), 'backup-'));
const temp = () => mkdtempSync(join(all, 'one-'));

afterAll(() => rmSync(all, { recursive: true, force: true }));

type Ended = { code: number | null; said: string; ms: number };

/** Run `npm run backup` or `npm run restore` as a person does, with what is typed at its question. */
function run(command: 'backup' | 'restore', data: string, args: readonly string[], typed = ''): Promise<Ended> {
  const began = performance.now();
  const child = spawn(process.execPath, [`lib/command-line/${command}.js`, ...args], {
    cwd: root,
    env: { ...process.env, DATA_DIR: data, INIT_CWD: all },
  });
  let said = '';
  child.stdout.on('data', (part) => (said += part));
  child.stderr.on('data', (part) => (said += part));
  child.stdin.end(typed);
  return new Promise((resolve) =>
    child.once('close', (code) => resolve({ code, said, ms: performance.now() - began })),
  );
}

/** Clients that send mixes until they are told to stop. */
function mixing(server: Served, shop: string) {
  const done: { id: string; at: number; ms: number }[] = [];
  let isOver = false;
  const client = async () => {
    while (!isOver) {
      const id = commandId();
      const answer = await server.post('/api/v1/mix/finish', mixOf(shop, id));
      expect(answer.status, JSON.stringify(answer.body)).toBe(200);
      done.push({ id, at: performance.now(), ms: answer.ms });
    }
  };
  const running = Promise.all(Array.from({ length: CLIENTS }, client));
  const stop = async () => {
    isOver = true;
    await running;
  };
  return { done, stop };
}

test(`${BACKUPS} backups while ${CLIENTS} clients write are whole, each with all that was acknowledged before it`, {
  timeout: 1_800_000,
}, async () => {
  const [data, folder] = [temp(), temp()];
  const server = await serve(data, await freePort());
  const shop = await bringIn(server);
  const { done, stop } = mixing(server, shop);
  for (let backup = 0; backup < BACKUPS; backup += 1) {
    const before = performance.now();
    const { code, said } = await run('backup', data, [folder]);
    expect(code, said).toBe(0);
    const [newest] = backupsIn(folder);
    const books = booksIn(newest?.file ?? '', shop);
    expect(books.sound).toBe(true);
    expect([books.records, books.draws]).toEqual([mixesIn(books), mixesIn(books)]);
    expect(done.filter(({ id, at }) => at < before && !books.commands.has(id))).toEqual([]);
  }
  await stop();
  await server.stop();
  expect(backupsIn(folder).filter(({ isSound }) => isSound)).toHaveLength(BACKUPS);
  const slowest = Math.max(...done.map(({ ms }) => ms));
  figure(
    16,
    `${BACKUPS} of ${BACKUPS} whole amid ${done.length} mixes, none missing; slowest answer ${Math.round(slowest)} ms`,
  );
});

/** A database with a shop: years of records and 50,000 movements in a long run, the demo otherwise. */
async function prepared(): Promise<string> {
  const folder = temp();
  await preparedShop(isLong ? 'long' : 'demo', folder, '2026-03-02T12:00:00Z');
  const database = new Sqlite(join(folder, 'shop.db'));
  // The movements are written behind the program, and sealed here as if it had written them.
  sealAll(database, []);
  database.close();
  return folder;
}

test('a shop is backed up and brought back in a folder of another machine by the two commands, in minutes', {
  timeout: 1_800_000,
}, async () => {
  const [old, disk, fresh] = [await prepared(), temp(), join(temp(), 'data')];
  const backedUp = await run('backup', old, [disk]);
  expect(backedUp.code, backedUp.said).toBe(0);
  const file = backupsIn(disk)[0]?.file ?? '';

  const declined = await run('restore', fresh, [file], 'no\n');
  expect([declined.code, existsSync(join(fresh, 'shop.db'))]).toEqual([1, false]);
  expect(declined.said).toMatch(/stock movements[\s\S]*All of it is sound[\s\S]*Nothing was changed/);
  const restored = await run('restore', fresh, [file], 'yes\n');
  expect(restored.code, restored.said).toBe(0);

  const [was, is] = [await lookInto(join(old, 'shop.db')), await lookInto(join(fresh, 'shop.db'))];
  expect(is).toEqual(was);
  expect(is.faults).toEqual([]);

  const began = performance.now();
  const server = await serve(fresh, await freePort());
  const board = await server.get('/keep-out');
  const startMs = performance.now() - began;
  expect(board.body).toMatch(/A backup was put back/);
  // A restore never touches a shop that runs.
  const refused = await run('restore', fresh, [file, '--yes']);
  expect([refused.code, refused.said]).toEqual([1, expect.stringMatching(/already running/)]);
  await server.stop();
  // Restored again over what is there, that is kept aside.
  expect((await run('restore', fresh, [file, '--yes'])).code).toBe(0);
  expect(readdirSync(fresh).filter((name) => name.startsWith('shop-put-aside-'))).toHaveLength(1);

  const seconds = (backedUp.ms + restored.ms + startMs) / 1_000;
  expect(seconds).toBeLessThan(300);
  const rows = Object.values(is.contents?.tables ?? {}).reduce((sum, table) => sum + table.rows, 0);
  const movements = is.contents?.shops[0]?.movements;
  figure(
    17,
    `${movements} movements, ${rows} rows: backup ${(backedUp.ms / 1_000).toFixed(1)} s, restore ` +
      `${(restored.ms / 1_000).toFixed(1)} s, start and board ${(startMs / 1_000).toFixed(1)} s; all counts and hashes equal`,
  );
});
