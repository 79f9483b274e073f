import 'server-only';
import type { Role } from '@/shared/access/roles';
import { type Instant, instantOf } from '@/shared/time/instant';
import type { Rows } from './database';
import { newId } from './new-id';
import { alone } from './one-process';
import { nameKey } from './people';
import { toStored } from './whole';
import { inTurn, type Stamp } from './writer';

/** Write about people and their sessions, after every command that came before. It awaits nothing but the rows. */
export const inPeople = <T>(work: (rows: Rows) => Promise<T>): Promise<T> =>
  inTurn(({ writer }) =>
    writer.$transaction(async (rows) => {
      await alone(rows, 'people');
      return work(rows);
    }),
  );

/** A person as they are written. */
export type NewPerson = { name: string; passwordHash: string | null; madeBy: string; madeAt: Instant };

/** Gives the id of the new person; null when somebody has that name. */
export async function insertPerson(rows: Rows, { madeAt, ...person }: NewPerson): Promise<string | null> {
  const key = nameKey(person.name);
  if (await rows.person.findUnique({ where: { nameKey: key }, select: { id: true } })) return null;
  const id = newId();
  await rows.person.create({ data: { id, ...person, nameKey: key, madeAt: toStored(madeAt) } });
  return id;
}

/** Give a person a role in a shop, in the place of the one they had. */
export async function giveRole(
  rows: Rows,
  given: { shopId: string; personId: string; role: Role; givenBy: string; givenAt: Instant },
): Promise<void> {
  const { shopId, personId, role, givenBy, givenAt } = given;
  const data = { role, givenBy, givenAt: toStored(givenAt) };
  await rows.membership.upsert({
    where: { shopId_personId: { shopId, personId } },
    create: { shopId, personId, ...data },
    update: data,
  });
  await rows.person.update({ where: { id: personId }, data: { changes: { increment: 1 } } });
}

/** Make whoever starts a shop its owner, in the command that makes it. Null: nobody signs in here. */
export async function ownedBy(
  rows: Rows,
  { shopId, actor, recordedAt }: Stamp,
  personId: string | null,
): Promise<void> {
  if (personId !== null) await giveRole(rows, { shopId, personId, role: 'owner', givenBy: actor, givenAt: recordedAt });
}

/** Note for good who did what about whom. */
export async function noteAccess(
  rows: Rows,
  note: { personId: string; what: string; actor: string; recordedAt: Instant; inShop?: string; about?: string },
): Promise<void> {
  await rows.accessNote.create({ data: { id: newId(), ...note, recordedAt: toStored(note.recordedAt) } });
}

/** A session that begins, and the device it is on. A secret is given by its hash. */
export type NewSession = {
  personId: string;
  how: 'password' | 'passkey' | 'pairing' | 'pin';
  tokenHash: string;
  /** The device where it is known; else how it is called and the secret that it gets. */
  device: { id: string } | { name: string; tokenHash: string };
  now: Instant;
  endsAt: number;
};

/** Begin a session, and clear away those whose time is over. */
export async function insertSession(rows: Rows, { device, now, endsAt, ...session }: NewSession): Promise<void> {
  const at = toStored(now);
  await rows.session.deleteMany({ where: { endsAt: { lt: at } } });
  const deviceId = 'id' in device ? device.id : newId();
  if ('id' in device) await rows.device.update({ where: { id: deviceId }, data: { seenAt: at } });
  else
    await rows.device.create({ data: { id: deviceId, personId: session.personId, ...device, madeAt: at, seenAt: at } });
  await rows.session.create({
    data: { id: newId(), ...session, deviceId, madeAt: at, seenAt: at, endsAt: toStored(endsAt) },
  });
}

/** End one session, or all of a person or a device. */
export async function endSessions(
  rows: Rows,
  which: { id: string } | { tokenHash: string } | { personId: string } | { deviceId: string },
): Promise<void> {
  await rows.session.deleteMany({ where: which });
}

/** End every session, and every link that lets somebody in: those in a backup may have been ended since. */
export async function forgetWhoIsIn(rows: Rows): Promise<void> {
  await rows.session.deleteMany();
  await rows.invitation.deleteMany();
}

/** Note that a session is in use. */
export const noteSeen = (sessionId: string, deviceId: string, now: Instant): Promise<unknown> =>
  inPeople(async (rows) => {
    const seen = { data: { seenAt: toStored(now) } };
    await rows.session.updateMany({ where: { id: sessionId }, ...seen });
    await rows.device.updateMany({ where: { id: deviceId }, ...seen });
  });

/** The shops there are, the oldest first, inside a write. */
export const shopIdsIn = async (rows: Rows): Promise<string[]> =>
  (await rows.shop.findMany({ select: { id: true }, orderBy: { createdOn: 'asc' } })).map(({ id }) => id);

/** Since when a session must have been used, to hold at some moment. */
export const usedSince = (now: Instant, idleMs: number): Instant => instantOf(Math.max(0, now - idleMs));
