import 'server-only';
import { isRole, type Role } from '@/shared/access/roles';
import { fold } from '@/shared/text/fold';
import type { Instant } from '@/shared/time/instant';
import { database } from './database';
import { keptHere } from './kept';

/** A session that holds: whose it is, in which state that person is, and when it was last used. */
export type SessionMark = { sessionId: string; personId: string; deviceId: string; changes: string; seenAt: number };

/** A name as people are told apart by it. */
export const nameKey = (name: string): string => fold(name);

/**
 * Whether anybody can sign in here. Asked of what was committed last.
 *
 * Throws   where the database cannot be read
 */
export async function hasPeople(): Promise<boolean> {
  const { marks } = await database();
  return (await marks.value('SELECT 1 FROM "Person" LIMIT 1')) != null;
}

/**
 * The session of a secret, as of what was committed last, so that one which was ended a moment ago is gone. Null for none.
 *
 * Takes    the hash of the secret, and since when it must have been used
 */
export async function sessionMark(tokenHash: string, now: Instant, usedSince: number): Promise<SessionMark | null> {
  if (!/^[0-9a-f]{64}$/.test(tokenHash)) return null;
  const { marks } = await database();
  const parts = ['s."id"', 'p."id"', 's."deviceId"', 'CAST(p."changes" AS text)', 'CAST(s."seenAt" AS text)'];
  const found = await marks.value(`SELECT ${parts.join(" || ' ' || ")}
    FROM "Session" s JOIN "Person" p ON p."id" = s."personId" JOIN "Device" d ON d."id" = s."deviceId"
    WHERE s."tokenHash" = '${tokenHash}' AND p."disabledAt" IS NULL AND d."lostAt" IS NULL
      AND s."endsAt" > ${Number(now)} AND s."seenAt" > ${Number(usedSince)}`);
  if (typeof found !== 'string') return null;
  const [sessionId = '', personId = '', deviceId = '', changes = '', seenAt] = found.split(' ');
  return { sessionId, personId, deviceId, changes, seenAt: Number(seenAt) };
}

/** A person as sessions know them. */
export type PersonHere = { name: string; roles: ReadonlyMap<string, Role> };

const people = keptHere<PersonHere>('people', { things: 200 });

/** Name and roles of a person in some state. What is read may be newer than that, and never older. */
export async function personHere({ personId, changes }: SessionMark): Promise<PersonHere | null> {
  const { file, reader } = await database();
  const name = `${file} ${personId} ${changes}`;
  const kept = people.get(name);
  if (kept) return kept;
  // In a transaction of its own, so that it is never read inside an older one.
  const row = await reader.$transaction((rows) =>
    rows.person.findUnique({ where: { id: personId }, include: { memberships: true } }),
  );
  if (!row) return null;
  const roles = row.memberships.flatMap(({ shopId, role }): [string, Role][] => (isRole(role) ? [[shopId, role]] : []));
  const person = { name: row.name, roles: new Map(roles) };
  people.set(name, person);
  return person;
}

/** Somebody who wants to sign in, by name; null for nobody of that name, and for somebody who is disabled. */
export async function personNamed(name: string): Promise<{ id: string; passwordHash: string | null } | null> {
  const { reader } = await database();
  const select = { id: true, passwordHash: true, disabledAt: true } as const;
  const row = await reader.person.findUnique({ where: { nameKey: nameKey(name) }, select });
  return row && row.disabledAt === null ? row : null;
}

/** The device that shows some secret; null for none, and for one that is lost. */
export async function deviceOf(tokenHash: string): Promise<{ id: string; personId: string | null } | null> {
  const { reader } = await database();
  const row = await reader.device.findUnique({ where: { tokenHash } });
  return row && row.lostAt === null ? { id: row.id, personId: row.personId } : null;
}
