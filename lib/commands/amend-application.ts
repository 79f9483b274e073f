import 'server-only';
import type { Clock } from '@/lib/clock';
import { saveRecords } from '@/lib/data/save-recipes';
import { versionCount } from '@/lib/data/shop-facts';
import { sprayedOf } from '@/lib/data/sprayed';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Instant } from '@/shared/time/instant';

export type AmendApplication = {
  commandId: string;
  shopId: string;
  actor?: string;
  application: string;
  recipe: string;
  benches: string[];
  startedAt: Instant;
  endedAt: Instant | null;
  /** Why the record is corrected. It stays beside it. */
  reason: string;
};

/**
 * Correct a record of what was sprayed. The old version stays, and the new one says who, when and why.
 *
 * Gives    the number of the version that now counts
 * Refuses  'not-found'; 'faults' for no reason, no bench at all, or an end before the start
 */
export async function amendApplication(input: AmendApplication, clock: Clock): Promise<Outcome<{ version: number }>> {
  const { commandId, shopId, actor, ...body } = input;
  const command = { id: commandId, name: 'amendApplication', shopId, body, spokenAt: input.startedAt, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    const { application: id, reason } = input;
    if (reason.trim() === '') return refuse({ code: 'faults', faults: [{ path: 'reason', message: NO_REASON }] });
    const versions = await versionCount(rows, shopId, id);
    if (versions === 0) return refuse({ code: 'not-found', what: 'application', id });
    const sprayed = await sprayedOf(rows, shopId, input);
    if (!sprayed.ok) return sprayed;
    await saveRecords(rows, stamp, [{ ...sprayed.value, id, position: 0, number: versions + 1, reason }]);
    return accept({ version: versions + 1 });
  });
}

const NO_REASON = 'Say why the record is corrected, for example "wrong bench".';
