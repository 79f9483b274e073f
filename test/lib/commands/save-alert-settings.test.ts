import { expect, test } from 'vitest';
import { type SaveAlertSettings, saveAlertSettings } from '@/lib/commands/save-alert-settings';
import { alertSettingsOf } from '@/lib/data/alert-settings';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { CLOCK } from '../data/fresh-database';
import { smallShop } from './small-shop';

type Mail = NonNullable<SaveAlertSettings['settings']['mail']>;

const mail = (rest: Partial<Mail> = {}): Mail => ({
  ...{ host: 'mail.example', port: 587, guard: 'starttls', user: 'shop', password: { new: 'pass word' } },
  ...{ from: 'shop@bench.example', to: ['ana@bench.example'], ownNetwork: false },
  ...rest,
});

async function save(shopId: string, sent: Mail | null, commandId = newId()) {
  const expecting = (await alertSettingsOf(shopId))?.savedAt ?? null;
  const settings = { mail: sent, webhook: null, quiet: null };
  return saveAlertSettings({ commandId, shopId, settings, expecting }, CLOCK);
}

const passwordOf = async (shopId: string) => (await alertSettingsOf(shopId))?.settings.mail?.password;

test('a password is kept without being sent again', async () => {
  const shopId = await smallShop();
  expect(await save(shopId, mail())).toMatchObject({ ok: true });
  expect(await save(shopId, mail({ password: { keep: true }, to: ['ben@bench.example'] }))).toMatchObject({ ok: true });
  expect(await passwordOf(shopId)).toBe('pass word');
  expect(await save(shopId, mail({ user: null, password: null }))).toMatchObject({ ok: true });
  expect(await passwordOf(shopId)).toBeNull();
});

test.each([
  ['another server', { host: 'other.example' }],
  ['another port', { port: 25 }],
  ['another user', { user: 'eve' }],
  ['no encryption', { guard: 'none' as const, ownNetwork: true }],
])('a password is not kept for %s: it must be typed again', async (_, rest) => {
  const shopId = await smallShop();
  await save(shopId, mail());
  const outcome = await save(shopId, mail({ ...rest, password: { keep: true } }));
  expect(outcome).toMatchObject({ ok: false, refusal: { code: 'faults', faults: [{ path: 'password' }] } });
  expect((await alertSettingsOf(shopId))?.settings.mail).toMatchObject({ host: 'mail.example', password: 'pass word' });
});

test('where there is none, none is kept', async () => {
  const shopId = await smallShop();
  expect(await save(shopId, mail({ password: { keep: true } }))).toMatchObject({ ok: false });
  expect(await alertSettingsOf(shopId)).toBeNull();
});

test('no password stands in the shop file, in an answer, or in what is kept of a command, not even as a fingerprint', async () => {
  const shopId = await smallShop();
  await save(shopId, mail());
  const { reader } = await database();
  const [command] = await reader.command.findMany({ where: { name: 'saveAlertSettings' } });
  expect(JSON.stringify([await shopFileOf(shopId), command?.answer])).not.toMatch(/pass word|mail\.example/);
  const bodyOf = (password: string) => ({
    body: { webhook: null, quiet: null, mail: { ...mail(), password } },
    expecting: null,
  });
  expect(command?.bodyHash).toBe(fingerprint(['saveAlertSettings', shopId, bodyOf('new')]));
});

test('settings that somebody else changed meanwhile stay as they are, and so do those of no shop', async () => {
  const shopId = await smallShop();
  await save(shopId, mail());
  const settings = { mail: null, webhook: null, quiet: null };
  const late = await saveAlertSettings({ commandId: newId(), shopId, settings, expecting: null }, CLOCK);
  expect(late).toMatchObject({ ok: false, refusal: { code: 'changed-meanwhile' } });
  const nowhere = await saveAlertSettings({ commandId: newId(), shopId: 'nowhere', settings, expecting: null }, CLOCK);
  expect(nowhere).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
  expect(await passwordOf(shopId)).toBe('pass word');
});
