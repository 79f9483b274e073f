import 'server-only';
import type { Clock } from '@/lib/clock';
import { versionsIn } from '@/lib/data/record-versions';
import { sealWritten } from '@/lib/data/seal-records';
import { small, toStored } from '@/lib/data/whole';
import { write } from '@/lib/data/writer';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';

export type ConfirmAmendment = {
  commandId: string;
  shopId: string;
  actor?: string;
  application: string;
  /** The version that is confirmed, which must be the newest. */
  version: number;
  /** What makes it certain. It stays beside the record. */
  reason: string;
};

/**
 * Say a second time that an amendment is right which opens a bench earlier, or withdraws a record. From then on it counts
 * as it says. Who, when and why stays beside it.
 *
 * Refuses  'not-found'; 'changed-meanwhile' when it is not the newest version; 'faults' for no reason, and for a version
 *          that needs no confirmation or has one
 */
export async function confirmAmendment(input: ConfirmAmendment, clock: Clock): Promise<Outcome<{ confirmed: number }>> {
  const { commandId, shopId, actor, ...body } = input;
  const command = { id: commandId, name: 'confirmAmendment', shopId, body, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    const { application, version: number } = input;
    const reason = input.reason.trim();
    if (reason === '') return refused('reason', NO_REASON);
    const faults = heldTo(['reason', PIECES.reason, reason]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const newest = (await versionsIn(rows, shopId, application)).at(-1);
    if (!newest) return refuse({ code: 'not-found', what: 'application', id: application });
    if (newest.number !== number) return refuse({ code: 'changed-meanwhile', id: application });
    if (!newest.isPending) return refused('version', NOTHING_OPEN);
    stamp.touched.add('applications', [application]);
    const keys = { shopId, applicationId: application, number: small(number) };
    const recordedAt = toStored(stamp.recordedAt);
    await rows.amendmentConfirmation.create({
      data: { ...keys, reason, actor: stamp.actor, commandId, recordedAt },
    });
    await sealWritten(rows, stamp, [{ kind: 'confirmation', application, version: number }]);
    return accept({ confirmed: number });
  });
}

const refused = (path: string, message: string): Outcome<never> => {
  const faults: Fault[] = [{ path, message }];
  return refuse({ code: 'faults', faults });
};

const NO_REASON = 'Say what makes it certain, for example "asked Ada, the other bench was sprayed".';
const NOTHING_OPEN = 'This version counts already: it needs no confirmation, or has one.';
