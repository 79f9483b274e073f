import 'server-only';
import type { Clock } from '@/lib/clock';
import { shownRows } from '@/lib/data/accept-rows';
import { checkRecords } from '@/lib/data/check-records';
import { database } from '@/lib/data/database';
import { opensByDoubt } from '@/lib/data/opening-guard';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';

export type AcceptRows = {
  commandId: string;
  shopId: string;
  actor?: string;
  /** The rows that the person had before their eyes, as `shownRows` names them. */
  seen: string;
  /** How it is known that what they hold is true. It stays on record. */
  reason: string;
};

/** The rows that were accepted, each with what it holds, and why. */
export type Accepted = {
  rows: { table: string; row: string; wrong: string; held: Record<string, string> | null }[];
  reason: string;
};

/**
 * Accept rows as they stand that do not fit their seals, because what they hold is true: they were put back by hand, or by
 * another program. They get new seals. The benches of the shop count again by what the rows say, so whoever accepts them
 * is shown what opens, and has to confirm it.
 *
 * Refuses  'faults' for no reason; 'changed-meanwhile' when the rows are not those that were seen; 'not-found' when every
 *          row fits its seal; 'opens-earlier'
 */
export async function acceptRows(input: AcceptRows, clock: Clock): Promise<Outcome<Accepted>> {
  const { commandId, shopId, actor, ...body } = input;
  const { accepting } = await database();
  const command = { id: commandId, name: 'acceptRows', shopId, body, actor };
  const outcome = await write<Accepted>(command, clock.now(), async (rows, stamp) => {
    const reason = input.reason.trim();
    const faults = heldTo(['reason', PIECES.reason, reason]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const found = await accepting.inWrite(rows, shopId);
    if (found.length === 0) return refuse({ code: 'not-found', what: 'damaged row', id: shopId });
    if (shownRows(found) !== input.seen) return refuse({ code: 'changed-meanwhile', id: 'rows' });
    stamp.touched.addOutside();
    const early = await opensByDoubt(rows, stamp);
    if (early) return refuse(early);
    await accepting.seal(rows, found);
    return accept({ reason, rows: found.map(({ table, row, wrong, held }) => ({ table, row, wrong, held })) });
  });
  if (outcome.ok) await checkRecords();
  return outcome;
}
