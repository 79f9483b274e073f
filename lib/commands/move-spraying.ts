import 'server-only';
import type { Clock } from '@/lib/clock';
import { recordChanges } from '@/lib/data/save-changes';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { write } from '@/lib/data/writer';
import { sprays } from '@/lib/engine/ahead/clear-moves';
import { plannedTurn } from '@/lib/engine/mix/planned-turn';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { showClockTime } from '@/shared/time/clock-time';
import type { Day } from '@/shared/time/day';
import { occurrences } from '@/shared/time/recurrence';
import { clockOf } from '@/shared/time/zone';

export type MoveSpraying = {
  commandId: string;
  shopId: string;
  actor?: string;
  program: string;
  /** The day on which the program itself has it. */
  on: Day;
  to: Day;
  /** Minutes since midnight of that day. */
  at: number;
};

/** Where it was before: what takes it back there is the same command once more. */
export type WasAt = { day: Day; at: number };

/**
 * Move a planned spraying to another day, another time, or both. Whose turn it is stays as the program counts it, so no
 * other spraying changes.
 *
 * Gives    where it was
 * Refuses  'not-found'; 'changed-meanwhile' when it was done or skipped; 'faults' for a day on which the program has no
 *          spraying (`on`), for one that is past, and for one on which the program sprays already (`to`)
 */
export async function moveSpraying(input: MoveSpraying, clock: Clock): Promise<Outcome<WasAt>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'moveSpraying', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(
      ['on', PIECES.change.on, input.on],
      ['to', PIECES.change.movedTo, input.to],
      ['at', PIECES.change.startTime, showClockTime(input.at)],
    );
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const file = await shopInWrite(rows, shopId);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const { program, on, to, at } = input;
    if (!file.programs.some(({ id }) => id === program)) {
      return refuse({ code: 'not-found', what: 'program', id: program });
    }
    const shop = shopOfFile(file);
    const turn = plannedTurn(shop, program, on);
    if (!turn.ok) return refuse({ code: 'faults', faults: [{ path: 'on', message: turn.message }] });
    if (turn.value.became !== null) return refuse({ code: 'changed-meanwhile', id: program });
    const index = occurrences(turn.value.program.repeat, turn.value.program.startsOn, on, on)[0]?.index ?? -1;
    if (to < clock.today(shop.zone)) return refuse(faultOf(`${to} is past. Give today or a later day.`));
    if (sprays(turn.value.program, to, index)) {
      return refuse(faultOf('This program sprays on that day already. Give another day, or move that one first.'));
    }
    const startTime = showClockTime(at);
    const change = { on, kind: 'moved' as const, application: null, movedTo: to, startTime, reason: null };
    await recordChanges(rows, stamp, [{ program, change }]);
    return accept({ day: turn.value.date, at: clockOf(shop.zone, turn.value.startsAt).minuteOfDay });
  });
}

const faultOf = (message: string) => ({ code: 'faults' as const, faults: [{ path: 'to', message }] });
