import type { Browser, Page } from '@playwright/test';
import { wetShop } from '../door/a-wet-shop';
import { bringShop, hold, isSound, onToSpraying } from '../door/walk';
import { expect, test } from '../page-test';

/*
 * A day of three devices at one shop, over https with its own certificate, on an address that is not the one a shop has by
 * itself: the owner's laptop, the sprayer's phone, and the clerk's phone with the link to the board.
 */

const NOW = Date.parse('2026-04-14T13:30:00Z');
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** A device of its own: no cookie of another one is on it. */
async function device(browser: Browser, baseURL: string | undefined, more: object = {}): Promise<Page> {
  const context = await browser.newContext({ baseURL: baseURL ?? '', ignoreHTTPSErrors: true, ...more });
  return context.newPage();
}

const head = (page: Page) => page.getByRole('banner');

test('owner, sprayer and clerk see what the others do within seconds, each on a device that stays in its shop', async ({
  page: laptop,
  browser,
  baseURL,
}) => {
  const shop = await bringShop(laptop, wetShop(NOW));
  await laptop.goto('/setup/phones');
  await expect(laptop.getByText(baseURL ?? 'no address')).toBeVisible();
  await isSound(laptop);
  expect(await laptop.evaluate(() => isSecureContext)).toBe(true);
  const cookies = await laptop.context().cookies();
  const name = (await head(laptop).getByRole('link').first().textContent()) ?? '';
  expect(cookies.find((cookie) => cookie.name === 'shown-shop')?.value).toBe(shop);

  await laptop.goto('/setup/board');
  await laptop.getByRole('button', { name: 'Make a link' }).click();
  const address = (await laptop.getByText(new RegExp(`^${baseURL}/board/`)).textContent()) ?? '';
  await isSound(laptop);

  const clerk = await device(browser, baseURL, PHONE);
  await clerk.goto(address);
  const spare = clerk.getByRole('listitem').filter({ hasText: 'Spare shelf' });
  await expect(spare).not.toContainText('KEEP OUT');

  const phone = await device(browser, baseURL, PHONE);
  await phone.goto('/mix/do?recipe=wash&bench=spare');
  await phone.getByRole('button', { name: `Work in ${name} on this device` }).tap();
  await phone.getByRole('button', { name: 'Begin' }).tap();
  await onToSpraying(phone);
  await hold(phone, 'Start spraying now');
  await expect(phone.getByText('The shop knows.')).toBeVisible();

  // The board of the clerk asks by itself.
  await expect(spare).toContainText('KEEP OUT, being sprayed');
  await laptop.goto('/today');
  await expect(laptop.getByRole('region', { name: 'Begun, and not on record' })).toContainText('Spare shelf');

  // Another shop comes in on the laptop, and nobody is moved by that.
  await laptop.goto('/setup');
  await bringShop(laptop, { ...wetShop(NOW), shop: { ...wetShop(NOW).shop, name: 'Another place' } });
  await laptop.reload();
  await expect(head(laptop)).toContainText('Another place');
  await phone.goto('/keep-out');
  await expect(head(phone)).toContainText(name);
  await expect(phone.locator('#bench-spare')).toContainText('KEEP OUT, being sprayed');
  await clerk.reload();
  await expect(spare).toContainText('KEEP OUT, being sprayed');
});
