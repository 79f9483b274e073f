import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { backupFolder } from '@/lib/data/backup-files.js';
import { database } from '@/lib/data/database';
import { makeBackup } from '@/lib/data/make-backup';
import { readiness, shopFigures } from '@/lib/views/health';
import { smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

const figureOf = async (name: string) =>
  (await shopFigures(CLOCK)).find((one) => one.name === `bench_and_bottle_${name}`)?.values[0]?.value;

test('a shop whose database answers is ready, and its figures are told', async () => {
  await smallShop();
  expect(await readiness()).toEqual({ ok: true, value: { status: 'ready', shops: 1 } });
  expect(await figureOf('commands')).toBe(1);
  expect(await figureOf('database_faults')).toBe(0);
  expect(await figureOf('database_readable')).toBe(1);
  expect(await figureOf('backup_age_seconds')).toBeNull();
  const { file } = await database();
  await makeBackup(file, backupFolder(file, {}), CLOCK.now() - 90_000);
  expect(await figureOf('backup_age_seconds')).toBe(90);
});

test('a shop whose database was overwritten is not ready, says why, and tells what it still knows', async () => {
  await smallShop();
  const { file } = await database();
  writeFileSync(join(dirname(file), 'shop.db'), 'x'.repeat(20_000));
  expect(await readiness()).toMatchObject({
    ok: false,
    refusal: { code: 'not-writable', said: expect.stringMatching(/overwritten/) },
  });
  expect(await figureOf('database_readable')).toBe(0);
  expect(await figureOf('memory_bytes')).toBeGreaterThan(0);
});
