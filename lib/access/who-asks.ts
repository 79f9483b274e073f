import 'server-only';
import { cache } from 'react';
import { clock } from '@/lib/clock';
import { databaseName } from '@/lib/data/database-address';
import { hasPeople, personHere, sessionMark } from '@/lib/data/people';
import { noteSeen, usedSince } from '@/lib/data/save-people';
import { shopsHere } from '@/lib/data/shops';
import { beyondLoopback } from '@/lib/door/allowed-hosts';
import type { Role } from '@/shared/access/roles';
import type { Asker } from './asker';
import { hashOf, isToken } from './secrets';
import { cookiesHere, IDLE_MS, type ShownCookie, sessionCookie } from './session-cookie';

/** How often it is noted that a session is in use. */
const NOTED_EVERY_MS = 10 * 60 * 1_000;

/** Whether each database had an owner when this process last looked. Pages and routes are bundled apart and share it. */
const house: { ownedDatabases?: Map<string, boolean> } & typeof globalThis = globalThis;
house.ownedDatabases ??= new Map();
const owned = house.ownedDatabases;

/**
 * Who sends a request: a person with a session, a stranger, or, where nobody owns the shop yet, whoever is at this machine.
 *
 * A database that cannot be read tells nothing of sessions. Then whoever asks is a stranger, unless this process knows that
 * there was no owner a moment ago: what is read next fails in the same way, and says so.
 *
 * Takes    the cookies of the request
 */
export async function whoAsks(cookie: ShownCookie): Promise<Asker> {
  try {
    return await asker(cookie);
  } catch (error) {
    console.error('Nobody can tell who asks, because the database cannot be read:', error);
    const isUnowned = owned.get(databaseName()) === false && !beyondLoopback();
    return isUnowned ? { kind: 'unowned' } : { kind: 'stranger', why: 'unknown' };
  }
}

/** Who sends the request that a page or a view is made for. */
export const whoAsksHere = cache(async (): Promise<Asker> => whoAsks(await cookiesHere()));

async function asker(cookie: ShownCookie): Promise<Asker> {
  const token = cookie(sessionCookie()) ?? '';
  const person = isToken(token) ? await personOf(token) : null;
  if (person) return { kind: 'person', person };
  const isOwned = await hasPeople();
  owned.set(databaseName(), isOwned);
  if (isOwned) return { kind: 'stranger', why: 'no-session' };
  return beyondLoopback() ? { kind: 'stranger', why: 'no-owner' } : { kind: 'unowned' };
}

async function personOf(token: string) {
  const now = clock.now();
  const mark = await sessionMark(hashOf(token), now, usedSince(now, IDLE_MS));
  const person = mark && (await personHere(mark));
  if (!mark || !person) return null;
  owned.set(databaseName(), true);
  if (now - mark.seenAt > NOTED_EVERY_MS) noteInUse(mark.sessionId, mark.deviceId);
  const roles = person.roles.size > 0 || (await shopsHere()).length > 0 ? person.roles : OWNER_OF_NOTHING;
  return { id: mark.personId, name: person.name, roles, sessionId: mark.sessionId, deviceId: mark.deviceId };
}

/** In a database without a shop somebody has to start the first one. */
const OWNER_OF_NOTHING: ReadonlyMap<string, Role> = new Map([['', 'owner']]);

/** Nobody waits for it, and nothing fails with it: a shop on a full disk is read all the same. */
function noteInUse(sessionId: string, deviceId: string): void {
  noteSeen(sessionId, deviceId, clock.now()).catch((error) =>
    console.error('It could not be noted that a session is in use:', error),
  );
}
