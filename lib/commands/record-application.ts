import 'server-only';
import type { Clock } from '@/lib/clock';
import { newId } from '@/lib/data/new-id';
import { NO_DETAILS, saveRecords } from '@/lib/data/save-records';
import { seeClock } from '@/lib/data/see-clock';
import { applicationCount, treatedOn } from '@/lib/data/shop-facts';
import { sprayedOf } from '@/lib/data/sprayed';
import { write } from '@/lib/data/writer';
import { accept, type Outcome } from '@/shared/outcome';
import type { Instant } from '@/shared/time/instant';

export type RecordApplication = {
  commandId: string;
  shopId: string;
  actor?: string;
  recipe: string;
  benches: string[];
  startedAt: Instant;
  /** Null while it is running. Its benches stay closed until there is an end. */
  endedAt: Instant | null;
};

/**
 * Put on record what was sprayed where. The record never changes; it is corrected by an amendment.
 *
 * Refuses  'not-found' for the recipe or a bench; 'faults' for no bench at all, or an end before the start
 */
export async function recordApplication(
  input: RecordApplication,
  clock: Clock,
): Promise<Outcome<{ application: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const command = { id: commandId, name: 'recordApplication', shopId, body, spokenAt: input.startedAt, actor };
  await seeClock(clock.reading());
  return write(command, clock.now(), async (rows, stamp) => {
    const sprayed = await sprayedOf(rows, shopId, input);
    if (!sprayed.ok) return sprayed;
    const position = await applicationCount(rows, shopId);
    const record = {
      ...sprayed.value,
      id: newId(),
      position,
      number: 1,
      reason: null,
      details: {
        ...NO_DETAILS,
        by: stamp.actor,
        mixedAt: input.startedAt,
        ...(await treatedOn(rows, shopId, input.benches)),
      },
    };
    await saveRecords(rows, stamp, [record]);
    return accept({ application: record.id });
  });
}
