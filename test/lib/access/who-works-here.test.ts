import { expect, test } from 'vitest';
import type { Asker } from '@/lib/access/asker';
import { comeIn, INVITATION_MS, invite, inviteAgain, invited, takeBackInvitation } from '@/lib/access/invitations';
import { cookiesIn } from '@/lib/access/session-cookie';
import { signIn } from '@/lib/access/sign-in';
import { whoAsks } from '@/lib/access/who-asks';
import { changeRole, letBack, loseDevice, stopPerson } from '@/lib/access/who-works-here';
import { type Clock, clock } from '@/lib/clock';
import { database } from '@/lib/data/database';
import { invitationsOf, peopleIn } from '@/lib/data/people-lists';
import { instantOf } from '@/shared/time/instant';
import { freshDatabase } from '../data/fresh-database';
import { ownerHere, PASSWORD, personHere, sessionOf, shopHere } from './people-here';

/*
 * The owner lets somebody in, changes what they may do, and ends it: each holds from the next request on.
 */

const FRESH = 'seven dry gloves hang';

async function begun() {
  await freshDatabase();
  const shopId = await shopHere();
  const ada = await ownerHere();
  return { shopId, ada, by: { actor: 'Ada', personId: ada } };
}

const asking = (cookie: string): Promise<Asker> => whoAsks(cookiesIn(cookie));

/** The same clock, so many milliseconds on. */
const later = (ms: number): Clock => ({ ...clock, now: () => instantOf(clock.now() + ms) });

async function tokenOf(made: Awaited<ReturnType<typeof invite>>): Promise<string> {
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  return made.value.token;
}

test('an invitation lets one person in, once, with the role that was given', async () => {
  const { shopId, by } = await begun();
  const code = await tokenOf(await invite({ shopId, name: 'Vera', role: 'sprayer', by }, clock));
  expect(await invited(code, clock)).toMatchObject({ name: 'Vera', role: 'sprayer', isKnown: false });
  expect(await invitationsOf(shopId, clock.now())).toMatchObject([{ name: 'Vera', madeBy: 'Ada' }]);
  const weak = await comeIn({ code, name: 'Vera', password: 'password1' }, clock);
  expect(weak).toMatchObject({ refusal: { faults: [{ path: 'password' }] } });
  expect(await comeIn({ code, name: 'ADA', password: FRESH }, clock)).toMatchObject({
    refusal: { faults: [{ path: 'name' }] },
  });
  const come = await comeIn({ code, name: 'Vera', password: FRESH }, clock);
  if (!come.ok) throw new Error(JSON.stringify(come.refusal));
  const cookie = await sessionOf(come.value.personId);
  const asker = await asking(cookie);
  expect(asker.kind === 'person' && [...asker.person.roles]).toEqual([[shopId, 'sprayer']]);
  const again = await comeIn({ code, name: 'Vito', password: FRESH }, clock);
  expect(again).toMatchObject({ refusal: { faults: [{ path: 'code' }] } });
  expect(await invited(code, clock)).toBeNull();
  // Of the secret itself nothing is kept.
  const kept = JSON.stringify(await (await database()).reader.invitation.findMany(), (_, value) =>
    typeof value === 'bigint' ? String(value) : value,
  );
  expect(kept).not.toContain(code);
});

test('two who use one invitation at once: one of them comes in', async () => {
  const { shopId, by } = await begun();
  const code = await tokenOf(await invite({ shopId, name: 'Vera', role: 'floor', by }, clock));
  const come = await Promise.all(['Vera', 'Vito'].map((name) => comeIn({ code, name, password: FRESH }, clock)));
  expect(come.filter(({ ok }) => ok)).toHaveLength(1);
  expect(await peopleIn(shopId, clock.now())).toHaveLength(2);
});

test('an invitation that is a day old, or taken back, lets nobody in', async () => {
  const { shopId, by } = await begun();
  const old = await tokenOf(await invite({ shopId, name: 'Vera', role: 'sprayer', by }, clock));
  expect(await invited(old, later(INVITATION_MS + 1))).toBeNull();
  const come = await comeIn({ code: old, name: 'Vera', password: FRESH }, later(INVITATION_MS + 1));
  expect(come).toMatchObject({ refusal: { faults: [{ path: 'code' }] } });
  const [listed] = await invitationsOf(shopId, clock.now());
  await takeBackInvitation({ shopId: 'another shop', id: listed?.id ?? '' });
  expect(await invited(old, clock)).not.toBeNull();
  await takeBackInvitation({ shopId, id: listed?.id ?? '' });
  expect(await invited(old, clock)).toBeNull();
});

test('a role changes from the next request on; the shop keeps an owner', async () => {
  const { shopId, ada, by } = await begun();
  const bo = await personHere('Bo', { [shopId]: 'sprayer' });
  const cookie = await sessionOf(bo);
  expect(await changeRole({ shopId, personId: bo, role: 'floor', by }, clock)).toMatchObject({ ok: true });
  const asker = await asking(cookie);
  expect(asker.kind === 'person' && asker.person.roles.get(shopId)).toBe('floor');
  const last = { refusal: { faults: [{ path: 'person' }] } };
  expect(await changeRole({ shopId, personId: ada, role: 'grower', by }, clock)).toMatchObject(last);
  expect(await stopPerson({ shopId, personId: ada, by }, clock)).toMatchObject(last);
  await changeRole({ shopId, personId: bo, role: 'owner', by }, clock);
  expect(await changeRole({ shopId, personId: ada, role: 'grower', by }, clock)).toMatchObject({ ok: true });
  expect(await changeRole({ shopId, personId: 'nobody', role: 'floor', by }, clock)).toMatchObject({
    refusal: { code: 'not-found' },
  });
});

test('whoever works here no more is out at once, and in again only when let back', async () => {
  const { shopId, by } = await begun();
  const bo = await personHere('Bo', { [shopId]: 'sprayer' }, PASSWORD);
  const cookie = await sessionOf(bo);
  expect(await asking(cookie)).toMatchObject({ kind: 'person' });
  expect(await stopPerson({ shopId, personId: bo, by }, clock)).toEqual({ ok: true, value: { isStopped: true } });
  expect(await asking(cookie)).toMatchObject({ kind: 'stranger' });
  const from = { cookie: cookiesIn(''), browser: '', address: 'a test' };
  const refused = { refusal: { code: 'wrong-password' } };
  expect(await signIn({ name: 'Bo', password: PASSWORD }, from, clock)).toMatchObject(refused);
  await letBack({ shopId, personId: bo, by }, clock);
  expect(await signIn({ name: 'Bo', password: PASSWORD }, from, clock)).toMatchObject({ ok: true });
  expect(await asking(cookie)).toMatchObject({ kind: 'stranger' });
});

test('a lost device is signed out alone', async () => {
  const { shopId, by } = await begun();
  const bo = await personHere('Bo', { [shopId]: 'sprayer' });
  const [one, other] = [await sessionOf(bo), await sessionOf(bo)];
  const asker = await asking(one);
  const deviceId = asker.kind === 'person' ? asker.person.deviceId : '';
  expect(await loseDevice({ shopId: 'another shop', deviceId, by }, clock)).toMatchObject({ ok: false });
  expect(await loseDevice({ shopId, deviceId, by }, clock)).toMatchObject({ ok: true });
  expect([(await asking(one)).kind, (await asking(other)).kind]).toEqual(['stranger', 'person']);
});

test('a new password by a link ends every session of before', async () => {
  const { shopId, by } = await begun();
  const bo = await personHere('Bo', { [shopId]: 'sprayer' }, PASSWORD);
  const cookie = await sessionOf(bo);
  const code = await tokenOf(await inviteAgain({ shopId, personId: bo, by }, clock));
  expect(await asking(cookie)).toMatchObject({ kind: 'person' });
  expect(await comeIn({ code, name: '', password: FRESH }, clock)).toEqual({ ok: true, value: { personId: bo } });
  expect(await asking(cookie)).toMatchObject({ kind: 'stranger' });
  const from = { cookie: cookiesIn(''), browser: '', address: 'a test' };
  expect(await signIn({ name: 'Bo', password: PASSWORD }, from, clock)).toMatchObject({ ok: false });
  expect(await signIn({ name: 'Bo', password: FRESH }, from, clock)).toMatchObject({ ok: true });
});

test('an owner has no say over the password of somebody who is in a shop of another owner', async () => {
  const { shopId, by } = await begun();
  const elsewhere = await shopHere();
  const bo = await personHere('Bo', { [shopId]: 'sprayer', [elsewhere]: 'owner' }, PASSWORD);
  expect(await inviteAgain({ shopId, personId: bo, by }, clock)).toMatchObject({ ok: false });
  expect(await stopPerson({ shopId, personId: bo, by }, clock)).toEqual({ ok: true, value: { isStopped: false } });
  const cookie = await sessionOf(bo);
  const asker = await asking(cookie);
  expect(asker.kind === 'person' && [...asker.person.roles.keys()]).toEqual([elsewhere]);
});
