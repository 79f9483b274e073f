import { makeFirstOwner } from '@/lib/access/first-owner';
import { keptPassword } from '@/lib/access/password-hash';
import { hashOf, newToken } from '@/lib/access/secrets';
import { LONGEST_MS, sessionCookie } from '@/lib/access/session-cookie';
import { clock } from '@/lib/clock';
import { startShop } from '@/lib/commands/start-shop';
import { newId } from '@/lib/data/new-id';
import { giveRole, inPeople, insertPerson, insertSession } from '@/lib/data/save-people';
import type { Role } from '@/shared/access/roles';

/** A password that can be taken. */
export const PASSWORD = 'eleven wet boots';

/** Make the owner of every shop there is. Gives the id. */
export async function ownerHere(name = 'Ada'): Promise<string> {
  const made = await makeFirstOwner({ name, password: PASSWORD, code: '', address: 'a test' }, clock);
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  return made.value.personId;
}

/** Make somebody with a role in each of some shops, and a password if they have one. Gives the id. */
export async function personHere(name: string, roles: Record<string, Role>, password?: string): Promise<string> {
  const [now, passwordHash] = [clock.now(), password === undefined ? null : await keptPassword(password)];
  return inPeople(async (rows) => {
    const personId = await insertPerson(rows, { name, passwordHash, madeBy: 'Ada', madeAt: now });
    if (personId === null) throw new Error(`${name} is taken`);
    for (const [shopId, role] of Object.entries(roles)) {
      await giveRole(rows, { shopId, personId, role, givenBy: 'Ada', givenAt: now });
    }
    return personId;
  });
}

/** Begin a session of somebody on a new device, last used at some moment. Gives the cookie header that its browser sends. */
export async function sessionOf(personId: string, times: { seenAt?: number; endsAt?: number } = {}): Promise<string> {
  const [session, now] = [newToken(), clock.now()];
  const device = { name: 'A phone', tokenHash: hashOf(newToken()) };
  const begun = { personId, how: 'password' as const, tokenHash: hashOf(session), device, now };
  await inPeople(async (rows) => {
    await insertSession(rows, { ...begun, endsAt: times.endsAt ?? now + LONGEST_MS });
    if (times.seenAt === undefined) return;
    await rows.session.update({ where: { tokenHash: hashOf(session) }, data: { seenAt: BigInt(times.seenAt) } });
  });
  return `${sessionCookie()}=${session}`;
}

const SETTINGS = { name: 'North Street', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' };

/** Start a shop, owned by somebody or by nobody. Gives the id. */
export async function shopHere(ownerId: string | null = null): Promise<string> {
  const made = await startShop({ commandId: newId(), settings: SETTINGS, ownerId }, clock);
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  return made.value.shopId;
}
