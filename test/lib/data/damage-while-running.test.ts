import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import Sqlite from 'better-sqlite3';
import { expect, test, vi } from 'vitest';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { database } from '@/lib/data/database';
import { damageFound } from '@/lib/data/found-damage';
import { newId } from '@/lib/data/new-id';
import { wholeCheck } from '@/lib/data/whole-check';
import { write } from '@/lib/data/writer';
import { doubtNow } from '@/lib/views/bench-states';
import { accept } from '@/shared/outcome';
import { quickFolder } from '@/test/run/quick-folder.js';
import { isLong, runs } from '@/test/runs';
import { smallShop } from '../commands/small-shop';
import { DAMAGES, seeded, sizeOf } from './damages';
import { CLOCK, freshDatabase } from './fresh-database';
import { withMovements } from './many-movements';

type Random = (below: number) => number;

const overwritten = (file: string, bytes: Uint8Array) => writeFileSync(file, bytes, { flag: 'r+' });
const zeroed = (file: string) => overwritten(file, Buffer.alloc(sizeOf(file)));

/** What happens to the files of a database that is open, beside what happens to a resting one. */
const RUNNING: Record<string, (file: string, random: Random) => unknown> = {
  ...DAMAGES,
  'cut to nothing': (file) => truncateSync(file, 0),
  zeroed,
  'another file copied over it': (file) => copyFileSync(`${file}.other`, file),
  'another file put in its place': (file) => {
    copyFileSync(`${file}.other`, `${file}.new`);
    renameSync(`${file}.new`, file);
  },
  deleted: (file) => rmSync(file),
  'moved away': (file) => renameSync(file, `${file}.moved`),
  'log deleted': (file) => rmSync(`${file}-wal`),
  'log cut to nothing': (file) => truncateSync(`${file}-wal`, 0),
  'log cut': (file, random) => truncateSync(`${file}-wal`, random(sizeOf(`${file}-wal`))),
  'log zeroed': (file) => zeroed(`${file}-wal`),
  'log page': (file, random) => DAMAGES['garbage page']?.(`${file}-wal`, random),
  'log of another': (file) => writeFileSync(`${file}-wal`, readFileSync(`${file}.other`)),
  'index of the log deleted': (file) => rmSync(`${file}-shm`),
  'all three deleted': (file) => {
    for (const name of [file, `${file}-wal`, `${file}-shm`]) rmSync(name);
  },
};

/** A small shop in a closed file, to be copied for each damage. */
async function shopAtRest() {
  const shopId = await smallShop();
  const { file, close } = await database();
  await close();
  return { shopId, bytes: readFileSync(file) };
}

/** An open copy of it that was written to lately, so that some of it may stand in the log alone. */
async function running({ shopId, bytes }: Awaited<ReturnType<typeof shopAtRest>>, isInLog: boolean) {
  const folder = mkdtempSync(join(quickFolder(), 'bench-and-bottle-'));
  process.env.DATA_DIR = folder;
  const file = join(folder, 'shop.db');
  for (const name of [file, `${file}.other`]) writeFileSync(name, bytes);
  await lookAtClock(CLOCK, true);
  await addBench(shopId, 'first');
  if (!isInLog) (await database()).keeper.finish();
  expect(await settledDoubt(shopId)).toBe(null);
  return { file, shopId };
}

/** The doubt once the file has been checked: a large file is checked beside, and people are kept out meanwhile. */
async function settledDoubt(shopId: string) {
  const look = () => damageFound().catch(() => 'unreadable');
  while ((await look()) === null) await setTimeout(20);
  return doubtNow(CLOCK, shopId).catch(() => 'unreadable');
}

/** A small command: put up a bench. */
const addBench = (shopId: string, name: string) =>
  write({ id: newId(), name: 'addBench', shopId, body: name }, CLOCK.now(), async (rows) => {
    const position = await rows.bench.count({ where: { shopId } });
    const bench = { shopId, id: name, position, name, customers: true, enclosed: true, coverage: 1 };
    await rows.bench.create({ data: bench });
    return accept({ benches: position + 1 });
  });

/** Whether a write is acknowledged; an error is told as one and acknowledges nothing. */
const isAcknowledged = (shopId: string, name: string) =>
  addBench(shopId, name).then(
    ({ ok }) => ok,
    () => false,
  );

/** Whether the next start would find both benches in the files at their paths; and, if that is asked, nothing wrong with any row. */
async function isKept(file: string, isWhole: boolean): Promise<boolean> {
  const folder = mkdtempSync(join(quickFolder(), 'bench-and-bottle-'));
  try {
    for (const name of ['', '-wal'])
      if (existsSync(`${file}${name}`)) cpSync(`${file}${name}`, join(folder, `shop.db${name}`));
    const copy = join(folder, 'shop.db');
    const raw = new Sqlite(copy);
    const names = raw.prepare(`SELECT name FROM "Bench" WHERE "id" IN ('first', 'second')`).pluck().all();
    raw.close();
    const { file: lines, rows } = await wholeCheck(copy);
    return names.length === 2 && lines.length === 0 && !(isWhole && rows.length > 0);
  } catch {
    return false;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Damage an open copy of a shop again and again. Gives what went wrong, and how often KEEP OUT or a refusal came of it. */
async function damageOpenCopies(atRest: Awaited<ReturnType<typeof shopAtRest>>, times: number, seed: number) {
  const silent = vi.spyOn(console, 'error').mockImplementation(() => {});
  const random = seeded(seed);
  const kinds = Object.entries(RUNNING);
  const wrong: string[] = [];
  let noticed = 0;
  for (let round = 0; round < times; round += 1) {
    const { file, shopId } = await running(atRest, random(2) === 0);
    const { close } = await database();
    const [kind, damage] = kinds[round % kinds.length] ?? ['', () => ''];
    const what = damage(file, random);
    const early = random(2) === 0 && (await isAcknowledged(shopId, 'second'));
    const doubt = await settledDoubt(shopId);
    const isDone = early || (await isAcknowledged(shopId, 'second'));
    if (doubt !== null) noticed += 1;
    if (isDone && doubt === null && !(await isKept(file, true))) wrong.push(`${kind}: ${what}`);
    if (early && !(await isKept(file, false))) wrong.push(`${kind}, written first: ${what}`);
    await close();
    rmSync(join(file, '..'), { recursive: true, force: true });
  }
  silent.mockRestore();
  return { wrong, noticed };
}

const TIMES = runs(42, 1_000);
const PATIENCE = { timeout: 3_600_000 };

test(
  `${TIMES} damages of an open file end in KEEP OUT or a refusal, never in a lost write that was acknowledged`,
  PATIENCE,
  async () => {
    const { wrong, noticed } = await damageOpenCopies(await shopAtRest(), TIMES, 7);
    expect(wrong).toEqual([]);
    // The rest hit a page that holds nothing: the file was whole all the same.
    expect(noticed).toBeGreaterThan(TIMES * 0.5);
  },
);

test.runIf(isLong)('so do 300 damages of an open file with 50,000 movements', PATIENCE, async () => {
  const { shopId, bytes } = await shopAtRest();
  const file = join(await freshDatabase(), 'shop.db');
  writeFileSync(file, bytes);
  withMovements(file, 50_000);
  const { wrong, noticed } = await damageOpenCopies({ shopId, bytes: readFileSync(file) }, 300, 11);
  expect(wrong).toEqual([]);
  expect(noticed).toBeGreaterThan(200);
});

test.each([
  'cut to nothing',
  'zeroed',
  'another file put in its place',
  'deleted',
  'log deleted',
  'log cut to nothing',
  'log zeroed',
  'index of the log deleted',
])('a write amid which the file is damaged (%s) is not acknowledged', async (kind) => {
  const { file, shopId } = await running(await shopAtRest(), true);
  const { close } = await database();
  const outcome = await write(
    { id: newId(), name: 'addBench', shopId, body: kind },
    CLOCK.now(),
    async (rows, stamp) => {
      stamp.touched.addOutside();
      await rows.bench.updateMany({ where: { shopId }, data: { name: 'amid' } });
      RUNNING[kind]?.(file, seeded(3));
      return accept({});
    },
  ).catch(() => ({ ok: false }));
  expect(outcome.ok).toBe(false);
  expect(await doubtNow(CLOCK, shopId).catch(() => 'unreadable')).not.toBe(null);
  await close();
  rmSync(join(file, '..'), { recursive: true, force: true });
});

test('a change by another program is looked at, and what it leaves sound goes on', async () => {
  const { file, shopId } = await running(await shopAtRest(), true);
  const { close } = await database();
  const raw = new Sqlite(file);
  raw.exec('CREATE TABLE "other" (a); DROP TABLE "other"');
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
  expect(await isAcknowledged(shopId, 'second')).toBe(true);
  raw.exec(`UPDATE "Product" SET "reiMinutes" = 1 WHERE "id" = 'p'`);
  raw.close();
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  await close();
  rmSync(join(file, '..'), { recursive: true });
});
