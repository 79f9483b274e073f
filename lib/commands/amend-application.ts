import 'server-only';
import type { Clock } from '@/lib/clock';
import { recordToday } from '@/lib/data/record-today';
import { saveRecords } from '@/lib/data/save-records';
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
    const before = await recordToday(rows, shopId, id);
    if (!before) return refuse({ code: 'not-found', what: 'application', id });
    const sprayed = await sprayedOf(rows, shopId, input);
    if (!sprayed.ok) return sprayed;
    const number = before.number + 1;
    // What went in stays as it was recorded, as long as it is a record of the same recipe.
    const products = before.recipe === sprayed.value.recipe ? before.products : sprayed.value.products;
    const record = { ...sprayed.value, products, id, position: 0, number, reason, details: before.details };
    await saveRecords(rows, stamp, [record]);
    return accept({ version: number });
  });
}

const NO_REASON = 'Say why the record is corrected, for example "wrong bench".';
