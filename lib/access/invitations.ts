import 'server-only';
import type { Clock } from '@/lib/clock';
import type { Rows } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { invitationOf } from '@/lib/data/people-lists';
import { endSessions, giveRole, inPeople, insertPerson, noteAccess } from '@/lib/data/save-people';
import { toStored } from '@/lib/data/whole';
import { passwordFault } from '@/shared/access/password-fault';
import { isRole, type Role } from '@/shared/access/roles';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { ownsAllShopsOf } from './owns-all';
import { keptPassword } from './password-hash';
import { hashOf, isToken, newToken } from './secrets';

/** How long an invitation holds that nobody uses. */
export const INVITATION_MS = 24 * 60 * 60 * 1_000;

/** Who does something about somebody: the name that is noted, and the person behind it. */
export type ByWhom = { actor: string; personId: string | null };

/** Invite somebody into a shop. Gives the secret of the link, which is kept nowhere. */
export async function invite(
  { shopId, name, role, by }: { shopId: string; name: string; role: Role; by: ByWhom },
  clock: Clock,
): Promise<Outcome<{ token: string }>> {
  const token = newToken();
  const now = clock.now();
  await inPeople(async (rows) => {
    const invited = { kind: 'person', inShop: shopId, name, role, madeBy: by.actor };
    await insertInvitation(rows, { ...invited, personId: null, token, now });
    await noteAccess(rows, { personId: by.personId ?? '', what: 'invited', about: name, ...noted(shopId, by, now) });
  });
  return accept({ token });
}

/**
 * Invite somebody who works here to choose a new password. The old one holds until they do.
 *
 * Refuses  'not-found' for nobody of this shop; 'faults' for somebody who is in a shop that the inviter does not own
 */
export async function inviteAgain(
  { shopId, personId, by }: { shopId: string; personId: string; by: ByWhom },
  clock: Clock,
): Promise<Outcome<{ token: string }>> {
  const token = newToken();
  const now = clock.now();
  return inPeople(async (rows) => {
    const member = await rows.membership.findUnique({
      where: { shopId_personId: { shopId, personId } },
      include: { person: true },
    });
    if (!member) return refuse({ code: 'not-found', what: 'person', id: personId });
    if (!(await ownsAllShopsOf(rows, personId, by))) return refuse({ code: 'faults', faults: [ELSEWHERE] });
    const { name } = member.person;
    const again = { kind: 'password', inShop: shopId, name, role: null, madeBy: by.actor, personId };
    await insertInvitation(rows, { ...again, token, now });
    await noteAccess(rows, { personId, what: 'password asked for', ...noted(shopId, by, now) });
    return accept({ token });
  });
}

const ELSEWHERE = {
  path: 'person',
  message: 'This person also works in a shop of another owner. Each changes the own password after signing in.',
};

const noted = (inShop: string, { actor }: ByWhom, recordedAt: ReturnType<Clock['now']>) => ({
  ...{ inShop, actor, recordedAt },
});

type NewInvitation = {
  kind: string;
  inShop: string;
  name: string;
  role: Role | null;
  personId: string | null;
  madeBy: string;
  token: string;
  now: ReturnType<Clock['now']>;
};

async function insertInvitation(rows: Rows, { token, now, ...invited }: NewInvitation): Promise<void> {
  await rows.invitation.deleteMany({ where: { endsAt: { lt: toStored(now) } } });
  const times = { madeAt: toStored(now), endsAt: toStored(now + INVITATION_MS) };
  await rows.invitation.create({ data: { id: newId(), tokenHash: hashOf(token), ...invited, ...times } });
}

export type Invited = { name: string; shop: string; role: Role | null; isKnown: boolean };

/** What an invitation says to whoever has its link; null for one that does not hold. */
export async function invited(code: string, clock: Clock): Promise<Invited | null> {
  const found = isToken(code) ? await invitationOf(hashOf(code), clock.now()) : null;
  if (!found) return null;
  const { name, shop, role, personId } = found;
  return { name, shop, role: role !== null && isRole(role) ? role : null, isKnown: personId !== null };
}

/** Take an invitation back. One that is gone is as good as taken back. */
export const takeBackInvitation = ({ shopId, id }: { shopId: string; id: string }): Promise<unknown> =>
  inPeople((rows) => rows.invitation.deleteMany({ where: { id, inShop: shopId } }));

/**
 * Come in by an invitation: as somebody new, or with a new password, which ends every session there was.
 *
 * Gives    the id of the person
 * Refuses  'faults' for a code that does not hold any more, a name that is taken and a password that cannot be
 */
export async function comeIn(
  { code, name, password }: { code: string; name: string; password: string },
  clock: Clock,
): Promise<Outcome<{ personId: string }>> {
  const fault = passwordFault(password, [name]);
  if (fault !== null) return refuse({ code: 'faults', faults: [{ path: 'password', message: fault }] });
  const now = clock.now();
  // Asked before the password costs any work.
  if (!isToken(code) || (await invitationOf(hashOf(code), now)) === null)
    return refuse({ code: 'faults', faults: [GONE] });
  const passwordHash = await keptPassword(password);
  return inPeople(async (rows) => {
    const invited = await rows.invitation.findUnique({ where: { tokenHash: hashOf(code) } });
    if (!invited?.inShop || invited.usedAt !== null || invited.endsAt <= toStored(now)) {
      return refuse({ code: 'faults', faults: [GONE] });
    }
    const { id, inShop, role, madeBy } = invited;
    const isNew = invited.personId === null;
    if (isNew && name === '') return refuse({ code: 'faults', faults: [NAMELESS] });
    const personId = invited.personId ?? (await insertPerson(rows, { name, passwordHash, madeBy, madeAt: now }));
    if (personId === null) return refuse({ code: 'faults', faults: [TAKEN] });
    if (isNew && role !== null && isRole(role)) {
      await giveRole(rows, { shopId: inShop, personId, role, givenBy: madeBy, givenAt: now });
    }
    if (!isNew) {
      await rows.person.update({ where: { id: personId }, data: { passwordHash, changes: { increment: 1 } } });
      await endSessions(rows, { personId });
    }
    await rows.invitation.update({ where: { id }, data: { usedAt: toStored(now) } });
    const what = isNew ? 'came in' : 'new password';
    await noteAccess(rows, { personId, what, inShop, actor: name || (invited.name ?? ''), recordedAt: now });
    return accept({ personId });
  });
}

const GONE = {
  path: 'code',
  message:
    'This invitation does not hold any more: it was used, taken back, or is older than a day. Ask for a new one.',
};
const TAKEN = { path: 'name', message: 'Somebody here has this name. Add a letter of your family name.' };
const NAMELESS = { path: 'name', message: 'Write your name, so that entries say whose they are.' };
