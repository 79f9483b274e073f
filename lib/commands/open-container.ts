import 'server-only';
import type { Clock } from '@/lib/clock';
import { changeContainer } from '@/lib/data/container-changes';
import { type ContainerNamed, findContainer, zoneOf } from '@/lib/data/find-container';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Day } from '@/shared/time/day';
import { atClock, dayOf } from '@/shared/time/zone';

export type OpenContainer = ContainerNamed & { commandId: string; shopId: string; actor?: string; openedOn: Day };

/**
 * Note that a container was opened, which starts its opened life.
 *
 * Refuses  'already-opened'; 'before-received'; 'faults' for a day that is yet to come; 'not-found'
 */
export async function openContainer(input: OpenContainer, clock: Clock): Promise<Outcome<{ openedOn: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'openContainer', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(['openedOn', PIECES.lot.openedOn, input.openedOn]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const zone = await zoneOf(rows, shopId);
    if (!zone.ok) return zone;
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { openedOn, ledger, lotId, place } = container.value;
    if (openedOn !== null) return refuse({ code: 'already-opened', on: openedOn });
    if (input.openedOn < ledger.receivedOn) return refuse({ code: 'before-received', receivedOn: ledger.receivedOn });
    if (input.openedOn > dayOf(zone.value, stamp.recordedAt)) {
      return refuse({ code: 'faults', faults: [{ path: 'openedOn', message: YET_TO_COME }] });
    }
    const occurredAt = atClock(zone.value, input.openedOn, 0);
    await changeContainer(rows, stamp, { lotId, place, kind: 'opened', is: input.openedOn, occurredAt });
    return accept({ openedOn: input.openedOn });
  });
}

const YET_TO_COME = 'This day is yet to come. Give today or an earlier one.';
