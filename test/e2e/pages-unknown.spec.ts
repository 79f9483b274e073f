import { expect, test } from './page-test';

/* The demo doses one powder by the spoon that nobody weighed: nobody knows how much of it is needed. */

const POWDER = 'Wettable sulfur 80 %';

test('where nobody knows how much is needed, every page says so and leads to the scale', async ({ page }) => {
  for (const address of ['/today', '/shelf', '/buy', '/shelf/wettable-sulfur', '/buy/plan']) {
    await page.goto(address);
    const way = page.getByRole('link', { name: new RegExp(`Weigh it: Weigh one level teaspoon of ${POWDER}`) });
    await expect(way.first(), address).toHaveAttribute('href', '/shelf/wettable-sulfur/weigh');
  }
});

test('it is never said to last: the day it runs out and the day to order are not known', async ({ page }) => {
  await page.goto('/shelf/wettable-sulfur');
  for (const figure of ['runsOutOn', 'orderBy']) {
    await expect(page.locator(`[data-figure="product/wettable-sulfur/${figure}"]`).first()).toHaveText('not known');
  }
  await page.goto('/buy');
  await expect(page.getByText('One cannot be planned:')).toBeVisible();
});

test('a plan with such a product is not proven, and says of which one', async ({ page }) => {
  await page.goto('/buy/plan?weeks=26');
  await expect(page.getByText('Not proven:')).toContainText('Not proven');
  await expect(page.getByRole('region', { name: 'Not known' })).toContainText(`Cannot be planned: ${POWDER}`);
  await expect(page.locator('[data-figure="buying/26/total"]').first()).toContainText('at least');
});

test('a sum with an unknown part says at least, how many parts are missing, and what to enter', async ({ page }) => {
  await page.goto('/buy/budget?by=product');
  const sum = page.locator('[data-figure="budget/product/planned-product"]');
  await expect(sum).toHaveText(/^at least \$[\d,.]+, \d+ not known$/);
  await page.goto('/working?figure=budget%2Fproduct%2Fplanned-product');
  await page.getByRole('link', { name: /^Weigh it/ }).click();
  await expect(page).toHaveURL(/\/shelf\/wettable-sulfur\/weigh$/);
});

for (const width of [390, 1280]) {
  test(`nothing of it is cut off or overlaps at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 });
    for (const address of ['/today', '/shelf', '/buy', '/shelf/wettable-sulfur', '/buy/plan', '/buy/budget']) {
      await page.goto(address);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(over, address).toBeLessThanOrEqual(0);
    }
  });
}
