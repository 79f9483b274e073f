import 'server-only';
import { fraction } from '@/shared/quantity/exact';
import { wholeDown } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { showInstant } from '@/shared/time/show-day';
import { atClock, type Zone } from '@/shared/time/zone';
import { backupFolder, knownBackups, newestSound } from '../data/backup-files.js';
import { lastFailure } from '../data/backups-now';
import { databaseFile } from '../data/database-file';
import { isBackupOld } from '../engine/backup-time';

/** What is known of the backups of this database. */
export type BackupsSeen = {
  /** The newest that was found sound: when it was made and how old it is, in words; null when there is none. */
  newest: { file: string; when: string; age: string } | null;
  /** The newest of all, where it has faults and is newer than the newest sound one. */
  faulty: string | null;
  count: number;
  folder: string;
  /** Why the last one could not be made; null when it could. */
  failure: string | null;
};

type Moment = { now: Instant; today: Day; zone: Zone };

/** The backups of this database, for Setup. */
export function backupsSeen({ now, today, zone }: Moment): BackupsSeen {
  const database = databaseFile();
  const all = knownBackups(database, process.env);
  const newest = newestSound(database, process.env);
  const [last] = all;
  return {
    newest: newest && {
      ...{ file: newest.file, age: ageInWords(now - newest.madeAt) },
      when: showInstant(instantOf(newest.madeAt), zone, today),
    },
    faulty: last?.isSound === false ? last.file : null,
    ...{ count: all.length, folder: backupFolder(database, process.env), failure: lastFailure(database) },
  };
}

/** What Today says when the last sound backup is older than a week; null when it is not. */
export function oldBackup(shopSince: Day, { now, zone }: Moment): string | null {
  const newest = newestSound(databaseFile(), process.env)?.madeAt ?? null;
  if (!isBackupOld(now, newest, atClock(zone, shopSince, 0))) return null;
  return newest === null ? 'There is no backup yet.' : `The last backup is ${ageInWords(now - newest)}.`;
}

const [HOUR, DAY] = [3_600_000n, 86_400_000n];

/** Rounds down: "3 days old", "5 hours old", "less than an hour old". */
function ageInWords(ms: number): string {
  const [days, hours] = [DAY, HOUR].map((unit) => wholeDown<number>(fraction(BigInt(Math.max(0, ms)), unit)));
  if (days) return `${days} ${days === 1 ? 'day' : 'days'} old`;
  return hours ? `${hours} ${hours === 1 ? 'hour' : 'hours'} old` : 'less than an hour old';
}
