import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

test.use({ viewport: { width: 390, height: 844 } });

test('a supplier, an offer with a break and then a new price: both prices stand, and replacing the shelf follows', async ({
  page,
}) => {
  await ownDemo(page);
  await page.goto('/shelf/suppliers/new');
  await page.getByLabel('Who sells').fill('Hollow supply');
  await page.getByLabel('Freight of one order').fill('five');
  await page.getByRole('button', { name: 'Add this supplier' }).click();
  await expect(page.getByLabel('Freight of one order')).toHaveAccessibleDescription(/write the number alone/i);
  await page.getByLabel('Freight of one order').fill('none');
  await page.getByRole('button', { name: 'Add this supplier' }).click();
  await expect(page.getByText('There is already a supplier named Hollow Supply')).toBeVisible();
  await isSound(page);
  await page.getByLabel('Who sells').fill('Lane End Seeds');
  await page.getByRole('button', { name: 'Add this supplier' }).click();
  await expect(page.getByRole('main').getByRole('alert')).toContainText('Lane End Seeds is saved.');
  await page.goto('/shelf/suppliers');
  await isSound(page);

  await page.goto('/shelf/soap-49');
  const replace = page.locator('[data-figure$="/replaceCost"]').first();
  const before = await replace.textContent();
  await page.getByRole('link', { name: 'Add an offer' }).click();
  await page.getByLabel('Who sells it').selectOption('Lane End Seeds');
  await page.getByLabel('What one pack holds').fill('5 gal');
  await page.getByLabel('Price of one pack', { exact: true }).fill('$6.00');
  await page.getByLabel('From how many packs').first().fill('3');
  await page.getByLabel('Price of one pack then').first().fill('5.50 USD');
  await page.getByRole('button', { name: 'One more line' }).click();
  await page.getByLabel('Working days from order to arrival').fill('2');
  await page.getByRole('button', { name: 'Add this offer' }).click();
  await expect(page.getByRole('main').getByRole('alert')).toContainText('5 gal is saved, at 6.00');
  await page.getByRole('link', { name: 'Look at it' }).click();

  await expect(page.getByRole('heading', { level: 1 })).toHaveText('5 gal from Lane End Seeds');
  const price = page.getByLabel('Price of one pack', { exact: true });
  await price.fill('€7.25');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(price).toHaveAccessibleDescription(/The currency is the shop's/);
  await price.fill('7,25');
  await page.getByRole('button', { name: 'Save' }).click();
  const prices = page.getByRole('region', { name: 'Prices as a table' });
  await expect(prices.getByRole('row')).toHaveCount(3);
  await expect(prices.getByRole('row').nth(1)).toContainText(/\$7\.25.*\$5\.50 from 3.*\$1\.25 dearer/);
  await expect(prices.getByRole('row').nth(2)).toContainText(/\$6\.00.*the first one noted/);
  await expect(page.locator('.recharts-surface').first()).toBeVisible();
  await isSound(page);

  await page.goto('/shelf/soap-49');
  await expect(replace).toHaveText('$7.25');
  expect(before).not.toBe('$7.25');
  await expect(page.getByRole('region', { name: 'Offers as a table' })).toContainText(/dearer than \$6\.00/);
  await isSound(page);

  await page.getByRole('link', { name: /Lane End Seeds, 5 gal/ }).click();
  await page.getByRole('button', { name: 'Put this offer away' }).click();
  await expect(page.getByRole('button', { name: 'Take it out again' })).toBeVisible();
  await page.goto('/shelf/soap-49');
  await expect(replace).toHaveText(before ?? '');
});
