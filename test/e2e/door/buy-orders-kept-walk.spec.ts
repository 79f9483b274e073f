import { parse } from 'csv-parse/sync';
import { demoShop } from '@/lib/demo/demo-shop';
import { Day } from '@/shared/time/day';
import { expect, test } from '../page-test';
import { bringShop, isSound, ownDemo } from './walk';

const WRITE = '/buy/orders/new?supplier=millrace';

test.describe('an order that is being written', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('outlives its page, a reload and its tab, can be thrown away and taken back, and is gone once it is placed', async ({
    page,
    context,
  }) => {
    await ownDemo(page);
    await page.goto(WRITE);
    const packs = page.getByLabel('Packs of Bt liquid, 1 qt');
    await packs.fill('half');
    await page.getByLabel('Note').fill('By the back door');
    // Nobody knows what half a pack comes to.
    await expect(page.getByText('in all not known')).toBeVisible();
    await page.goto('/today');
    await page.goto(WRITE);
    await expect(packs).toHaveValue('half');
    await packs.fill('3');
    await page.reload();
    await expect(page.getByRole('status').filter({ hasText: 'Not sent yet' })).toBeVisible();
    await expect(packs).toHaveValue('3');
    await expect(page.getByText('in all $111.50')).toBeVisible();
    await isSound(page);
    await page.close();

    const next = await context.newPage();
    await next.goto('/buy/orders');
    const written = next.getByRole('region', { name: 'Written and not sent' });
    await expect(written).toContainText('3 × Bt liquid, 1 qt');
    await isSound(next);
    await written.getByRole('button', { name: 'Throw it away' }).click();
    await written.getByRole('button', { name: 'Take it back' }).click();
    await written.getByRole('link', { name: /^Millrace/ }).click();
    await expect(next.getByLabel('Note')).toHaveValue('By the back door');
    await next.getByRole('button', { name: 'Throw it away' }).click();
    await expect(next.getByLabel('Packs of Bt liquid, 1 qt')).toHaveValue('');
    await expect(next.getByLabel('Note')).toHaveValue('');
    await next.getByRole('button', { name: 'Take it back' }).click();
    await expect(next.getByLabel('Packs of Bt liquid, 1 qt')).toHaveValue('3');

    await next.getByRole('button', { name: 'It is ordered' }).click();
    await expect(next.getByRole('alert').filter({ hasText: 'It is ordered' })).toBeVisible();
    await expect(next.getByRole('button', { name: 'It is ordered' })).toHaveCount(0);
    await next.getByRole('link', { name: 'Write another order to them' }).click();
    await expect(next.getByLabel('Packs of Bt liquid, 1 qt')).toHaveValue('');
    await next.goto('/buy/orders');
    await expect(written).toHaveCount(0);
  });

  test('several are one purchase list by supplier, and each is gone once its list is marked as ordered', async ({
    page,
  }) => {
    await ownDemo(page);
    await page.goto(WRITE);
    await page.getByLabel('Packs of Bt liquid, 1 qt').fill('1');
    await page.goto('/buy/orders/new?supplier=hollow');
    await page.getByLabel('Packs of Calcium liquid 5 %, 1 gal').fill('2');
    await page.goto('/buy/orders');
    await page.getByRole('link', { name: 'Their purchase list, by supplier' }).click();
    const lists = page.getByRole('main').getByRole('region');
    await expect(lists).toHaveCount(2);
    const millrace = page.getByRole('region', { name: /^Millrace/ });
    await expect(millrace).toContainText('Smallest order they take $40.00: $9.00 short');
    await expect(millrace).toContainText('No freight from $300.00: $269.00 short');
    await expect(page.getByRole('region', { name: /^Hollow/ })).toContainText('No freight from $150.00: $17.00 short');
    await isSound(page);
    const href = (await page.getByRole('link', { name: 'Save as CSV' }).getAttribute('href')) ?? '';
    const csv = await page.request.get(href);
    expect(csv.headers()['content-disposition']).toContain('purchase-list.csv');
    const rows: Record<string, string>[] = parse(await csv.text(), { columns: true, bom: true });
    expect(rows.map(({ Supplier, Packs, Cost }) => [Supplier, Packs, Cost]).sort()).toEqual([
      ['Hollow Supply', '2', '133'],
      ['Millrace Grower Stores', '1', '31'],
    ]);

    await millrace.getByRole('button', { name: 'Mark as ordered' }).click();
    await expect(millrace.getByRole('link', { name: 'Look at it' })).toBeVisible();
    // Read anew, the list offers only what is not ordered yet.
    await page.reload();
    await expect(lists).toHaveCount(1);
    await expect(page.getByRole('button', { name: 'Mark as ordered' })).toHaveCount(1);
    await page.goto('/buy/orders');
    await expect(page.getByRole('region', { name: 'Written and not sent' }).getByRole('listitem')).toHaveCount(1);
    await expect(page.getByRole('region', { name: 'Written and not sent' })).toContainText('Hollow Supply');
  });

  test('what somebody changed meanwhile is not overwritten by what was written before', async ({ page }) => {
    await ownDemo(page);
    await page.goto('/buy/orders/order-calcium/edit');
    await page.getByLabel('Note').fill('Ask for the small cans');
    await page.goto('/buy/orders/order-calcium');
    await page.getByRole('button', { name: 'Nothing more will come' }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'Closed' })).toBeVisible();
    await page.goto('/buy/orders/order-calcium/edit');
    await expect(page.getByLabel('Note')).toHaveValue('Ask for the small cans');
    await page.getByRole('button', { name: 'Save the order' }).click();
    await expect(page.getByRole('alert').filter({ hasText: /changed/ })).toBeVisible();
    await expect(page.getByLabel('Note')).toHaveValue('Ask for the small cans');
  });
});

test.describe('an order that is on its way', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('is told of on the day it is expected, on the page of today and of its product, until all of it is here', async ({
    page,
  }) => {
    await ownDemo(page);
    await page.goto(WRITE);
    await page.getByLabel('Packs of Bt liquid, 1 qt').fill('2');
    await page.getByLabel('Expected on').fill(await page.getByLabel('Ordered on').inputValue());
    await page.getByRole('button', { name: 'It is ordered' }).click();
    await expect(page.getByRole('link', { name: 'Look at it' })).toBeVisible();

    await page.goto('/today');
    await expect(page.getByRole('main')).toContainText('1 delivery expected today');
    const coming = page.getByRole('list', { name: 'Coming in' });
    const ours = coming.getByRole('listitem').filter({ hasText: 'Millrace Grower Stores, 2 packs' });
    await expect(ours).toContainText('expected today');
    await expect(coming.getByRole('listitem').first()).toContainText('▲ late since');
    await isSound(page);
    await ours.getByRole('link', { name: 'Receive what came from Millrace' }).click();
    const delivery = page.getByRole('region', { name: /What came of the order/ });
    await delivery.getByLabel('How many').fill('1');
    await delivery.getByRole('button', { name: 'Put all of it on the shelf' }).click();
    await expect(delivery.getByRole('alert')).toContainText('1 pack is still expected.');

    await page.goto('/shelf/bt-liquid');
    const onOrder = page.getByRole('region', { name: 'On order' });
    await expect(onOrder).toContainText('1 × 1 qt from Millrace Grower Stores, expected today');
    await onOrder.locator('[data-figure="product/bt-liquid/onOrder"]').click();
    await expect(page.getByRole('dialog')).toContainText('Millrace Grower Stores');
    await page.keyboard.press('Escape');
    await isSound(page);
    await onOrder.getByRole('link', { name: 'Receive what came' }).click();
    await delivery.getByRole('button', { name: 'Put all of it on the shelf' }).click();
    await expect(delivery.getByRole('alert')).toContainText('Nothing more is expected.');
    await page.goto('/shelf/bt-liquid');
    await expect(onOrder).toHaveCount(0);
    await page.goto('/today');
    await expect(coming.getByRole('listitem').filter({ hasText: 'Millrace' })).toHaveCount(0);
  });

  test('with one offer on two lines, it is received line by line, counted once, and can be changed', async ({
    page,
  }) => {
    const file = demoShop(Day.parse('2026-04-14'));
    const [line] = file.orders.find(({ id }) => id === 'order-calcium')?.lines ?? [];
    if (!line) throw new Error('the demo shop has no such order');
    const lines = [line, { ...line, count: 3, price: '21.00' }];
    const orders = file.orders.map((one) => (one.id === 'order-calcium' ? { ...one, lines } : one));
    await bringShop(page, { ...file, orders });
    await page.goto('/shelf/receive?order=order-calcium#delivery');
    const delivery = page.getByRole('region', { name: /What came of the order/ });
    await expect(delivery.getByLabel('How many')).toHaveCount(2);
    await delivery.getByLabel('How many').last().fill('');
    await delivery.getByRole('button', { name: 'Put all of it on the shelf' }).click();
    await expect(delivery.getByRole('alert')).toContainText('3 packs are still expected.');
    await page.goto('/buy/orders/order-calcium');
    const rows = page.getByRole('region', { name: 'What was ordered' }).getByRole('row');
    await expect(rows.nth(1)).toContainText(/2\$23\.50\$47\.00\s*20$/);
    await expect(rows.nth(2)).toContainText(/3\$21\.00\$63\.00\s*03$/);
    await page.goto('/buy/orders/order-calcium/edit');
    const packs = page.getByLabel('Packs of Calcium liquid 5 %, 1 qt');
    await expect(packs).toHaveCount(2);
    await packs.last().fill('4');
    await page.getByRole('button', { name: 'Save the order' }).click();
    await page.getByRole('link', { name: 'Look at it' }).click();
    await expect(rows.nth(2)).toContainText('$84.00');
  });
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('a list is marked as ordered, received, its price taken and its lead time set', async ({ page }) => {
    await ownDemo(page);
    await page.goto(WRITE);
    await page.getByLabel('Packs of Bt liquid, 1 qt').fill('2');
    await page.getByRole('button', { name: 'Show the list to send' }).click();
    await expect(page.getByRole('main')).toContainText('in all $80.50');
    await page.getByRole('button', { name: 'Mark as ordered' }).click();
    await page.getByRole('link', { name: 'Look at it' }).click();
    await expect(page.getByRole('main')).toContainText('on its way');

    await page.getByRole('link', { name: 'Receive what came' }).click();
    const delivery = page.getByRole('region', { name: /What came of the order/ });
    await delivery.getByLabel(/^Paid/).fill('66.00');
    await delivery.getByRole('button', { name: 'Put all of it on the shelf' }).click();
    await expect(delivery.getByRole('alert')).toContainText('Nothing more is expected.');
    await delivery.getByRole('link', { name: 'Look at it' }).click();
    await page.getByRole('button', { name: /^Let \$33\.00 be its price/ }).click();
    await expect(page.getByRole('button', { name: /^Let \$33\.00/ })).toHaveCount(0);
    await page.goto('/shelf/bt-liquid');
    await expect(page.getByRole('region', { name: 'Offers as a table' })).toContainText('$33.00');

    await page.goto(WRITE);
    await page.getByLabel('Packs of Bt liquid, 1 gal').fill('1');
    await page.getByRole('button', { name: 'It is ordered' }).click();
    await page.getByRole('link', { name: 'Look at it' }).click();
    await page.getByRole('button', { name: 'Nothing more will come' }).click();
    await expect(page.getByRole('main')).toContainText('closed, 1 pack never came');

    await page.goto('/shelf/suppliers/hollow');
    await page
      .getByRole('button', { name: /^Count \d+ for all of their offers$/ })
      .last()
      .click();
    await expect(page.getByRole('main')).toContainText(/Their offers say \d+ working days/);
    await expect(page.getByRole('button', { name: /^Count \d+ for all of their offers$/ })).toHaveCount(1);
  });
});
