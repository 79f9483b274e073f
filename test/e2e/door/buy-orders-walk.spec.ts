import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

test.use({ viewport: { width: 390, height: 844 } });

test('an order is written, sent as a list, marked as ordered, received in two parts, and its price and cost follow', async ({
  page,
}) => {
  await ownDemo(page);
  await page.goto('/buy/orders');
  await page.getByLabel('From which supplier').selectOption('Millrace Grower Stores');
  await page.getByRole('button', { name: 'Write an order' }).click();
  await page.getByLabel('Packs of Bt liquid, 1 qt').fill('half');
  await page.getByRole('button', { name: 'It is ordered' }).click();
  await expect(page.getByLabel('Packs of Bt liquid, 1 qt')).toHaveAccessibleDescription(/whole number of packs/);
  await page.getByLabel('Packs of Bt liquid, 1 qt').fill('1');
  await expect(page.getByText('$9.00 short of the smallest order they take')).toBeVisible();
  await page.getByLabel('Packs of Bt liquid, 1 qt').fill('3');
  await expect(page.getByText('in all $111.50')).toBeVisible();
  await isSound(page);

  await page.getByRole('button', { name: 'Show the list to send' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Purchase list');
  await expect(page.getByRole('link', { name: 'Send by e-mail' })).toHaveAttribute(
    'href',
    /^mailto:\?subject=.*3%20x%20Bt/,
  );
  const csv = await page.request.get(
    (await page.getByRole('link', { name: 'Save as CSV' }).getAttribute('href')) ?? '',
  );
  expect(await csv.text()).toContain('"Millrace Grower Stores","Bt liquid","1 qt",3,31,93');
  await isSound(page);
  await page.getByRole('button', { name: 'Mark as ordered' }).click();
  await page.getByRole('link', { name: 'Look at it' }).click();
  await expect(page.getByRole('main')).toContainText('on its way');
  await isSound(page);

  await page.getByRole('link', { name: 'Receive what came' }).click();
  const delivery = page.getByRole('region', { name: /What came of the order/ });
  await delivery.getByLabel('How many').fill('1');
  await delivery.getByLabel(/^Paid/).fill('$33.50');
  await isSound(page);
  await delivery.getByRole('button', { name: 'Put all of it on the shelf' }).click();
  await expect(delivery.getByRole('alert')).toContainText('2 packs are still expected.');
  await delivery.getByRole('link', { name: 'Look at it' }).click();
  await expect(page.getByRole('main')).toContainText('partly here, 2 packs still to come');
  await expect(page.getByRole('main')).toContainText('$33.50 a pack, $2.50 dearer than the $31.00 on the order');
  await page.getByRole('button', { name: /^Let \$33\.50 be its price/ }).click();
  await expect(page.getByRole('button', { name: /^Let \$33\.50/ })).toHaveCount(0);
  await page.goto('/shelf/bt-liquid');
  await expect(page.getByRole('region', { name: 'Offers as a table' })).toContainText('dearer than $31.00');

  await page.goto('/buy/orders');
  await page.getByRole('link', { name: /^Millrace Grower Stores/ }).click();
  await page.getByRole('link', { name: 'Receive what came' }).click();
  await delivery.getByRole('button', { name: 'Put all of it on the shelf' }).click();
  await expect(delivery.getByRole('alert')).toContainText('Nothing more is expected.');
  await page.goto('/shelf/suppliers/millrace');
  await expect(page.getByRole('main')).toContainText('from 1 delivery');

  await page.goto('/buy/budget?by=product');
  const table = page.getByRole('region', { name: 'The budget as a table' });
  await expect(table.getByRole('row').last()).toContainText('In all');
  await table.getByRole('row').last().locator('[data-figure]').first().click();
  await expect(page.getByRole('dialog')).toContainText('Product that was used');
});
