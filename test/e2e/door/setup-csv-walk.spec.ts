import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { bringShop, isSound } from './walk';

test.use({ viewport: { width: 1280, height: 800 } });

const NEW_SHOP = {
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'Ten Bottles', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
};

const PRODUCTS = `name,kind,form,density,contents,rates,REI
Basil feed,nutrient,liquid,1.1,N 3 % w/w; K2O 2 % w/w,foliar: 2 mL/L to 5 mL/L,0
Soap spray,insecticide,liquid,1.02,potassium salts 49 % w/w,foliar: up to 20 mL/L,12
Dusting salts,fungicide,powder,,S 80 % w/w,foliar: 1 g/L to 3 g/L,24
`;
const OFFERS = `supplier;product;size;price;breaks;lead time
Mill Hands;Basil feed;1 qt;18,50;6: 17,00;4
Mill Hands;Soap spray;1 gal;61,00;;4
Mill Hands;Dusting salts;5 lb;22,75;;7
`;
const bottle = (product: string, size: string, place: number) =>
  `${product},${size},1,${place}.25,2026-01-${10 + place},2027-12-31,shelf ${place}`;
const lots = (size: string) =>
  [
    'product,size,count,paid,received,best before,place',
    ...[1, 2, 3, 4].map((place) => bottle('Basil feed', '1 qt', place)),
    ...[5, 6, 7].map((place) => bottle('Soap spray', size, place)),
    ...[8, 9, 10].map((place) => bottle('Dusting salts', '1 lb', place)),
  ].join('\r\n');

const csv = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

async function look(page: Page, list: string, file: { name: string; mimeType: string; buffer: Buffer }) {
  await page.getByRole('radio', { name: new RegExp(`^${list}`) }).check();
  await page.getByLabel('Choose a CSV file').setInputFiles(file);
  await page.getByRole('button', { name: 'Show what would change' }).click();
}

/** Wait until the page says how far it is. That stands there only for a moment, so the page itself watches for it. */
const progressShown = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const watch = new MutationObserver(() => {
          if (!/Checked [\d,]+ of 5,000 lines|Looking at the shop/.test(document.body.textContent ?? '')) return;
          watch.disconnect();
          resolve();
        });
        watch.observe(document.body, { subtree: true, childList: true, characterData: true });
      }),
  );

const bringIn = (page: Page, counts: string) =>
  page.getByRole('button', { name: `Bring in ${counts}`, exact: true }).click();

test('ten bottles come in by list: products, offers with a new supplier, lots with three bad lines that change nothing, and lots put right', async ({
  page,
}) => {
  await bringShop(page, NEW_SHOP);
  await page.goto('/shelf');
  await page.getByRole('link', { name: 'bring in the whole list' }).click();
  await look(page, 'Products', csv('products.csv', PRODUCTS));
  await bringIn(page, '3 new');
  await expect(page.getByText('The products are in: 3 added')).toBeVisible();

  await look(page, 'Offers', csv('offers.csv', OFFERS));
  await expect(page.getByRole('region', { name: 'What to put right' }).getByRole('row')).toHaveCount(4);
  await page.getByLabel('Also make this supplier: Mill Hands').check();
  await page.getByRole('button', { name: 'Look again with that' }).click();
  await bringIn(page, '3 new');
  await expect(page.getByText('The offers are in: 3 added, 0 changed. 1 supplier made.')).toBeVisible();

  await look(page, 'Lots', csv('lots.csv', lots('1 galon')));
  const faults = page.getByRole('region', { name: 'What to put right' });
  await expect(faults.getByRole('row')).toHaveCount(4);
  for (const line of [6, 7, 8]) {
    await expect(faults.getByRole('row', { name: new RegExp(`^${line} size "galon" is not a unit`) })).toBeVisible();
  }
  await expect(page.getByRole('button', { name: /^Bring in/ })).toHaveCount(0);
  await isSound(page);
  expect((await (await page.request.get('/api/v1/shop')).json()).lots).toEqual([]);

  await look(page, 'Lots', csv('lots.csv', lots('1 gal')));
  await bringIn(page, '10 new');
  await expect(page.getByText('The lots are in: 10 added')).toBeVisible();
  await page.getByRole('link', { name: 'Look at the shelf' }).click();
  await expect(page.getByRole('main')).toContainText('Soap spray');
  await expect(page.getByRole('main')).toContainText(/\$55\.\d\d|\$57\.50/);
});

test('five thousand lines come in within seconds, told line by line', async ({ page }) => {
  await bringShop(page, { ...NEW_SHOP, shop: { ...NEW_SHOP.shop, name: 'Five Thousand' } });
  await page.goto('/setup/csv');
  const lines = Array.from(
    { length: 5_000 },
    (_, place) => `Feed ${place},nutrient,liquid,"1,${place % 90}",foliar: 1 mL/L to 5 mL/L`,
  );
  const began = Date.now();
  const told = progressShown(page);
  await look(page, 'Products', csv('long.csv', ['name,kind,form,density,rates', ...lines].join('\n')));
  await told;
  await expect(page.getByRole('heading', { name: /5,000 new/ })).toBeVisible({ timeout: 30_000 });
  const looked = Date.now();
  await bringIn(page, '5,000 new');
  await expect(page.getByText('The products are in: 5,000 added')).toBeVisible({ timeout: 90_000 });
  test.info().annotations.push({
    type: 'seconds',
    description: `${(looked - began) / 1000} to look, ${(Date.now() - looked) / 1000} to save`,
  });
});
