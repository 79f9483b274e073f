import { expect, test } from './page-test';
import { wrongWith } from './soundness';

test('the shelf answers while one types and chooses, and one key turns it into a table and back', async ({ page }) => {
  await page.goto('/shelf');
  const products = page.getByRole('heading', { level: 2 });
  await page.getByLabel('Name or substance').fill('spinosad');
  await expect(products).toHaveCount(2);
  await expect(page.getByRole('status')).toContainText('2 of 18 products');
  await page.keyboard.press('t');
  await expect(page).toHaveURL(/find=spinosadt/);
  await page.getByLabel('Name or substance').fill('');
  await page.getByLabel('Stands in').selectOption('potting shed');
  await expect(products).toHaveText(['Wettable sulfur 80 %']);
  await page.getByLabel('Stands in').selectOption('');
  await page.getByLabel('In order of').selectOption('value');
  await expect(products.first()).toHaveText('Light oil 80 %');
  await page.getByLabel('In order of').selectOption('reorder');
  await expect(page).toHaveURL(/sort=reorder/);
  await expect(page.getByRole('listitem').filter({ has: products }).first()).toContainText(
    /reorder|no offer|Not known when it runs out/,
  );

  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('t');
  await expect(page.getByRole('table')).toBeVisible();
  await expect(page).toHaveURL(/as=table/);
  await expect(page.getByRole('rowheader', { name: /lot oil-b no\. 1/ })).toBeVisible();
  expect(await wrongWith(page)).toEqual([]);
  await page.keyboard.press('t');
  await expect(products.first()).toBeVisible();
  expect(await wrongWith(page)).toEqual([]);
  for (const sum of ['value', 'wasteCost', 'replaceCost']) {
    await expect(page.locator(`[data-figure="shelf/${sum}"]`)).toHaveText(/^\$\d/);
  }
});

test('one key finds a bottle from anywhere, and can be turned off', async ({ page }) => {
  await page.goto('/today');
  const dialog = page.getByRole('dialog', { name: 'Find anything' });
  await expect(async () => {
    await page.keyboard.press('/');
    await expect(dialog).toBeVisible({ timeout: 1_000 });
  }).toPass();
  await page.keyboard.type('oil');
  await expect(dialog.getByRole('status')).toContainText('found. Enter opens Light oil 80 %.');
  await expect(dialog.getByRole('heading')).toHaveText(['Products', 'Bottles', 'Recipes']);
  expect(await wrongWith(page)).toEqual([]);
  await dialog.getByRole('searchbox').fill('oil-b');
  await expect(dialog.getByRole('status')).toContainText('Enter opens Light oil 98 %, 1 qt.');
  await page.keyboard.press('ArrowDown');
  await expect(dialog.getByRole('link', { name: /lot oil-b no\. 1/ })).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/shelf\/bottle\/oil-b\/no-1$/);

  await page.goto('/search?q=citrus');
  await expect(page.getByRole('link', { name: /^Citrus/ }).first()).toHaveAttribute('href', /^\/today#bench-/);
  await page.getByRole('checkbox', { name: /Single keys/ }).uncheck();
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('/');
  await expect(dialog).toBeHidden();
});

test('a printed label fits its sheet, and a photo of it opens its bottle', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark', media: 'print' });
  await page.goto('/shelf/labels?lots=silicate-c&sheet=a4&skip=2');
  const printed = (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString('latin1');
  expect(printed.match(/\/Type \/Page\b/g)).toHaveLength(1);
  // A4 in points of a 72nd of an inch.
  const [width = 0, height = 0] = (/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(printed) ?? []).slice(1).map(Number);
  expect([Math.round(width), Math.round(height)]).toEqual([595, 842]);
  const label = page.getByRole('listitem').filter({ hasText: 'silicate-c no. 2' });
  await expect(label).toContainText('Potassium silicate 26 %');
  await expect(page.getByRole('contentinfo')).toBeHidden();
  const photo = { name: 'label.png', mimeType: 'image/png', buffer: await label.screenshot({ animations: 'allow' }) };

  await page.emulateMedia({ colorScheme: 'light', media: 'screen' });
  await page.goto('/shelf/scan');
  await page.getByLabel('Take or choose a photo').setInputFiles(photo);
  await expect(page).toHaveURL(/\/shelf\/bottle\/silicate-c\/no-2$/);
});

test('a typed code opens a bottle, a wrong digit is told, and an unknown bar code can be entered', async ({ page }) => {
  await page.goto('/shelf/scan');
  const code = page.getByLabel('Code, number or name');
  await code.fill('9506000134353');
  await page.getByRole('button', { name: 'Open' }).click();
  await expect(page.getByRole('main').getByRole('alert')).toContainText('the last one would be 2');
  await code.fill('9506000134352');
  await page.getByRole('button', { name: 'Open' }).click();
  await expect(page.getByRole('link', { name: /new product/ })).toHaveAttribute(
    'href',
    '/shelf/new?gtin=9506000134352',
  );
  await code.fill('bb1:oil-b/1');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/shelf\/bottle\/oil-b\/no-1$/);
});

for (const path of ['/shelf/labels?lots=oil-b', '/search?q=oil', '/shelf/scan?code=9506000134353']) {
  test(`${path} can be read and used by everybody, on a small phone in the dark`, async ({ page }) => {
    await page.setViewportSize({ width: 320, height: 700 });
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.goto(path);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
    expect(await wrongWith(page)).toEqual([]);
  });
}

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('a code is typed, and anything is found', async ({ page }) => {
    await page.goto('/shelf/scan');
    await page.getByLabel('Code, number or name').fill('light oil');
    await page.getByRole('button', { name: 'Open' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Find anything' })).toBeVisible();
    await page.getByRole('searchbox').fill('BB1:oil-b/1');
    await page.getByRole('button', { name: 'Find' }).click();
    await expect(page).toHaveURL(/\/shelf\/bottle\/oil-b\/no-1$/);
  });
});
