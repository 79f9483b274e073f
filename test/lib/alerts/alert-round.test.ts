import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { alertRound } from '@/lib/alerts/alert-round';
import { forgetTries, lastTry } from '@/lib/alerts/tries';
import { tryAlerts } from '@/lib/alerts/try-alerts';
import { watchAlerts } from '@/lib/alerts/watch-alerts';
import { type Clock, clockPinnedTo } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { saveAlertSettings } from '@/lib/commands/save-alert-settings';
import { alertSettingsOf } from '@/lib/data/alert-settings';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import type { AlertSettings } from '@/shared/alerts/alert-settings';
import { SMALL, smallShop } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';
import { closeMailServers, mailServer } from './mail-server';
import { closeOtherPrograms, otherProgram } from './other-program';

/** Whether the program ends before it can note what it handed over. */
const crash = vi.hoisted(() => ({ soon: false }));
vi.mock('@/lib/commands/note-alerts-sent', async (original) => {
  const real = await original<typeof import('@/lib/commands/note-alerts-sent')>();
  return {
    ...real,
    noteAlertsSent: (...given: Parameters<typeof real.noteAlertsSent>) => {
      if (crash.soon) throw new Error('the program ended here');
      return real.noteAlertsSent(...given);
    },
  };
});

const said = vi.spyOn(console, 'error');
beforeEach(() => {
  crash.soon = false;
  said.mockReset().mockImplementation(() => {});
});
afterEach(() => vi.useRealTimers());
afterEach(closeMailServers);
afterEach(closeOtherPrograms);

/** Noon where the shop is, and whatever is asked for. */
const at = (text = '2026-03-31T16:00:00Z'): Clock => ({ ...clockPinnedTo(text), steady: () => 0 });

/** A shop in which one bottle dies in two days with something in it, and of which there is nothing else to tell. */
const DYING = parsedOrThrow({
  ...JSON.parse(JSON.stringify(SMALL)),
  applications: [],
  programs: [],
  lots: [
    { id: 'l', product: 'p', pack: '500 mL', paid: '74.00', receivedOn: '2026-02-02', expiresOn: '2026-04-02' },
    { id: 'm', product: 'p', pack: '1 L', paid: '90.00', receivedOn: '2026-02-02', expiresOn: '2027-04-02' },
  ],
});

async function shopWith(settings: Partial<AlertSettings>): Promise<string> {
  const shopId = await smallShop(DYING);
  forgetTries(shopId);
  await save(shopId, settings);
  return shopId;
}

async function save(shopId: string, { mail = null, webhook = null, quiet = null }: Partial<AlertSettings>) {
  const before = await alertSettingsOf(shopId);
  const password = mail?.password ? { new: mail.password } : null;
  const settings = { webhook, quiet, mail: mail && { ...mail, password } };
  const expecting = before?.savedAt ?? null;
  const outcome = await saveAlertSettings({ commandId: newId(), shopId, settings, expecting }, at());
  if (!outcome.ok) throw new Error(outcome.refusal.code);
}

test('each alert goes once in each way, however often it is looked for, and a new one goes by itself', async () => {
  const [server, program] = [await mailServer(), await otherProgram()];
  const shopId = await shopWith({ mail: server.settings(), webhook: { url: program.url, ownNetwork: true } });
  for (let times = 0; times < 3; times += 1) await alertRound(at());
  await alertRound(at('2026-04-01T16:00:00Z'));
  expect([server.taken.length, program.posted.length]).toEqual([1, 1]);
  expect(server.taken[0]?.raw.replace(/=\r\n/g, '')).toContain('last usable day is Thu 2 April');

  const lots = [{ id: 'n', product: 'p', pack: '250 mL', receivedOn: '2026-02-02', expiresOn: '2026-04-03' }];
  await changeShop({ commandId: newId(), shopId, part: { lots } }, at());
  await alertRound(at());
  expect([server.taken.length, program.posted.length]).toEqual([2, 2]);
  expect(JSON.parse(program.posted[1]?.body ?? '').alerts).toMatchObject([{ key: 'bottle/n/2026-04-03' }]);
});

test('nothing goes anywhere unless it is set up', async () => {
  const server = await mailServer();
  const shopId = await smallShop(DYING);
  await alertRound(at());
  await save(shopId, {});
  await alertRound(at());
  await save(shopId, { mail: server.settings() });
  expect(server.taken).toEqual([]);
  await alertRound(at());
  expect(server.taken).toHaveLength(1);
});

test('what could not be handed over is tried again, later each time, and is told of when it goes', async () => {
  let status = 500;
  const program = await otherProgram(() => ({ status }));
  const shopId = await shopWith({ webhook: { url: program.url, ownNetwork: true } });
  const tried: string[] = [];
  for (let minute = 0; minute < 10; minute += 1) {
    const before = program.posted.length;
    const now = `2026-03-31T16:0${minute}:00Z`;
    await alertRound(at(now));
    if (program.posted.length > before) tried.push(now.slice(14, 16));
  }
  expect(tried).toEqual(['00', '01', '03', '07']);
  expect(lastTry(shopId, 'webhook')).toMatchObject({ ok: false, failures: 4, message: expect.stringContaining('500') });
  status = 200;
  await alertRound(at('2026-03-31T16:15:00Z'));
  await alertRound(at('2026-03-31T16:16:00Z'));
  expect(program.posted).toHaveLength(5);
  expect(lastTry(shopId, 'webhook')).toMatchObject({ ok: true, failures: 0 });
});

test('one way that fails holds up no other', async () => {
  const [server, program] = [await mailServer(), await otherProgram(() => ({ status: 503 }))];
  await shopWith({ mail: server.settings(), webhook: { url: program.url, ownNetwork: true } });
  await alertRound(at());
  await alertRound(at('2026-03-31T16:01:00Z'));
  expect([server.taken.length, program.posted.length]).toEqual([1, 2]);
});

test('when the program ends between handing over and noting it, the message goes once more under its own id', async () => {
  const server = await mailServer();
  await shopWith({ mail: server.settings() });
  crash.soon = true;
  await alertRound(at());
  expect(said).toHaveBeenCalledTimes(1);
  crash.soon = false;
  await alertRound(at('2026-03-31T16:05:00Z'));
  await alertRound(at('2026-03-31T16:06:00Z'));
  const ids = server.taken.map(({ raw }) => /^Message-ID: (.*)$/im.exec(raw)?.[1]);
  expect(ids).toHaveLength(2);
  expect(new Set(ids).size).toBe(1);
});

test('in quiet hours nothing goes; when they end, what still holds does', async () => {
  const server = await mailServer();
  await shopWith({ mail: server.settings(), quiet: { from: 22 * 60, until: 6 * 60 } });
  for (const time of ['T22:00:00-04:00', 'T23:59:00-04:00']) await alertRound(at(`2026-03-31${time}`));
  for (const time of ['T00:00:00-04:00', 'T05:59:00-04:00']) await alertRound(at(`2026-04-01${time}`));
  expect(server.taken).toEqual([]);
  await alertRound(at('2026-04-01T06:00:00-04:00'));
  expect(server.taken).toHaveLength(1);
});

test('settings that cannot be read are told of in the log, and a later look goes on', async () => {
  const program = await otherProgram();
  const shopId = await shopWith({ webhook: { url: program.url, ownNetwork: true } });
  const { writer } = await database();
  await writer.$executeRawUnsafe(`UPDATE "AlertSettings" SET "settings" = '{"mail":5}'`);
  await alertRound(at());
  expect(said).toHaveBeenCalledTimes(1);
  expect(program.posted).toEqual([]);
  await writer.alertSettings.deleteMany({ where: { shopId } });
  await save(shopId, { webhook: { url: program.url, ownNetwork: true } });
  await alertRound(at());
  expect(program.posted).toHaveLength(1);
});

test('a test goes in every way that is set up, in quiet hours too, says what happened, and is not noted as sent', async () => {
  const [server, program] = [await mailServer(), await otherProgram(() => ({ status: 404 }))];
  const settings = { mail: server.settings(), webhook: { url: program.url, ownNetwork: true } };
  const shopId = await shopWith({ ...settings, quiet: { from: 0, until: 1439 } });
  expect(await tryAlerts(shopId, at())).toEqual({
    ok: true,
    value: [
      { way: 'mail', ok: true, message: 'The mail server took it for 1 of 1.' },
      { way: 'webhook', ok: false, message: 'The other program did not take it and answered 404.' },
    ],
  });
  expect(await (await database()).reader.alertSent.count()).toBe(0);
  expect(await tryAlerts('no-such-shop', at())).toMatchObject({ ok: false });
});

test('the watch looks again and again, one look after another, whatever becomes of each, until it is ended', async () => {
  vi.useFakeTimers();
  let looks = 0;
  let running = 0;
  const round = async () => {
    running += 1;
    expect(running).toBe(1);
    await new Promise((resolve) => setTimeout(resolve, 90_000));
    running -= 1;
    looks += 1;
    if (looks % 2 === 1) throw new Error('this look failed');
  };
  watchAlerts(at(), async () => {
    throw new Error('an earlier watch, which the next one ends');
  });
  const end = watchAlerts(at(), round, 60_000);
  await vi.advanceTimersByTimeAsync(10 * 150_000);
  expect(looks).toBe(10);
  expect(said).toHaveBeenCalledTimes(5);
  // The look that is under way comes to its end, and none follows.
  end();
  await vi.advanceTimersByTimeAsync(10 * 150_000);
  expect(looks).toBe(11);
});
