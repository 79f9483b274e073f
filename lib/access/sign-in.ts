import 'server-only';
import type { Clock } from '@/lib/clock';
import { deviceOf, nameKey, personNamed } from '@/lib/data/people';
import { endSessions, inPeople, insertSession } from '@/lib/data/save-people';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { isPassword } from './password-hash';
import { hashOf, isToken, newToken } from './secrets';
import { deviceCookie, LONGEST_MS, type ShownCookie, sessionCookie } from './session-cookie';
import { forgetTries, secondsToNextTry } from './tries';

/** Where a sign-in comes from: the cookies of the browser, what it calls itself, and its address. */
export type From = { cookie: ShownCookie; browser: string; address: string };

/** The secrets that a browser keeps from now on. `device` is null where it has one already. */
export type Secrets = { session: string; device: string | null };

/**
 * Sign somebody in by name and password.
 *
 * Refuses  'wrong-password', which says nothing of whether there is such a person; 'too-many-tries'
 */
export async function signIn(
  { name, password }: { name: string; password: string },
  from: From,
  clock: Clock,
): Promise<Outcome<Secrets>> {
  const [person, device] = [await personNamed(name), await knownDevice(from.cookie)];
  const isOwnDevice = person !== null && device?.personId === person.id;
  const trier = { account: nameKey(name), knownDevice: isOwnDevice ? device.id : null, address: from.address };
  const seconds = await secondsToNextTry(trier);
  if (seconds !== null) return refuse({ code: 'too-many-tries', seconds });
  const isRight = await isPassword(password, person?.passwordHash ?? null);
  if (!person || !isRight) return refuse({ code: 'wrong-password' });
  await forgetTries(trier);
  return accept(await beginSession({ personId: person.id, how: 'password' }, from, clock));
}

/** Begin a session of a person in a browser. The one that this browser had before ends, so that a secret is never reused. */
export async function beginSession(
  { personId, how }: { personId: string; how: 'password' | 'passkey' | 'pairing' },
  { cookie, browser }: From,
  clock: Clock,
): Promise<Secrets> {
  const known = await knownDevice(cookie);
  const own = known?.personId === personId ? known : null;
  const [session, fresh, before] = [newToken(), own ? null : newToken(), cookie(sessionCookie()) ?? ''];
  const now = clock.now();
  const device = own ? { id: own.id } : { name: deviceName(browser), tokenHash: hashOf(fresh ?? '') };
  await inPeople(async (rows) => {
    if (isToken(before)) await endSessions(rows, { tokenHash: hashOf(before) });
    await insertSession(rows, { personId, how, tokenHash: hashOf(session), device, now, endsAt: now + LONGEST_MS });
  });
  return { session, device: fresh };
}

/** End the session of a browser, if it has one. */
export async function signOut(cookie: ShownCookie): Promise<void> {
  const token = cookie(sessionCookie()) ?? '';
  if (isToken(token)) await inPeople((rows) => endSessions(rows, { tokenHash: hashOf(token) }));
}

async function knownDevice(cookie: ShownCookie) {
  const token = cookie(deviceCookie()) ?? '';
  return isToken(token) ? deviceOf(hashOf(token)) : null;
}

const SYSTEMS = [
  ['iPhone', /iPhone/],
  ['iPad', /iPad/],
  ['Android', /Android/],
  ['Windows', /Windows/],
  ['Mac', /Macintosh|Mac OS/],
  ['Chromebook', /CrOS/],
  ['Linux', /Linux/],
] as const;

/** What a device is called in the list: the kind that its browser says it is. */
const deviceName = (browser: string): string =>
  SYSTEMS.find(([, pattern]) => pattern.test(browser))?.[0] ?? 'Another device';
