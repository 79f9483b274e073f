import 'server-only';
import { randomBytes } from 'node:crypto';
import type { Clock } from '@/lib/clock';
import { newId } from '@/lib/data/new-id';
import { insertLink } from '@/lib/data/shared-links';
import { write } from '@/lib/data/writer';
import type { LinkKind } from '@/shared/forms/shared-link';
import { accept, type Outcome, refuse } from '@/shared/outcome';

export type MakeSharedLink = { commandId: string; shopId: string; actor?: string; kind: LinkKind };

/**
 * Make a secret link that shows one thing of a shop to whoever has it.
 *
 * Gives    its id; the token is nowhere but with the link
 * Refuses  'not-found' when there is no such shop
 */
export async function makeSharedLink(input: MakeSharedLink, clock: Clock): Promise<Outcome<{ id: string }>> {
  const { commandId, shopId, actor, ...body } = input;
  const token = randomBytes(TOKEN_BYTES).toString('base64url');
  return write({ id: commandId, name: 'makeSharedLink', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const shop = await rows.shop.findUnique({ where: { id: shopId }, select: { id: true } });
    if (!shop) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const link = { id: newId(), kind: input.kind, token };
    await insertLink(rows, stamp, link);
    return accept({ id: link.id });
  });
}

/** 192 bits: nobody finds one by trying. */
const TOKEN_BYTES = 24;
