import 'server-only';
import { recordsAccepted } from '../data/records-accepted';
import type { Shop } from '../engine/shop';
import { inAnyYear } from './record-facts';

/** Records that did not fit their chain and were accepted as they stood, in words. */
export type AcceptedSeen = { key: string; who: string; when: string; why: string; records: string[] };

/** Every break of the chain that somebody accepted, the newest first. The log names them for good. */
export async function acceptedSeen(shopId: string, { zone }: Shop): Promise<AcceptedSeen[]> {
  return (await recordsAccepted(shopId)).map(({ command, actor, recordedAt, reason, records }) => ({
    ...{ key: command, who: actor, when: inAnyYear(recordedAt, zone), why: reason },
    records: records.map(({ message }) => message),
  }));
}
