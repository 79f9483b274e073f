import 'server-only';
import type { Instant } from '@/shared/time/instant';
import { database } from './database';
import { toInstant } from './whole';

/** A bench that opened earlier because somebody confirmed it: until when it would have stayed closed, and since when it is open. */
export type OpeningConfirmed = {
  command: string;
  bench: string;
  /** Null where nobody knew until when. */
  wasUntil: Instant | null;
  opensAt: Instant;
  reason: string;
  actor: string;
  recordedAt: Instant;
};

/** The earlier openings of a shop that somebody confirmed after a moment, or all of them, the newest first. */
export async function openingsConfirmed(shopId: string, after: Instant | null = null): Promise<OpeningConfirmed[]> {
  const { reader } = await database();
  const rows = await reader.earlierOpening.findMany({
    where: { shopId, ...(after !== null && { recordedAt: { gt: BigInt(after) } }) },
    orderBy: [{ recordedAt: 'desc' }, { commandId: 'asc' }, { benchId: 'asc' }],
  });
  return rows.map(({ commandId, benchId, wasUntil, opensAt, reason, actor, recordedAt }) => ({
    ...{ command: commandId, bench: benchId, reason, actor },
    wasUntil: wasUntil === null ? null : toInstant(wasUntil),
    ...{ opensAt: toInstant(opensAt), recordedAt: toInstant(recordedAt) },
  }));
}
