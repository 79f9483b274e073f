import { expect, test } from './page-test';

const IMPORT = 'Bring in a shop file';

test('the shop can be saved as a file, and bringing that file back would change nothing', async ({ page, request }) => {
  await page.goto('/setup');
  await expect(page.getByRole('link', { name: 'Save as a shop file' })).toHaveAttribute('href', '/api/v1/shop');
  const file = await (await request.get('/api/v1/shop')).body();
  const bring = page.getByRole('region', { name: IMPORT });
  await bring
    .getByLabel('Choose a file')
    .setInputFiles({ name: 'shop.json', mimeType: 'application/json', buffer: file });
  await bring.getByLabel(/the shop of this device/).check();
  await bring.getByRole('button', { name: 'Show what would change' }).click();
  await expect(bring.getByRole('heading', { name: /0 added, 0 changed/ })).toBeVisible();
  await expect(bring.getByRole('button', { name: /^Make/ })).toHaveCount(0);
});

test('what a changed file would do is shown from what to what, before anything is done', async ({ page, request }) => {
  const file = await (await request.get('/api/v1/shop')).json();
  file.benches[0].name = 'Front bench, renamed';
  await page.goto('/setup');
  const bring = page.getByRole('region', { name: IMPORT });
  await bring
    .getByLabel('Choose a file')
    .setInputFiles({ name: 'shop.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(file)) });
  await bring.getByLabel(/the shop of this device/).check();
  await bring.getByRole('button', { name: 'Show what would change' }).click();
  await expect(bring.getByRole('heading', { name: /0 added, 1 changed/ })).toBeVisible();
  await expect(bring).toContainText('to Front bench, renamed');
  await bring.getByRole('button', { name: 'Leave it' }).click();
  await page.goto('/today');
  await expect(page.getByText('Front bench, renamed')).toHaveCount(0);
});

test.describe('a file with faults', () => {
  // The browser reports every answer that is not 2xx, and this one is meant to be.
  test.use({ expectedErrors: [/422/] });

  test('is refused with each place and what to write instead, and nothing typed is lost', async ({ page, request }) => {
    const file = await (await request.get('/api/v1/shop')).json();
    file.shop.timeZone = 'Nowhere/Else';
    file.benches[0].custmers = true;
    await page.goto('/setup');
    const bring = page.getByRole('region', { name: IMPORT });
    await bring.getByLabel('or paste it').fill(JSON.stringify(file));
    await bring.getByRole('button', { name: 'Show what would change' }).click();
    const faults = bring.getByRole('list', { name: 'What to put right' }).getByRole('listitem');
    await expect(faults).toHaveCount(2);
    await expect(faults.filter({ hasText: 'timeZone' })).toContainText('Write a region and a city');
    await expect(faults.filter({ hasText: 'custmers' })).toHaveCount(1);
    await expect(bring.getByLabel('or paste it')).toHaveValue(/Nowhere/);
  });
});

test('without a file, the form says what is missing', async ({ page }) => {
  await page.goto('/setup');
  await page.getByRole('button', { name: 'Show what would change' }).click();
  await expect(page.getByText('There is no file yet.')).toBeVisible();
});

test('a shop that is half typed survives a reload, and a wrong field keeps what was typed', async ({ page }) => {
  await page.goto('/setup');
  const start = page.getByRole('region', { name: 'Start a shop of my own' });
  await start.getByLabel('What it is called').fill('My Own Shop');
  await start.getByLabel('What one sprayer fill holds').fill('two gallons');
  await page.reload();
  await expect(start.getByLabel('What it is called')).toHaveValue('My Own Shop');
  await start.getByLabel('Time zone').fill('America/New_York');
  await start.getByRole('button', { name: 'Start it and work in it here' }).click();
  await expect(start.getByLabel('What one sprayer fill holds')).toHaveAttribute('aria-invalid', 'true');
  await expect(start.getByLabel('What one sprayer fill holds')).toHaveAccessibleDescription(/two gallons/);
  await expect(start.getByLabel('What it is called')).toHaveValue('My Own Shop');
  await expect(start.getByLabel('What one sprayer fill holds')).toHaveValue('two gallons');
});
