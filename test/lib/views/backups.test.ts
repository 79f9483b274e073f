import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { makeBackupNow } from '@/lib/commands/back-up';
import { database } from '@/lib/data/database';
import { makeBackup } from '@/lib/data/make-backup';
import { backupsSeen, oldBackup } from '@/lib/views/backups';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { Zone } from '@/shared/time/zone';
import { smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

const [HOUR, DAY] = [3_600_000, 86_400_000];
const NOW = CLOCK.now();
const zone = Zone.parse('America/New_York');
const after = (ms: number) => ({ now: instantOf(NOW + ms), today: CLOCK.today(zone), zone });

test('Setup says how old the last sound backup is, by the clock of the shop', async () => {
  await smallShop();
  expect(backupsSeen(after(0))).toMatchObject({ newest: null, count: 0, failure: null, faulty: null });
  expect(await makeBackupNow(CLOCK)).toMatchObject({ ok: true });
  const ages = [HOUR / 2, HOUR, 5.9 * HOUR, DAY, 8 * DAY].map((ms) => backupsSeen(after(ms)).newest?.age);
  expect(ages).toEqual(['less than an hour old', '1 hour old', '5 hours old', '1 day old', '8 days old']);
  expect(backupsSeen(after(0))).toMatchObject({ count: 1, newest: { when: 'Tue 31 March 05:00' } });
});

test('Today says it when the last backup, or the shop without one, is older than a week', async () => {
  await smallShop();
  const [new_, old] = [CLOCK.today(zone), Day.parse('2026-03-01')];
  expect(oldBackup(new_, after(0))).toBeNull();
  expect(oldBackup(old, after(0))).toBe('There is no backup yet.');
  const { file } = await database();
  await makeBackup(file, join(dirname(file), 'backups'), NOW);
  expect(oldBackup(old, after(7 * DAY))).toBeNull();
  expect(oldBackup(old, after(7 * DAY + HOUR))).toBe('The last backup is 7 days old.');
});

test('a backup that cannot be made is refused with the reason, and Setup goes on saying it', async () => {
  await smallShop();
  const { file } = await database();
  process.env.BACKUP_DIR = join(file, 'in a file');
  try {
    const refused = await makeBackupNow(CLOCK);
    expect(refused).toMatchObject({ ok: false, refusal: { said: expect.stringMatching(/could not be made/) } });
    expect(backupsSeen(after(0)).failure).toMatch(/in a file/);
  } finally {
    delete process.env.BACKUP_DIR;
  }
});
