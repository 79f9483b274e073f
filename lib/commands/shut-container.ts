import 'server-only';
import type { Clock } from '@/lib/clock';
import { changeContainer } from '@/lib/data/container-changes';
import { type ContainerNamed, findContainer } from '@/lib/data/find-container';
import { write } from '@/lib/data/writer';
import { wasDrawnFrom } from '@/lib/engine/ledger/decide';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';

export type ShutContainer = ContainerNamed & { commandId: string; shopId: string; actor?: string; reason: string };

/**
 * Note that a container was not opened after all, with the reason. The line that said it was stays in its history.
 *
 * Refuses  'not-opened'; 'drawn-since-opened' when something was drawn that was not taken back; 'not-found'
 */
export async function shutContainer(input: ShutContainer, clock: Clock): Promise<Outcome<{ wasOpenedOn: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'shutContainer', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(['reason', PIECES.reason, input.reason]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { openedOn, ledger, lotId, place } = container.value;
    if (openedOn === null) return refuse({ code: 'not-opened' });
    if (wasDrawnFrom(ledger.movements)) return refuse({ code: 'drawn-since-opened' });
    const { reason } = input;
    await changeContainer(rows, stamp, { lotId, place, kind: 'shut', is: null, occurredAt: stamp.recordedAt, reason });
    return accept({ wasOpenedOn: openedOn });
  });
}
