import { expect, test } from './page-test';

test('the shelf can be narrowed by name, and says when nothing is found', async ({ page }) => {
  await page.goto('/shelf');
  await page.getByLabel('Name or substance').fill('oil');
  await expect(page).toHaveURL(/find=oil/);
  await expect(page.getByRole('heading', { level: 2, name: /oil/i })).toHaveCount(2);
  await page.getByLabel('Name or substance').fill('no such thing');
  await page.getByRole('link', { name: 'Show the whole shelf' }).click();
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(18);
});

test('in order of what dies first, a bottle past its day stands before one that keeps', async ({ page }) => {
  await page.goto('/shelf?sort=dies');
  await expect(
    page
      .getByRole('listitem')
      .filter({ has: page.getByRole('heading') })
      .first(),
  ).toContainText('past');
});

test('the table holds the same containers as the bottles do', async ({ page }) => {
  const remaining = () =>
    page.locator('[data-figure$="/remaining"]').evaluateAll((found) => found.map((one) => one.textContent).sort());
  await page.goto('/shelf');
  const bottles = await remaining();
  await page.goto('/shelf?as=table');
  expect(await remaining()).toEqual(bottles);
});

test('a product shows its weeks as a chart and as the table beside it', async ({ page }) => {
  await page.goto('/shelf/light-oil-98');
  const table = page.getByRole('region', { name: 'Stock by week as a table' });
  await expect(table.getByRole('columnheader')).toHaveText([
    'Seven days from',
    'need',
    'used',
    'short',
    'wasted',
    'received',
    'closing',
  ]);
  await expect(page.locator('.recharts-surface').first()).toBeVisible();
  await expect(page.getByRole('region', { name: 'What its label says' })).toContainText('People keep out for');
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('the shelf is still narrowed, and a figure still leads to its working', async ({ page }) => {
    await page.goto('/shelf');
    await page.getByLabel('Kind').selectOption('fungicide');
    await page.getByRole('button', { name: 'Show' }).click();
    await expect(page).toHaveURL(/kind=fungicide/);
    await page.getByRole('link', { name: 'As a table' }).click();
    await expect(page.getByRole('table')).toContainText('fungicide');
    await expect(page.getByRole('table')).not.toContainText('nutrient');
    await page.locator('[data-figure$="/onHand"]').first().click();
    await expect(page.getByRole('heading', { level: 1, name: /on hand$/ })).toBeVisible();
  });

  test('the weeks of a product are there as figures', async ({ page }) => {
    await page.goto('/shelf/light-oil-98');
    await expect(page.getByRole('region', { name: 'Stock by week as a table' }).getByRole('row')).toHaveCount(27);
  });
});
