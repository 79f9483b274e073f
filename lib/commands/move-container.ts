import 'server-only';
import type { Clock } from '@/lib/clock';
import { changeContainer } from '@/lib/data/container-changes';
import { type ContainerNamed, findContainer } from '@/lib/data/find-container';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';

export type MoveContainer = ContainerNamed & {
  commandId: string;
  shopId: string;
  actor?: string;
  /** Where it stands from now on; null when nobody knows. */
  keptIn: string | null;
};

/**
 * Note that a container stands somewhere else.
 *
 * Gives    whether that is another place than before
 * Refuses  'not-found'
 */
export async function moveContainer(input: MoveContainer, clock: Clock): Promise<Outcome<{ moved: boolean }>> {
  const { commandId, shopId, actor, ...body } = input;
  const { keptIn } = input;
  return write<{ moved: boolean }>(
    { id: commandId, name: 'moveContainer', shopId, body, actor },
    clock.now(),
    async (rows, stamp) => {
      const faults = heldTo(['keptIn', PIECES.lot.keptIn, keptIn]);
      if (faults.length > 0) return refuse({ code: 'faults', faults });
      const container = await findContainer(rows, shopId, input);
      if (!container.ok) return container;
      const { lotId, place } = container.value;
      if (keptIn === container.value.keptIn) return accept({ moved: false });
      await changeContainer(rows, stamp, { lotId, place, kind: 'moved', is: keptIn, occurredAt: stamp.recordedAt });
      return accept({ moved: true });
    },
  );
}
