import 'server-only';
import type { Clock } from '@/lib/clock';
import { shopFromRows } from '@/lib/data/shop-rows';
import { tellUnderWay } from '@/lib/data/under-way';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { readInstant } from '@/shared/time/instant';

export type DenySpraying = { commandId: string; shopId: string; actor?: string; spraying: string; reason: string };

/**
 * Say that a spraying which was begun never came to be, or not on the benches that its record leaves out. They open at
 * once, so the writer asks for a confirmation first.
 *
 * Refuses  'not-found' when nothing is under way by that id; 'faults' without a reason; what the writer refuses
 */
export async function denySpraying(input: DenySpraying, clock: Clock): Promise<Outcome<{ spraying: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'denySpraying', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(['reason', PIECES.reason, input.reason]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const file = await shopFromRows(rows, shopId);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const its = (file.underWay ?? []).find(({ id }) => id === input.spraying);
    const startedAt = its && readInstant(its.startedAt);
    if (!its || !startedAt?.ok) return refuse({ code: 'not-found', what: 'spraying', id: input.spraying });
    await tellUnderWay(rows, stamp, {
      ...{ spraying: its.id, kind: 'never', reason: input.reason, recipe: its.recipe ?? '', benches: its.benches },
      planned: its.program !== null && its.on !== null ? { program: its.program, on: its.on } : null,
      ...{ startedAt: startedAt.value, endedAt: null, closedUntil: null, reiMinutes: null, by: its.by },
      passed: its.passed,
    });
    return accept({ spraying: its.id });
  });
}
