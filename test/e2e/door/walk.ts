import { randomBytes } from 'node:crypto';
import { expect, type Page } from '@playwright/test';
import { demoShop } from '@/lib/demo/demo-shop';
import { Day } from '@/shared/time/day';
import { wrongWith } from '../soundness';

/** Bring a shop file in: as a shop of its own, or into one that is there; and look at that one. Gives the shop's id. */
export async function bringShop(page: Page, file: unknown, into = 'new'): Promise<string> {
  if (page.url() === 'about:blank') await page.goto('/setup');
  const { origin } = new URL(page.url());
  const headers = { origin };
  const text = JSON.stringify(file);
  const preview = await page.request.post('/api/v1/shop/preview', { headers, data: { into, text } });
  const { fingerprint } = await preview.json();
  const data = { commandId: randomBytes(16).toString('hex'), into, text, ...(into !== 'new' && { fingerprint }) };
  const answer = await page.request.post('/api/v1/shop/import', { headers, data });
  expect(answer.status(), await answer.text()).toBe(200);
  const { shopId } = await answer.json();
  await showShop(page, shopId, origin);
  return shopId;
}

/** Work in one shop. Without that, a device is asked which, because other walks have brought in theirs. */
export const showShop = (page: Page, shopId: string, origin: string): Promise<void> =>
  page.context().addCookies([{ name: 'shown-shop', value: shopId, url: origin }]);

/** The demo shop of the tests' own day, as a copy that no other walk touches. */
export const ownDemo = (page: Page): Promise<string> => bringShop(page, demoShop(Day.parse('2026-04-14')));

/** Nothing on the page is wider than it, and nothing about it is wrong for whoever reads it otherwise. */
export async function isSound(page: Page): Promise<void> {
  const width = page.viewportSize()?.width ?? 0;
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  expect(await wrongWith(page)).toEqual([]);
}

/** Hold a button of a mix until it is full: it says itself when it is, however slow the machine. */
export async function hold(page: Page, button: RegExp | string): Promise<void> {
  await page.getByRole('button', { name: button }).hover();
  await page.mouse.down();
  await expect(page.locator('[data-held]')).toHaveCount(0);
  await page.mouse.up();
}

/** Press a key once the screen of a mix answers. */
export async function press(page: Page, ...keys: string[]): Promise<void> {
  for (const key of keys) {
    await expect(page.locator('[data-settling]')).toHaveCount(0);
    await page.keyboard.press(key);
  }
}

/** From the first screen of a mix that was begun to the one that sprays, by the key that goes on. */
export async function onToSpraying(page: Page): Promise<void> {
  const title = page.getByRole('heading', { level: 1 });
  // The rules are asked first; until they have answered, a key is still for the screen before.
  await expect(page.getByRole('button', { name: 'Begin' })).toHaveCount(0);
  for (let screen = 0; screen < 12 && (await title.textContent()) !== 'Spray'; screen += 1) {
    const before = (await title.textContent()) ?? '';
    await press(page, 'ArrowRight');
    await expect(title).not.toHaveText(before);
  }
}
