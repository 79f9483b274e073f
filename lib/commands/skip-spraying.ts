import 'server-only';
import type { Clock } from '@/lib/clock';
import { recordChanges } from '@/lib/data/save-changes';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { write } from '@/lib/data/writer';
import { leftOfDone, plannedTurn } from '@/lib/engine/mix/planned-turn';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { showClockTime } from '@/shared/time/clock-time';
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
 * Note that a planned spraying was left out, and why. Nothing is drawn, and the turns after it stay as they are. Of one
 * that was done on some of its benches, the others were left out.
 *
 * Refuses  'not-found'; 'changed-meanwhile' when it was done or skipped already; 'faults' for a day on which the program
 *          sprays nothing
 */
export async function skipSpraying(input: SkipSpraying, clock: Clock): Promise<Outcome<{ skipped: true }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'skipSpraying', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(['reason', PIECES.change.reason, input.reason], ['on', PIECES.change.on, input.on]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const file = await shopInWrite(rows, shopId);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const { program, on, reason } = input;
    if (!file.programs.some(({ id }) => id === program)) {
      return refuse({ code: 'not-found', what: 'program', id: program });
    }
    const shop = shopOfFile(file);
    const turn = plannedTurn(shop, program, on);
    if (!turn.ok) return refuse({ code: 'faults', faults: [{ path: 'on', message: turn.message }] });
    const isPartlyDone = leftOfDone(shop, turn.value).length > 0;
    if (turn.value.became !== null && !isPartlyDone) return refuse({ code: 'changed-meanwhile', id: program });
    const before = turn.value.program.changes.find((one) => one.on === on);
    const became = isPartlyDone
      ? { kind: 'done' as const, application: before?.application ?? null }
      : { kind: 'skipped' as const, application: null };
    const at = before?.startMinute ?? null;
    const place = { movedTo: before?.movedTo ?? null, startTime: at === null ? null : showClockTime(at) };
    await recordChanges(rows, stamp, [{ program, change: { on, ...became, ...place, reason } }]);
    return accept({ skipped: true });
  });
}
