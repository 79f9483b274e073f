import 'server-only';
import type { Clock } from '@/lib/clock';
import { endLink } from '@/lib/data/shared-links';
import { write } from '@/lib/data/writer';
import { accept, type Outcome, refuse } from '@/shared/outcome';

export type RevokeSharedLink = { commandId: string; shopId: string; actor?: string; link: string };

/**
 * Revoke a secret link: from then on it shows nothing, and answers as an address that never was. One that was revoked
 * already is left as it is.
 *
 * Refuses  'not-found' when the shop has no such link
 */
export async function revokeSharedLink(input: RevokeSharedLink, clock: Clock): Promise<Outcome<{ revoked: true }>> {
  const { commandId, shopId, actor, ...body } = input;
  return write({ id: commandId, name: 'revokeSharedLink', shopId, body, actor }, clock.now(), async (rows, stamp) =>
    (await endLink(rows, stamp, input.link))
      ? accept({ revoked: true as const })
      : refuse({ code: 'not-found', what: 'link', id: input.link }),
  );
}
