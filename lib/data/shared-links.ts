import 'server-only';
import type { LinkKind } from '@/shared/forms/shared-link';
import type { Instant } from '@/shared/time/instant';
import { database, type Rows } from './database';
import { toInstant } from './whole';
import type { Stamp } from './writer';

/** A secret link as it stands: whoever has its token sees what its kind shows, until it is revoked. */
export type SharedLink = { id: string; kind: LinkKind; token: string; actor: string; madeAt: Instant };

/** The links of a shop that work, the oldest first. */
export async function workingLinks(shopId: string): Promise<SharedLink[]> {
  const { reader } = await database();
  const links = await reader.sharedLink.findMany({ where: { shopId, revokedAt: null }, orderBy: { madeAt: 'asc' } });
  return links.map(({ id, kind, token, actor, madeAt }) => ({
    ...{ id, kind: kind as LinkKind, token, actor },
    madeAt: toInstant(madeAt),
  }));
}

/** The shop that a token shows; null when no link of that kind has it, or when it was revoked. */
export async function shopOfLink(token: string, kind: LinkKind): Promise<string | null> {
  const { reader } = await database();
  const link = await reader.sharedLink.findUnique({ where: { token } });
  return link && link.kind === kind && link.revokedAt === null ? link.shopId : null;
}

export async function insertLink(rows: Rows, stamp: Stamp, link: Pick<SharedLink, 'id' | 'kind' | 'token'>) {
  const { shopId, commandId, actor, recordedAt } = stamp;
  stamp.touched.addOutside();
  await rows.sharedLink.create({ data: { ...link, shopId, commandId, actor, madeAt: BigInt(recordedAt) } });
}

/** Make a link show nothing any more. Gives whether there is such a link; one that was revoked before stays as it was. */
export async function endLink(rows: Rows, { shopId, recordedAt, touched }: Stamp, id: string): Promise<boolean> {
  touched.addOutside();
  const link = await rows.sharedLink.findUnique({ where: { shopId_id: { shopId, id } } });
  if (link === null) return false;
  await rows.sharedLink.updateMany({
    where: { shopId, id, revokedAt: null },
    data: { revokedAt: BigInt(recordedAt) },
  });
  return true;
}
