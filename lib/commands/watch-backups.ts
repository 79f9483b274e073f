import 'server-only';
import type { Clock } from '@/lib/clock';
import { backupFolder, backupsIn } from '@/lib/data/backup-files.js';
import { backUp, lastTry } from '@/lib/data/backups-now';
import { databaseFile } from '@/lib/data/database-file';
import { shopZones } from '@/lib/data/shops';
import { isBackupDue } from '@/lib/engine/backup-time';

/** The first look leaves a start its time; from then on every ten minutes. */
const [FIRST_MS, PAUSE_MS] = [5 * 60_000, 10 * 60_000];

/** Make the daily backup when it is due, as long as the program runs. Begun again, the earlier watch ends. */
export function watchBackups(clock: Clock): void {
  const house: { backupWatch?: NodeJS.Timeout } & typeof globalThis = globalThis;
  clearTimeout(house.backupWatch);
  const look = async (): Promise<void> => {
    await backUpWhenDue(clock).catch((error) => console.error('The daily backup could not be made:', error));
    house.backupWatch = setTimeout(look, PAUSE_MS).unref();
  };
  house.backupWatch = setTimeout(look, FIRST_MS).unref();
}

/** Make a backup when one is due, by the clock of the oldest shop here. Gives whether one was tried. */
export async function backUpWhenDue(clock: Clock): Promise<boolean> {
  const [zone] = await shopZones();
  if (!zone) return false;
  const file = databaseFile();
  const newest = backupsIn(backupFolder(file, process.env))[0]?.madeAt ?? null;
  if (!isBackupDue(zone, clock.now(), newest, lastTry(file))) return false;
  const result = await backUp(file, clock.now());
  if (!result.ok) console.error(`The daily backup could not be made: ${result.message}`);
  else if (!result.made.manifest.isSound) {
    console.error(`The backup ${result.made.file} has faults: ${result.made.manifest.faults[0]}`);
  }
  return true;
}
