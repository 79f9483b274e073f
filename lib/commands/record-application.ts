import 'server-only';
import type { Clock } from '@/lib/clock';
import { doneChange } from '@/lib/data/done-change';
import { newId } from '@/lib/data/new-id';
import { recordChanges } from '@/lib/data/save-changes';
import { NO_DETAILS, saveRecords } from '@/lib/data/save-records';
import { seeClock } from '@/lib/data/see-clock';
import { applicationCount, treatedOn } from '@/lib/data/shop-facts';
import { shopFromRows } from '@/lib/data/shop-rows';
import { sprayedOf } from '@/lib/data/sprayed';
import { write } from '@/lib/data/writer';
import { longestRecorded } from '@/lib/engine/keepout/reopening';
import { keptAsTold } from '@/lib/engine/record/as-told';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import type { UnderWay } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type Instant, laterOf } from '@/shared/time/instant';

export type RecordApplication = {
  commandId: string;
  shopId: string;
  actor?: string;
  recipe: string;
  benches: string[];
  startedAt: Instant;
  /** Null while it is running. Its benches stay closed until there is an end. */
  endedAt: Instant | null;
  /** What was begun and told before, of which this is the record; left out: nothing was. */
  spraying?: string;
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
  const now = clock.now();
  return write(command, now, async (rows, stamp) => {
    const sprayed = await sprayedOf(rows, shopId, input);
    if (!sprayed.ok) return sprayed;
    const file = await shopFromRows(rows, shopId);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const rei = longestRecorded(sprayed.value.products.map(({ reiMinutes }) => reiMinutes));
    const shop = shopOfFile(file);
    const late = { ...sprayed.value, endedAt: input.endedAt, rei };
    const told = (shop.underWay ?? []).find(({ id }) => id === input.spraying) ?? null;
    const closedUntil = laterOf(closedAfterLateEntry(shop, late, now), keptAsTold(told, { ...late, now }));
    const position = await applicationCount(rows, shopId);
    const record = {
      ...sprayed.value,
      id: told?.id ?? newId(),
      position,
      number: 1,
      reason: null,
      details: {
        ...NO_DETAILS,
        ...{ by: stamp.actor, closedUntil },
        mixedAt: input.startedAt,
        ...(await treatedOn(rows, shopId, input.benches)),
      },
    };
    await saveRecords(rows, stamp, [record]);
    if (isTurnOpen(file, told)) await recordChanges(rows, stamp, [doneChange(file, told.planned, record.id)]);
    return accept({ application: record.id });
  });
}

type OfTurn = UnderWay & { planned: NonNullable<UnderWay['planned']> };

/** Whether it is of a planned spraying that its program still has, and that is on no record yet. */
function isTurnOpen(file: ShopFile, told: UnderWay | null): told is OfTurn {
  const program = file.programs.find(({ id }) => id === told?.planned?.program);
  return program?.changes.every(({ on, kind }) => on !== told?.planned?.on || kind !== 'done') ?? false;
}
