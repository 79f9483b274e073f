import 'server-only';
import type { Clock } from '@/lib/clock';
import { type ContainerNamed, findContainer, setOpened } from '@/lib/data/find-container';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';

export type OpenContainer = ContainerNamed & { commandId: string; shopId: string; actor?: string; openedOn: Day };

/**
 * Note that a container was opened, which starts its opened life.
 *
 * Refuses  'already-opened'; 'before-received'; 'not-found'
 */
export async function openContainer(input: OpenContainer, clock: Clock): Promise<Outcome<{ openedOn: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'openContainer', shopId, body, actor }, clock.now(), async (rows) => {
    const container = await findContainer(rows, shopId, input);
    if (!container.ok) return container;
    const { openedOn, ledger } = container.value;
    if (openedOn !== null) return refuse({ code: 'already-opened', on: openedOn });
    if (input.openedOn < ledger.receivedOn) return refuse({ code: 'before-received', receivedOn: ledger.receivedOn });
    await setOpened(rows, shopId, container.value, input.openedOn);
    return accept({ openedOn: input.openedOn });
  });
}
