import 'server-only';
import type { Clock } from '@/lib/clock';
import { recordChanges } from '@/lib/data/save-changes';
import { shopFromRows } from '@/lib/data/shop-rows';
import { write } from '@/lib/data/writer';
import { plannedTurn } from '@/lib/engine/mix/planned-turn';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';

export type SkipSpraying = {
  commandId: string;
  shopId: string;
  actor?: string;
  program: string;
  /** The day on which the program itself has it. */
  on: Day;
  reason: string;
};

/**
 * Note that a planned spraying was left out, and why. Nothing is drawn, and the turns after it stay as they are.
 *
 * Refuses  'not-found'; 'changed-meanwhile' when it was done or skipped already; 'faults' for a day on which the program
 *          sprays nothing
 */
export async function skipSpraying(input: SkipSpraying, clock: Clock): Promise<Outcome<{ skipped: true }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'skipSpraying', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const file = await shopFromRows(rows, shopId);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const { program, on, reason } = input;
    if (!file.programs.some(({ id }) => id === program)) {
      return refuse({ code: 'not-found', what: 'program', id: program });
    }
    const turn = plannedTurn(shopOfFile(file), program, on);
    if (!turn.ok) return refuse({ code: 'faults', faults: [{ path: 'on', message: turn.message }] });
    if (turn.value.became !== null) return refuse({ code: 'changed-meanwhile', id: program });
    const change = { on, kind: 'skipped' as const, application: null, movedTo: null, startTime: null, reason };
    await recordChanges(rows, stamp, [{ program, change }]);
    return accept({ skipped: true });
  });
}
