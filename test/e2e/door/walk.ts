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
  await page.context().addCookies([{ name: 'shown-shop', value: shopId, url: origin }]);
  return shopId;
}

/** The demo shop of the tests' own day, as a copy that no other walk touches. */
export const ownDemo = (page: Page): Promise<string> => bringShop(page, demoShop(Day.parse('2026-04-14')));

/** Nothing on the page is wider than it, and nothing about it is wrong for whoever reads it otherwise. */
export async function isSound(page: Page): Promise<void> {
  const width = page.viewportSize()?.width ?? 0;
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  expect(await wrongWith(page)).toEqual([]);
}

/** Hold a button of a mix until it is full. */
export const hold = (page: Page, button: RegExp | string): Promise<void> =>
  page.getByRole('button', { name: button }).click({ delay: 1_000 });

/** Press a key once the screen of a mix answers. */
export async function press(page: Page, ...keys: string[]): Promise<void> {
  for (const key of keys) {
    await expect(page.locator('[data-settling]')).toHaveCount(0);
    await page.keyboard.press(key);
  }
}
