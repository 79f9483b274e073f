import 'server-only';
import type { Clock } from '@/lib/clock';
import { backUp } from '@/lib/data/backups-now';
import { databaseFile } from '@/lib/data/database-file';
import type { Made } from '@/lib/data/make-backup';
import { accept, type Outcome, refuse } from '@/shared/outcome';

/**
 * Make a backup now, in the shop's own folder, while the shop runs. It writes nothing into the shop.
 *
 * Refuses  'not-writable' when it could not be made
 */
export async function makeBackupNow(clock: Clock): Promise<Outcome<Made>> {
  const result = await backUp(databaseFile(), clock.now());
  if (result.ok) return accept(result.made);
  return refuse({ code: 'not-writable', said: `The backup could not be made. ${result.message}` });
}
