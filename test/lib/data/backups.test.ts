import { copyFileSync, cpSync, existsSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Sqlite from 'better-sqlite3';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { backUpWhenDue } from '@/lib/commands/watch-backups';
import { type Backup, backupName, backupsIn, madeAtIn, newestSound, restoreAdvice } from '@/lib/data/backup-files.js';
import { database } from '@/lib/data/database';
import { FileTrouble } from '@/lib/data/file-trouble';
import { backupsToRemove, KEPT } from '@/lib/data/kept-backups';
import { makeBackup, scheduledBackup } from '@/lib/data/make-backup';
import { newId } from '@/lib/data/new-id';
import { bringBack, candidate } from '@/lib/data/restore-backup';
import { readMark } from '@/lib/data/shop-mark.js';
import { inTurn } from '@/lib/data/writer';
import { isBackupDue } from '@/lib/engine/backup-time';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { MIGRATIONS, migrationsIn } from '@/prisma/migration-folders.js';
import { instantOf } from '@/shared/time/instant';
import { Zone } from '@/shared/time/zone';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

const [HOUR, DAY] = [3_600_000, 86_400_000];
const NOW = CLOCK.now();

const rename = (shopId: string, name: string) =>
  changeShop({ commandId: newId(), shopId, part: { benches: [{ ...SMALL.benches[0], id: 'b', name }] } }, CLOCK);

async function runningShop() {
  const shopId = await smallShop();
  await inTurn(async ({ keeper }) => keeper.takeOver());
  const { file } = await database();
  return { shopId, file, folder: join(dirname(file), 'backups') };
}

test('a backup of a running shop is one whole file with everything in it, and says what it holds', async () => {
  const { shopId, file, folder } = await runningShop();
  await rename(shopId, 'Latest');
  const { file: copy, manifest } = await makeBackup(file, folder, NOW);
  expect(manifest).toMatchObject({ isSound: true, faults: [], madeAt: NOW });
  expect(manifest.contents?.shops).toMatchObject([
    { id: shopId, name: 'A shop', commands: 2, records: 1, movements: 4 },
  ]);
  expect(readdirSync(folder).sort()).toEqual([backupName(NOW), `${backupName(NOW)}.json`]);
  const raw = new Sqlite(copy, { readonly: true });
  expect(raw.prepare('SELECT "name" FROM "Bench"').pluck().get()).toBe('Latest');
  raw.close();
  // What is written on is in the next one, under the next free name.
  await rename(shopId, 'Later');
  const next = await makeBackup(file, folder, NOW);
  expect(next.file).not.toBe(copy);
  expect(next.manifest.contents?.tables.Bench).not.toEqual(manifest.contents?.tables.Bench);
});

test.runIf(process.platform !== 'win32')('backups are for this account alone', async () => {
  const { file, folder } = await runningShop();
  const { file: copy } = await makeBackup(file, folder, NOW);
  const modes = [folder, copy, `${copy}.json`].map((path) => (statSync(path).mode & 0o777).toString(8));
  expect(modes).toEqual(['700', '600', '600']);
});

test('what an ended program left begun is taken away; without a database nothing is made', async () => {
  const { file, folder } = await runningShop();
  mkdirSync(folder);
  writeFileSync(join(folder, '.begun-999999999-aa'), 'half');
  await expect(makeBackup(`${file}-nowhere`, folder, NOW)).rejects.toThrow(/no database/);
  expect(readdirSync(folder)).toEqual([]);
});

test('a backup of a damaged database says so, is not counted as sound, and removes nothing', async () => {
  const { file, folder } = await runningShop();
  const old = await makeBackup(file, folder, NOW - 400 * DAY);
  const older = await makeBackup(file, folder, NOW - 400 * DAY - HOUR);
  const raw = new Sqlite(file);
  raw.exec(`UPDATE "Product" SET "reiHours" = 2 WHERE "id" = 'p'`);
  raw.close();
  const { manifest } = await scheduledBackup(file, NOW);
  expect(manifest.isSound).toBe(false);
  expect(manifest.faults.join()).toMatch(/Product/);
  expect(existsSync(older.file)).toBe(true);
  expect(newestSound(file, {})?.file).toBe(old.file);
  // Damage leads to that one, by its name.
  expect(new FileTrouble('damaged', 'It is damaged.').message).toContain(`npm run restore -- "${old.file}"`);
  rmSync(old.file);
  rmSync(older.file);
  expect(restoreAdvice(file, {})).toMatch(/No backup is known/);
});

test('a backup in another folder is known, too', async () => {
  const { file } = await runningShop();
  const other = join(dirname(file), 'another disk');
  const { file: copy } = await makeBackup(file, other, NOW);
  expect(newestSound(file, {})?.file).toBe(copy);
  rmSync(copy);
  expect(newestSound(file, {})).toBeNull();
});

test('names say the moment in UTC, and nothing else is taken for a backup', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 4_000_000_000 }), (second) => {
      expect(madeAtIn(backupName(second * 1_000))).toBe(second * 1_000);
    }),
  );
  expect(
    ['shop.db', 'shop-2026-03-31.db', 'shop-2026-13-41-090000Z.db', 'a-shop-2026-03-31-090000Z.db'].map(madeAtIn),
  ).toEqual([null, null, null, null]);
});

const backup = (madeAt: number, isSound: boolean | null = true): Backup => ({
  ...{ file: `${madeAt}`, name: `${madeAt}`, madeAt, bytes: 1, isSound },
});

test('of nightly backups of two years, 7 days, 4 weeks and 12 months stay', () => {
  const start = Date.UTC(2026, 2, 31, 3, 30);
  let kept: Backup[] = [];
  for (let night = 0; night < 730; night += 1) {
    const now = start + night * DAY;
    kept = [backup(now), ...kept];
    const gone = new Set(backupsToRemove(kept, now));
    kept = kept.filter((one) => !gone.has(one));
  }
  const last = start + 729 * DAY;
  const ages = kept.map(({ madeAt }) => (last - madeAt) / DAY);
  expect(ages.filter((age) => age < KEPT.days)).toEqual([0, 1, 2, 3, 4, 5, 6]);
  expect(kept.length).toBeLessThanOrEqual(KEPT.days + KEPT.weeks + KEPT.months);
  const months = new Set(kept.map(({ madeAt }) => new Date(madeAt).toISOString().slice(0, 7)));
  expect(months.size).toBe(12);
});

test('the newest sound backup stays, whatever else there is, and damaged ones push nothing out', () => {
  const any = fc.array(fc.tuple(fc.integer({ min: 0, max: 900 * 24 }), fc.constantFrom(true, false, null)), {
    minLength: 1,
  });
  fc.assert(
    fc.property(any, (made) => {
      const all = made
        .map(([hours, isSound]) => backup(NOW - hours * HOUR, isSound))
        .sort((a, b) => b.madeAt - a.madeAt);
      const gone = backupsToRemove(all, NOW);
      const newest = all.find(({ isSound }) => isSound);
      expect(gone).not.toContain(newest);
      expect(gone.filter(({ madeAt }) => madeAt > NOW - 2 * DAY)).toEqual([]);
      const withoutDamaged = all.filter(({ isSound }) => isSound !== false);
      const soundGone = gone.filter(({ isSound }) => isSound !== false);
      expect(soundGone).toEqual(backupsToRemove(withoutDamaged, NOW));
    }),
    { numRuns: 2_000 },
  );
});

test('a backup is due once a night, and in the morning where the computer was off', () => {
  const zone = Zone.parse('America/New_York');
  const at = (hour: number, minute = 0, day = 31) => instantOf(Date.UTC(2026, 2, day, hour + 4, minute));
  expect(isBackupDue(zone, at(3, 29), at(3, 31, 30), null)).toBe(false);
  expect(isBackupDue(zone, at(3, 30), at(3, 31, 30), null)).toBe(true);
  expect(isBackupDue(zone, at(9), at(3, 31, 30), null)).toBe(true);
  expect(isBackupDue(zone, at(9), at(3, 30), null)).toBe(false);
  expect(isBackupDue(zone, at(9), null, null)).toBe(true);
  // After a try that failed, an hour passes.
  expect(isBackupDue(zone, at(9), null, at(8, 30))).toBe(false);
  expect(isBackupDue(zone, at(9, 30), null, at(8, 30))).toBe(true);
});

test('the running shop makes the backup that is due, and no second one', async () => {
  const { folder } = await runningShop();
  expect(await backUpWhenDue(CLOCK)).toBe(true);
  expect(backupsIn(folder)).toMatchObject([{ madeAt: NOW, isSound: true }]);
  expect(await backUpWhenDue(CLOCK)).toBe(false);
});

test('a restore brings back what was backed up and keeps the present state aside', async () => {
  const { shopId, file, folder } = await runningShop();
  await rename(shopId, 'Backed up');
  const { file: copy, manifest } = await makeBackup(file, folder, NOW);
  await rename(shopId, 'After the backup');
  await (await database()).close();

  const from = await candidate(copy);
  expect(from).toMatchObject({ faults: [], isSealed: true, madeAt: NOW, contents: manifest.contents });
  const aside = (await bringBack(from, file, NOW)) ?? '';
  expect(readdirSync(aside).sort()).toEqual(['shop.db', 'shop.mark']);
  const nameIn = (path: string) => new Sqlite(path).prepare('SELECT "name" FROM "Bench"').pluck().get();
  expect([nameIn(file), nameIn(join(aside, 'shop.db'))]).toEqual(['Backed up', 'After the backup']);
  expect((await candidate(file)).contents).toEqual(manifest.contents);
  // The mark names another database, so the start sees that one was put back.
  expect(readMark(file)).toEqual({ database: 'ffffffff', commands: 0 });
});

test('a backup that was changed after it was made is found out before it is restored', async () => {
  const { file, folder } = await runningShop();
  const { file: copy } = await makeBackup(file, folder, NOW);
  const raw = new Sqlite(copy);
  raw.exec('CREATE TABLE stranger (a)');
  raw.close();
  expect((await candidate(copy)).faults[0]).toMatch(/not as it was when it was backed up/);
  const half = join(folder, 'half.db');
  copyFileSync(copy, half);
  writeFileSync(half, 'x'.repeat(9_000));
  expect(await candidate(half)).toMatchObject({ contents: null });
});

test('a copy from an older version is looked at as well, and the next start brings it up to date', async () => {
  const { file, folder } = await runningShop();
  const names = migrationsIn().map(({ name }) => name);
  const own = join(folder, 'migrations');
  for (const name of names.slice(0, 6)) cpSync(join(MIGRATIONS, name), join(own, name), { recursive: true });
  const older = join(folder, 'older.db');
  await migrate(older, own);
  const raw = new Sqlite(older);
  raw.exec(`INSERT INTO "Shop" (id, createdOn, name, timeZone, currency, units, openingHours, fillCapacity, lossPerFill, measuringStep, safetyDays, sameModeInARow, capitalPerYear)
    VALUES ('s', '2026-03-31', 'Old', 'UTC', 'EUR', 'us', '{}', '1 L', '0 mL', '0 mL', 1, 2, 0)`);
  raw.close();
  const from = await candidate(older);
  expect(from).toMatchObject({ faults: [], isSealed: false, madeAt: null, contents: { shops: [{ name: 'Old' }] } });
  await (await database()).close();
  await bringBack(from, file, NOW);
  expect(await migrate(file)).toEqual(names.slice(6));
});

test('a copy whose newest writes lie beside it is restored with them', async () => {
  const { shopId, file, folder } = await runningShop();
  await rename(shopId, 'In the log');
  mkdirSync(folder);
  for (const end of ['', '-wal']) copyFileSync(`${file}${end}`, join(folder, `copy.db${end}`));
  await (await database()).close();
  await bringBack(await candidate(join(folder, 'copy.db')), file, NOW);
  expect(new Sqlite(file).prepare('SELECT "name" FROM "Bench"').pluck().get()).toBe('In the log');
});
