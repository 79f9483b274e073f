import 'server-only';
import type { ClockDoubt, ClockReading, ClockTrust } from '@/lib/engine/keepout/clock-doubt';
import { confirmed, MOST_AHEAD } from '@/lib/engine/keepout/clock-doubt';
import type { Database, Rows } from './database';
import { postgresqlAddress } from './database-address';
import { keptWith } from './kept';

/*
 * Several processes at one PostgreSQL database may run on computers with clocks of their own. A doubt of one is a doubt of
 * all, and a confirmation counts wherever the clock shows about the same.
 */

/** Which confirmation this process has taken note of last, by the database that it has open. */
const taken = keptWith<Database['marks'], { id: string | null }>('confirmations of the clock');

/** What the rows say of the clock that another process may have written: the reason for doubt, and what it showed last. */
export type Told = { doubt: ClockDoubt | null; last: number | null };

/**
 * What this process knows of its clock, with what the others have told.
 *
 * Takes    either connection; and how the rows are read
 */
export async function withOthers(
  { marks }: Pick<Database, 'marks'>,
  rows: Rows,
  own: ClockTrust,
  reading: ClockReading,
  read: (rows: Rows) => Promise<Told>,
): Promise<ClockTrust> {
  if (postgresqlAddress() === null) return own;
  const latest = await rows.clockConfirmation.findFirst({ orderBy: { recordedAt: 'desc' }, select: { id: true } });
  const told = await read(rows);
  const before = taken.get(marks);
  const id = latest?.id ?? null;
  taken.set(marks, { id });
  if (own.doubt === null) return told.doubt === null ? own : { ...own, doubt: told.doubt };
  const isConfirmed = before !== undefined && before.id !== id && told.doubt === null;
  const isAlike = told.last !== null && Math.abs(reading.now - told.last) <= MOST_AHEAD;
  return isConfirmed && isAlike ? confirmed(own, reading, true) : own;
}
