import 'server-only';
import type { Clock } from '@/lib/clock';
import { changeContainer } from '@/lib/data/container-changes';
import { type ContainerNamed, findContainer } from '@/lib/data/find-container';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Day } from '@/shared/time/day';

export type CorrectLastDay = ContainerNamed & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** The last day as it is printed on the container; null when none is. */
  expiresOn: Day | null;
  reason: string;
};

/**
 * Correct the last day that is printed on a container, with the reason.
 *
 * Gives    whether that is another day than before
 * Refuses  'not-found'
 */
export async function correctLastDay(input: CorrectLastDay, clock: Clock): Promise<Outcome<{ corrected: boolean }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { expiresOn, reason } = input;
  return write<{ corrected: boolean }>(
    { id: commandId, name: 'correctLastDay', shopId, body, actor },
    clock.now(),
    async (rows, stamp) => {
      const faults = heldTo(['expiresOn', PIECES.lot.expiresOn, expiresOn], ['reason', PIECES.reason, reason]);
      if (faults.length > 0) return refuse({ code: 'faults', faults });
      const container = await findContainer(rows, shopId, input);
      if (!container.ok) return container;
      const { lotId, place } = container.value;
      if (expiresOn === container.value.expiresOn) return accept({ corrected: false });
      const occurredAt = stamp.recordedAt;
      await changeContainer(rows, stamp, { lotId, place, kind: 'dated', is: expiresOn, occurredAt, reason });
      return accept({ corrected: true });
    },
  );
}
