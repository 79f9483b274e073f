import 'server-only';
import type { Figure } from '@/shared/metrics/open-metrics';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Clock } from '../clock';
import { newestSound } from '../data/backup-files.js';
import { trustOfClock } from '../data/clock-mark';
import { database } from '../data/database';
import { databaseFile } from '../data/database-file';
import { fileTrouble } from '../data/file-trouble';
import { damageFound, findingsOf } from '../data/found-damage';
import { shopsHere } from '../data/shops';

/** Whether the shop can answer and take what is sent, for whatever starts it and watches over it. */
export type Ready = { status: 'ready'; shops: number };

/**
 * Whether the database answers and its file is sound. A doubted clock or a damaged row is no reason to take the shop
 * away: its board keeps people out, and has to be seen.
 *
 * Refuses  'not-writable' with the reason
 */
export async function readiness(): Promise<Outcome<Ready>> {
  try {
    const shops = await shopsHere();
    const found = await damageFound();
    const [first] = found?.file ?? [];
    if (first !== undefined) return refuse({ code: 'not-writable', said: `The database is damaged: ${first}.` });
    return accept({ status: 'ready', shops: shops.length });
  } catch (error) {
    const trouble = fileTrouble(error);
    return refuse({ code: 'not-writable', said: trouble?.message ?? 'The database cannot be read.' });
  }
}

/** What this process and its database come to now. What cannot be read is left out. */
export async function shopFigures(clock: Clock): Promise<Figure[]> {
  const known = await knownOfDatabase(clock).catch(() => null);
  const newest = newestSound(databaseFile(), process.env)?.madeAt ?? null;
  return [
    gauge('memory_bytes', 'Memory that the process holds.', process.memoryUsage.rss(), 'bytes'),
    gauge('uptime_seconds', 'How long the process runs.', process.uptime(), 'seconds'),
    gauge('database_bytes', 'Size of the database.', known?.bytes ?? null, 'bytes'),
    gauge('database_log_bytes', 'Size of the log of the newest writes.', known?.logBytes ?? null, 'bytes'),
    gauge('database_faults', 'What the last check of the database found.', known?.faults ?? null),
    gauge('database_readable', '1 when the database can be read.', known === null ? 0 : 1),
    gauge('clock_doubted', '1 while every bench is kept out of for the clock or a restore.', known?.isDoubted ?? null),
    gauge(
      'backup_age_seconds',
      'Age of the last sound backup.',
      newest === null ? null : (clock.now() - newest) / 1_000,
      'seconds',
    ),
    {
      ...{ name: 'bench_and_bottle_commands', help: 'Commands kept in the database.', type: 'counter' },
      values: [{ value: known?.commands ?? null }],
    },
  ];
}

const gauge = (name: string, help: string, value: number | null, unit?: Figure['unit']): Figure => ({
  ...{ name: `bench_and_bottle_${name}`, help, type: 'gauge', values: [{ value }] },
  ...(unit && { unit }),
});

async function knownOfDatabase(clock: Clock) {
  const { watch, keeper } = await database();
  const found = await damageFound();
  const records = found?.records.reduce((sum, [, faults]) => sum + faults.length, 0) ?? 0;
  const { doubt } = await trustOfClock(clock.reading());
  return {
    ...{ bytes: Number(watch.signs().main.size), logBytes: watch.logSize, commands: keeper.commands },
    faults: found && findingsOf(found).length + records,
    isDoubted: doubt === null ? 0 : 1,
  };
}
