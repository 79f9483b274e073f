import type { Page } from '@playwright/test';
import { isSound } from '../door/walk';
import { expect, test } from '../page-test';

/*
 * The owner at the laptop, and Vera with a phone: she is let in, does what a sprayer may, loses the phone and is out.
 */

test.use({ expectedErrors: [/403 \(Forbidden\)/] });

const PASSWORD = 'eleven wet boots';

async function choosePassword(page: Page, button: string): Promise<void> {
  await page.getByLabel('A password').fill(PASSWORD);
  await page.getByRole('button', { name: button }).click();
}

test('the owner invites a sprayer, who comes in, may not set up, and is out at once', async ({ page, browser }) => {
  await page.goto('/setup/people');
  await expect(page.getByRole('main')).toContainText('Nobody signs in here yet.');
  await page.getByRole('link', { name: 'Make an owner’s sign-in' }).click();
  await page.getByLabel('Your name').fill('Ada');
  await choosePassword(page, 'Make the owner’s sign-in');
  await page.waitForURL('**/today');

  await page.goto('/setup');
  await page.getByRole('link', { name: 'Who works here' }).click();
  await expect(page.getByRole('region', { name: /^In / })).toContainText('Ada (you)');
  await page.getByLabel('Name').fill('Vera');
  await page.getByRole('button', { name: 'Make an invitation' }).click();
  await page.waitForURL('**/setup/people/show?**');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Vera is invited');
  await isSound(page);
  const link = (await page.locator('code').textContent()) ?? '';

  const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
  const vera = await phone.newPage();
  await vera.goto(link);
  await isSound(vera);
  await choosePassword(vera, 'Come in');
  await vera.waitForURL('**/today');
  await expect(vera.getByRole('contentinfo')).toContainText('Vera');
  expect((await vera.goto('/setup/people'))?.status()).toBe(403);
  await vera.goto(link);
  await expect(vera.getByRole('heading', { level: 1 })).toHaveText('This invitation does not hold any more');

  await page.goto('/setup/people');
  await isSound(page);
  await page.getByRole('button', { name: /^Lost: sign out .* of Vera$/ }).click();
  await expect(page.getByRole('main')).toContainText('lost, signed out');
  await vera.goto('/today');
  await expect(vera).toHaveURL(/\/sign-in\?to=/);
  await vera.getByLabel('Your name').fill('Vera');
  await vera.getByLabel('Password').fill(PASSWORD);
  await vera.getByRole('button', { name: 'Sign in' }).click();
  await vera.waitForURL('**/today');

  await page.goto('/setup/people');
  const hers = page.getByRole('listitem').filter({ hasText: /^Vera/ });
  await hers.locator('summary').click();
  await isSound(page);
  await hers.getByRole('button', { name: /^Works here no more/ }).click();
  await expect(hers).toContainText('cannot sign in any more');
  await vera.goto('/mix');
  await expect(vera).toHaveURL(/\/sign-in\?to=/);
  await phone.close();
});
