import type { Page } from '@playwright/test';
import { expect, test } from './page-test';

/** A page whose scripts have not come yet, and what lets them come. */
async function slowPage(page: Page, address: string): Promise<() => void> {
  let release: () => void = () => {};
  const released = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(/\/_next\/static\/.*\.js/, async (route) => {
    await released;
    await route.continue();
  });
  await page.goto(address, { waitUntil: 'commit' });
  return release;
}

test('what is typed before the scripts of a page listen is kept, and counts', async ({ page }) => {
  const release = await slowPage(page, '/shelf/bicarbonate/weigh');
  const result = page.locator('output');
  await page.getByLabel('Reading 1, g').fill('4.8');
  await page.getByLabel('Reading 2, g').fill('9.8');
  await page.getByLabel('What each reading shows').selectOption('total');
  await expect(result).toContainText('not known yet');
  release();
  await expect(result).toContainText('4.9 g');
  await expect(page.getByLabel('Reading 1, g')).toHaveValue('4.8');
  await page.getByLabel('Reading 3, g').fill('14.7');
  await expect(result).toContainText('÷ 3 spoons');
});

test('a box that is ticked before the scripts of a page listen stays ticked', async ({ page }) => {
  const release = await slowPage(page, '/setup/benches/new');
  const box = page.getByRole('checkbox').first();
  const before = await box.isChecked();
  await box.setChecked(!before);
  release();
  await page.waitForLoadState('networkidle');
  await expect(box).toBeChecked({ checked: !before });
});

test('what was typed early and sent is not typed once more into the form that is empty again', async ({ page }) => {
  const release = await slowPage(page, '/shelf');
  const search = page.getByLabel('Name or substance');
  await search.fill('oil');
  release();
  await page.waitForFunction(() => {
    const field = document.querySelector('input[type="search"], input[name="find"]');
    return field !== null && Object.keys(field).some((key) => key.startsWith('__reactProps'));
  });
  await page.evaluate(() => {
    const field = document.querySelector<HTMLInputElement>('input[type="search"], input[name="find"]');
    field?.dispatchEvent(new Event('submit', { bubbles: true }));
    if (field) field.value = '';
  });
  await page.waitForTimeout(700);
  await expect(search).toHaveValue('');
});
