import 'server-only';
import { isRole, type Role } from '@/shared/access/roles';
import type { Instant } from '@/shared/time/instant';
import { database } from './database';
import { toStored } from './whole';

/** Somebody with a role in a shop, and the devices on which they have signed in. */
export type PersonListed = {
  id: string;
  name: string;
  role: Role;
  isStopped: boolean;
  devices: { id: string; name: string; seenAt: number; isLost: boolean; isSignedIn: boolean }[];
};

/** Who has a role in a shop, by name. */
export async function peopleIn(shopId: string, now: Instant): Promise<PersonListed[]> {
  const { reader } = await database();
  const sessions = { where: { endsAt: { gt: toStored(now) } }, select: { id: true } };
  const rows = await reader.membership.findMany({
    where: { shopId },
    include: { person: { include: { devices: { include: { sessions }, orderBy: { seenAt: 'desc' } } } } },
  });
  return rows
    .flatMap(({ role, person }): PersonListed[] =>
      isRole(role)
        ? [
            {
              ...{ id: person.id, name: person.name, role },
              isStopped: person.disabledAt !== null,
              devices: person.devices.map(({ id, name, seenAt, lostAt, sessions }) => ({
                ...{ id, name, seenAt: Number(seenAt), isLost: lostAt !== null, isSignedIn: sessions.length > 0 },
              })),
            },
          ]
        : [],
    )
    .sort((a, b) => a.name.localeCompare(b.name));
}

/** An invitation that nobody has used yet. */
export type InvitationListed = { id: string; name: string; role: string | null; endsAt: number; madeBy: string };

/** The invitations of a shop that still hold, the newest first. */
export async function invitationsOf(shopId: string, now: Instant): Promise<InvitationListed[]> {
  const { reader } = await database();
  const rows = await reader.invitation.findMany({
    where: { inShop: shopId, usedAt: null, endsAt: { gt: toStored(now) } },
    orderBy: { madeAt: 'desc' },
  });
  return rows.map(({ id, name, role, endsAt, madeBy }) => ({
    ...{ id, name: name ?? '', role, endsAt: Number(endsAt), madeBy },
  }));
}

/** An invitation by the hash of its secret, as long as it holds. */
export async function invitationOf(tokenHash: string, now: Instant) {
  const { reader } = await database();
  const row = await reader.invitation.findUnique({ where: { tokenHash } });
  if (!row || row.usedAt !== null || row.endsAt <= toStored(now) || row.inShop === null) return null;
  const shop = await reader.shop.findUnique({ where: { id: row.inShop }, select: { name: true } });
  return shop && { name: row.name ?? '', role: row.role, personId: row.personId, shop: shop.name };
}
