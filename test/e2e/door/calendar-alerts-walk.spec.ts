import ICAL from 'ical.js';
import { closeMailServers, mailServer } from '../../lib/alerts/mail-server';
import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

test.use({ viewport: { width: 390, height: 844 } });
test.afterEach(closeMailServers);

test('a calendar link is read by another program until it is revoked', async ({ page }) => {
  await ownDemo(page);
  await page.goto('/setup');
  await page.getByRole('link', { name: 'Calendar' }).click();
  await page.getByRole('button', { name: 'Make a link' }).click();
  const address = page.locator('code');
  await expect(address).toHaveText(/^http:\/\/127\.0\.0\.1:\d+\/api\/v1\/calendar\.ics\?link=[\w-]{32}$/);
  const url = (await address.textContent()) ?? '';
  await isSound(page);

  const read = await page.request.get(url);
  expect(read.headers()['content-type']).toBe('text/calendar; charset=utf-8');
  const events = ICAL.Component.fromString(await read.text()).getAllSubcomponents('vevent');
  expect(events.length).toBeGreaterThan(50);
  const tag = read.headers().etag ?? '';
  expect((await page.request.get(url, { headers: { 'If-None-Match': tag } })).status()).toBe(304);

  await page.getByRole('button', { name: /^Revoke the link of/ }).click();
  await expect(address).toHaveCount(0);
  expect((await page.request.get(url)).status()).toBe(404);
});

test('alerts are set up, tried and refused in plain words, and the password is on no page', async ({ page }) => {
  const server = await mailServer({ password: 'pass w0rd' });
  await ownDemo(page);
  await page.goto('/setup/alerts');
  await page.getByRole('button', { name: 'Send a test' }).click();
  await expect(page.getByText('Nothing is set up yet.')).toBeVisible();

  await page.getByLabel('Mail server (SMTP)').fill('127.0.0.1');
  await page.getByLabel('Port').fill(String(server.port));
  await page.getByLabel('Encryption').selectOption('none');
  await page.getByLabel('User name').fill('shop');
  await page.getByLabel('Password').fill('pass w0rd');
  await page.getByRole('region', { name: 'E-mail' }).getByLabel('From').fill('shop at bench');
  await page.getByLabel('To').fill('ana@bench.example');
  await page.getByRole('button', { name: 'Save the alerts' }).click();
  const from = page.getByRole('region', { name: 'E-mail' }).getByLabel('From');
  await expect(from).toHaveAccessibleDescription(/Write one address/);
  await expect(page.getByLabel('Encryption')).toHaveAccessibleDescription(/own network only/);
  await expect(page.getByLabel('Password')).toHaveValue('pass w0rd');
  await isSound(page);

  await from.fill('shop@bench.example');
  await page.getByRole('region', { name: 'E-mail' }).getByLabel('It is on this computer').check();
  await page.getByRole('button', { name: 'Save the alerts' }).click();
  await expect(page.getByText('Saved. Send a test')).toBeVisible();
  await expect(page.getByLabel('Password')).toHaveValue('');
  await page.getByRole('button', { name: 'Send a test' }).click();
  await expect(page.getByText('E-mail went. The mail server took it for 1 of 1.')).toBeVisible();
  const tests = server.taken.filter(({ raw }) => /^Subject: .*: a test\r$/m.test(raw));
  expect(tests).toMatchObject([{ from: 'shop@bench.example', to: ['ana@bench.example'], user: 'shop' }]);

  await page.reload();
  await expect(page.getByLabel('To')).toHaveValue('ana@bench.example');
  expect(await page.content()).not.toContain('pass w0rd');
  expect(await page.evaluate(() => JSON.stringify(sessionStorage))).not.toContain('pass w0rd');
  await page.getByLabel('Port').fill('1');
  await page.getByRole('button', { name: 'Save the alerts' }).click();
  await expect(page.getByLabel('Password')).toHaveAccessibleDescription(/Type it again/);
  await isSound(page);
});
