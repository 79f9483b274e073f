import 'server-only';
import type { Clock } from '@/lib/clock';
import { doneChange } from '@/lib/data/done-change';
import { newId } from '@/lib/data/new-id';
import { recordChanges } from '@/lib/data/save-changes';
import { NO_DETAILS, saveRecords } from '@/lib/data/save-records';
import { seeClock } from '@/lib/data/see-clock';
import { applicationCount, treatedOn } from '@/lib/data/shop-facts';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { sprayedOf } from '@/lib/data/sprayed';
import { write } from '@/lib/data/writer';
import { longestRecorded } from '@/lib/engine/keepout/reopening';
import { keptAsTold } from '@/lib/engine/record/as-told';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
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
  /** The planned spraying that it was, by the day on which its program has it; left out: the one that was told. */
  planned?: { program: string; on: Day };
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
    const file = await shopInWrite(rows, shopId);
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
    const turn = input.planned ?? told?.planned ?? null;
    if (isTurnOpen(file, turn)) await recordChanges(rows, stamp, [doneChange(file, turn, record.id)]);
    return accept({ application: record.id });
  });
}

type Turn = { program: string; on: Day };

/** Whether its program still has that planned spraying, and it is on no record yet. */
function isTurnOpen(file: ShopFile, turn: Turn | null): turn is Turn {
  const program = file.programs.find(({ id }) => id === turn?.program);
  return program?.changes.every(({ on, kind }) => on !== turn?.on || kind !== 'done') ?? false;
}
