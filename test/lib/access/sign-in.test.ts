import { beforeEach, expect, test, vi } from 'vitest';
import { makeFirstOwner } from '@/lib/access/first-owner';
import { isOwnerCode, tellOwnerCode } from '@/lib/access/owner-code';
import { hashOf } from '@/lib/access/secrets';
import { cookiesIn, deviceCookie, IDLE_MS, sessionCookie } from '@/lib/access/session-cookie';
import { type From, signIn, signOut } from '@/lib/access/sign-in';
import { whoAsks } from '@/lib/access/who-asks';
import { clock } from '@/lib/clock';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { giveRole, inPeople } from '@/lib/data/save-people';
import { figure } from '@/test/promises/figure';
import { freshDatabase } from '../data/fresh-database';
import { ownerHere, PASSWORD, personHere, sessionOf, shopHere } from './people-here';

let tested = 0;

/** A browser of its own, at an address of its own. */
function browser(cookie = ''): From {
  tested += 1;
  return { cookie: cookiesIn(cookie), browser: 'Mozilla/5.0 (iPhone; CPU iPhone OS)', address: `10.1.0.${tested}` };
}

const asking = (cookie: string) => whoAsks(cookiesIn(cookie));

beforeEach(() => {
  vi.unstubAllEnvs();
});

test('until somebody owns the shop, whoever is at this machine may do everything; then nobody without a session', async () => {
  await freshDatabase();
  const shop = await shopHere();
  expect(await asking('')).toEqual({ kind: 'unowned' });
  const owner = await ownerHere();
  expect(await asking('')).toEqual({ kind: 'stranger', why: 'no-session' });
  const cookie = await sessionOf(owner);
  expect(await asking(cookie)).toMatchObject({
    kind: 'person',
    person: { name: 'Ada', roles: new Map([[shop, 'owner']]) },
  });
});

test('reached over a network, a shop that nobody owns is closed, and takes the code of the terminal', async () => {
  await freshDatabase();
  await shopHere();
  vi.stubEnv('HOST', '0.0.0.0');
  const said = vi.spyOn(console, 'log').mockImplementation(() => {});
  await tellOwnerCode();
  const code = /code: (\S+)/.exec(String(said.mock.calls[0]))?.[1] ?? '';
  said.mockRestore();
  expect(await asking('')).toEqual({ kind: 'stranger', why: 'no-owner' });
  const owner = { name: 'Ada', password: PASSWORD, address: '10.9.9.9' };
  expect(await makeFirstOwner({ ...owner, code: 'aaaaa-aaaaa' }, clock)).toMatchObject({
    refusal: { code: 'faults', faults: [{ path: 'code' }] },
  });
  expect(isOwnerCode(code.toUpperCase().replace('-', ' '))).toBe(true);
  expect(await makeFirstOwner({ ...owner, code }, clock)).toMatchObject({ ok: true });
  expect(await makeFirstOwner({ ...owner, name: 'Bo', code }, clock)).toMatchObject({
    refusal: { code: 'owner-there' },
  });
});

test('two who make the first owner at once: one of them is', async () => {
  await freshDatabase();
  await shopHere();
  const owner = (name: string) => makeFirstOwner({ name, password: PASSWORD, code: '', address: 'a test' }, clock);
  const made = await Promise.all([owner('Ada'), owner('Bo'), owner('Cy')]);
  expect(made.filter(({ ok }) => ok)).toHaveLength(1);
});

test('a name and its password begin a session; anything else is refused in one sentence', async () => {
  await freshDatabase();
  const shop = await shopHere();
  await ownerHere();
  const signed = await signIn({ name: ' ada ', password: PASSWORD }, browser(), clock);
  if (!signed.ok) throw new Error(JSON.stringify(signed.refusal));
  const { session, device } = signed.value;
  expect(await asking(`${sessionCookie()}=${session}`)).toMatchObject({ person: { name: 'Ada' } });
  await personHere('Bo', { [shop]: 'sprayer' });
  const refused = { ok: false, refusal: { code: 'wrong-password' } };
  expect(await signIn({ name: 'Ada', password: `${PASSWORD} ` }, browser(), clock)).toEqual(refused);
  expect(await signIn({ name: 'Nobody', password: PASSWORD }, browser(), clock)).toEqual(refused);
  expect(await signIn({ name: 'Bo', password: '' }, browser(), clock)).toEqual(refused);
  // What is kept says neither the password nor a secret.
  const { reader } = await database();
  const kept = JSON.stringify(
    [await reader.person.findMany(), await reader.session.findMany(), await reader.device.findMany()],
    (_, value) => (typeof value === 'bigint' ? String(value) : value),
  );
  for (const secret of [PASSWORD, session, device ?? '']) expect(kept).not.toContain(secret);
  expect(kept).toContain(hashOf(session));
});

test('a secret is new with each sign-in, and the one before is dead in that browser', async () => {
  await freshDatabase();
  await shopHere();
  await ownerHere();
  const first = await signIn({ name: 'Ada', password: PASSWORD }, browser(), clock);
  if (!first.ok) throw new Error(JSON.stringify(first.refusal));
  const cookie = `${sessionCookie()}=${first.value.session}; ${deviceCookie()}=${first.value.device}`;
  const second = await signIn({ name: 'Ada', password: PASSWORD }, browser(cookie), clock);
  if (!second.ok) throw new Error(JSON.stringify(second.refusal));
  expect(second.value.session).not.toBe(first.value.session);
  expect(second.value.device).toBeNull();
  expect(await asking(cookie)).toMatchObject({ kind: 'stranger' });
  expect(await (await database()).reader.device.count()).toBe(1);
  const now = `${sessionCookie()}=${second.value.session}`;
  await signOut(cookiesIn(now));
  expect(await asking(now)).toMatchObject({ kind: 'stranger', why: 'no-session' });
});

test('a session that a stranger made up, or that nobody used for long, or that is over, is none', async () => {
  await freshDatabase();
  await shopHere();
  const owner = await ownerHere();
  const now = clock.now();
  expect(await asking(await sessionOf(owner, { seenAt: now - IDLE_MS + 60_000 }))).toMatchObject({ kind: 'person' });
  expect(await asking(await sessionOf(owner, { seenAt: now - IDLE_MS - 1 }))).toMatchObject({ kind: 'stranger' });
  expect(await asking(await sessionOf(owner, { endsAt: now + 60_000 }))).toMatchObject({ kind: 'person' });
  expect(await asking(await sessionOf(owner, { endsAt: now - 1 }))).toMatchObject({ kind: 'stranger' });
  const made = [`${'a'.repeat(43)}`, "' OR 1=1 --", '', 'x'.repeat(5_000)];
  for (const token of made) expect(await asking(`${sessionCookie()}=${token}`)).toMatchObject({ kind: 'stranger' });
});

test('somebody who is disabled, and a device that is lost, are out at once', async () => {
  await freshDatabase();
  const shop = await shopHere();
  await ownerHere();
  const bo = await personHere('Bo', { [shop]: 'sprayer' });
  const cookie = await sessionOf(bo);
  expect(await asking(cookie)).toMatchObject({ kind: 'person' });
  await inPeople((rows) => rows.device.updateMany({ where: { personId: bo }, data: { lostAt: 1n } }));
  expect(await asking(cookie)).toMatchObject({ kind: 'stranger' });
  const other = await sessionOf(bo);
  await inPeople((rows) => rows.person.update({ where: { id: bo }, data: { disabledAt: 1n } }));
  expect(await asking(other)).toMatchObject({ kind: 'stranger' });
  figure(27, 'signed out, signed in anew, disabled, lost, idle, over: dead with the next request');
});

test('another role counts with the next request, and whoever starts a shop owns it', async () => {
  await freshDatabase();
  const shop = await shopHere();
  const owner = await ownerHere();
  const [bo, own] = [await personHere('Bo', { [shop]: 'floor' }), await sessionOf(owner)];
  const cookie = await sessionOf(bo);
  expect(await asking(cookie)).toMatchObject({ person: { roles: new Map([[shop, 'floor']]) } });
  const given = { shopId: shop, personId: bo, role: 'grower' as const, givenBy: 'Ada', givenAt: clock.now() };
  await inPeople((rows) => giveRole(rows, given));
  expect(await asking(cookie)).toMatchObject({ person: { roles: new Map([[shop, 'grower']]) } });
  const second = await shopHere(owner);
  expect(await asking(own)).toMatchObject({
    person: {
      roles: new Map([
        [shop, 'owner'],
        [second, 'owner'],
      ]),
    },
  });
});

test('a password that is too short, among the first that are tried, or little more than a name is refused', async () => {
  await freshDatabase();
  const owner = (password: string) =>
    makeFirstOwner({ name: 'Adalbert', password, code: '', address: 'a test' }, clock);
  for (const password of [
    'short',
    'Password1',
    '12345678',
    'qwertyui',
    'abcabcabc',
    'aaaaaaaaa',
    'adalbert12',
    'Adalbert 123',
  ]) {
    expect({ password, said: await owner(password) }).toMatchObject({
      said: { ok: false, refusal: { code: 'faults', faults: [{ path: 'password' }] } },
    });
  }
  expect(await owner('ünïcode wörds 🌱')).toMatchObject({ ok: true });
});
