import 'server-only';
import type { Instant } from '@/shared/time/instant';
import { ACCEPT_RECORDS, type AcceptedRecords, KeptAnswer } from './accepted-records';
import { database } from './database';
import { toInstant } from './whole';

/** Records that did not fit the chain, which somebody accepted as they stood. */
export type RecordsAccepted = AcceptedRecords & { command: string; actor: string; recordedAt: Instant };

/** Every time that somebody accepted records of a shop as they stood, the newest first. */
export async function recordsAccepted(shopId: string): Promise<RecordsAccepted[]> {
  const { reader } = await database();
  const rows = await reader.command.findMany({
    where: { shopId, name: ACCEPT_RECORDS },
    orderBy: [{ recordedAt: 'desc' }, { id: 'asc' }],
  });
  return rows.flatMap(({ id, actor, recordedAt, answer }) => {
    const said = KeptAnswer.safeParse(answer).data;
    return said ? [{ ...said, command: id, actor, recordedAt: toInstant(recordedAt) }] : [];
  });
}
