import type { Backup } from './backup-files.js';

const DAY = 86_400_000;

/** How many backups stay: all of the last two days, then the last one of each of so many days, weeks and months. */
export const KEPT = { days: 7, weeks: 4, months: 12 } as const;

/** This many backups with faults stay: the newest may hold what no sound one does. */
const DAMAGED_KEPT = 2;

/**
 * The backups that may go. Only sound ones take a place of the scheme, so a damaged one never pushes a sound one out.
 * Days, weeks (from Monday) and months are of UTC, like the names of the files.
 *
 * Takes    backups of one folder, the newest first, and the moment in milliseconds
 */
export function backupsToRemove(backups: readonly Backup[], now: number): Backup[] {
  const sound = backups.filter(({ isSound }) => isSound !== false);
  const damaged = backups.filter(({ isSound }) => isSound === false);
  // One that nobody checked takes a place as well, but never that of the newest that is known to be sound.
  const newestSound = backups.filter(({ isSound }) => isSound === true).slice(0, 1);
  const stay = new Set([
    ...newestSound,
    ...backups.filter(({ madeAt }) => madeAt > now - 2 * DAY),
    ...lastOfEach(sound, KEPT.days, ({ madeAt }) => dayOf(madeAt)),
    ...lastOfEach(sound, KEPT.weeks, ({ madeAt }) => weekOf(madeAt)),
    ...lastOfEach(sound, KEPT.months, ({ madeAt }) => dayOf(madeAt).slice(0, 7)),
    ...damaged.slice(0, DAMAGED_KEPT),
  ]);
  return backups.filter((backup) => !stay.has(backup));
}

const dayOf = (at: number): string => new Date(at).toISOString().slice(0, 10);

/** The Monday of its week. */
function weekOf(at: number): string {
  const daysPast = (new Date(at).getUTCDay() + 6) % 7;
  return dayOf(at - daysPast * DAY);
}

/** The last backup of each of the latest periods that have one. */
function lastOfEach(backups: readonly Backup[], most: number, periodOf: (backup: Backup) => string): Backup[] {
  const last = new Map<string, Backup>();
  for (const backup of backups) {
    const period = periodOf(backup);
    if (!last.has(period)) last.set(period, backup);
  }
  return [...last.values()].slice(0, most);
}
