import 'server-only';
import type { Clock } from '@/lib/clock';
import { ACCEPT_RECORDS, type AcceptedRecords } from '@/lib/data/accepted-records';
import { checkRecords } from '@/lib/data/check-records';
import { opensByDoubt } from '@/lib/data/opening-guard';
import { recordsOfShop } from '@/lib/data/records-of-file';
import { askThrough } from '@/lib/data/seal-records';
import { write } from '@/lib/data/writer';
import { faultSentence, seenFaults } from '@/lib/engine/record/chain';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { sha256 } from '../data/sha256';

export type AcceptRecords = {
  commandId: string;
  shopId: string;
  actor?: string;
  /** The faults that the person had before their eyes, as `seenFaults` names them. */
  seen: string;
  /** How it is known that the records are true as they stand. It stays on record. */
  reason: string;
};

/**
 * Accept records as they stand that do not fit the chain which seals them, because what they say is true. The chain is
 * left as it is, so the break stays in it: the log names it for good, with who accepted it and why. Any other change of
 * the same records is a new fault. The benches count again by the records, so what opens is shown and confirmed first.
 *
 * Refuses  'faults' for no reason; 'changed-meanwhile' when the faults are not those that were seen; 'not-found' when the
 *          chain holds; 'opens-earlier'
 */
export async function acceptRecords(input: AcceptRecords, clock: Clock): Promise<Outcome<AcceptedRecords>> {
  const { commandId, shopId, actor, ...body } = input;
  const command = { id: commandId, name: ACCEPT_RECORDS, shopId, body, actor };
  const outcome = await write<AcceptedRecords>(command, clock.now(), async (rows, stamp) => {
    const reason = input.reason.trim();
    const wrong = heldTo(['reason', PIECES.reason, reason]);
    if (wrong.length > 0) return refuse({ code: 'faults', faults: wrong });
    const { faults } = await recordsOfShop(askThrough(rows), shopId);
    if (faults.length === 0) return refuse({ code: 'not-found', what: 'damaged record', id: shopId });
    if (seenFaults(faults, sha256) !== input.seen) return refuse({ code: 'changed-meanwhile', id: 'records' });
    stamp.touched.addOutside();
    const early = await opensByDoubt(rows, stamp);
    if (early) return refuse(early);
    const records = faults.map((fault) => ({
      ...{ mark: fault.mark, application: fault.application, message: faultSentence(fault) },
    }));
    return accept({ reason, records });
  });
  if (outcome.ok) await checkRecords();
  return outcome;
}
