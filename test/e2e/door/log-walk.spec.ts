import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { bringShop, isSound } from './walk';

test.use({ viewport: { width: 390, height: 844 } });

/** Sprayed from five to six this morning, under an interval of twelve hours: it is half past nine now. */
const SHOP = {
  format: 'bench-and-bottle/shop@1',
  shop: {
    ...{ name: 'Kept Records', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
    ...{ address: '3 Quarry Lane', emergency: { poisonLine: '555 0199', medical: 'Clinic, 555 0170' } },
  },
  products: [
    {
      ...{ id: 'soap', name: 'Soap', kind: 'insecticide', form: 'liquid' },
      contents: [{ substance: 'potassium salts', amount: 49, basis: '% w/w' }],
      label: { reiHours: 12, signalWord: 'WARNING', registration: '00000-0', firstAid: 'Rinse for 15 minutes.' },
    },
  ],
  lots: [{ id: 'l', product: 'soap', pack: '500 mL', paid: '20.00', receivedOn: '2026-01-05', keptIn: 'cabinet' }],
  benches: [
    { id: 'b', name: 'Fern row', place: 'by the door', plants: [{ name: 'Ferns', count: 40, mlPerPlant: 20 }] },
  ],
  recipes: [{ id: 'r', name: 'Soap wash', ingredients: [{ product: 'soap', dose: '10 mL/L' }] }],
  applications: [
    {
      ...{ id: 'a', recipe: 'r', benches: ['b'], by: 'Ada', sprayed: '1 L' },
      ...{ startedAt: '2026-04-14T05:00:00-04:00', endedAt: '2026-04-14T06:00:00-04:00' },
    },
  ],
};

const PDF = Buffer.from('%PDF-1.7\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\n%%EOF\n');

async function boardSays(page: Page, words: string | RegExp): Promise<void> {
  await page.goto('/keep-out');
  await expect(page.getByRole('listitem').filter({ hasText: 'Fern row' })).toContainText(words);
}

async function amend(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Amend it' }).click();
  await page.getByLabel('Ended', { exact: true }).fill('2026-04-14T05:30');
  await expect(page.getByLabel('Crop or site treated')).toHaveValue('Fern row: 40 Ferns');
  await expect(page.getByLabel('Location')).toHaveValue('Fern row (by the door); 3 Quarry Lane');
  await page.getByLabel('Soap', { exact: true }).fill('10 spoons');
  await page.getByLabel('Why it is amended').fill('the end was misread');
  await page.getByRole('button', { name: 'Write the amendment' }).click();
  await expect(page.getByText(/is not a unit|cannot be read|spoons/).first()).toBeVisible();
  await expect(page.getByLabel('Soap', { exact: true })).toHaveValue('10 spoons');
  await expect(page.getByLabel('Ended', { exact: true })).toHaveValue('2026-04-14T05:30');
  await isSound(page);
  await page.getByLabel('Soap', { exact: true }).fill('10 mL');
  await page.getByRole('button', { name: 'Write the amendment' }).click();
  await expect(page.getByRole('main').getByRole('alert')).toContainText(
    'the later end stays until somebody confirms it',
  );
  await page.getByRole('link', { name: 'Look at it' }).click();
}

test('a record is found, amended, confirmed and withdrawn, and nothing opens before somebody confirms it', async ({
  page,
}) => {
  await bringShop(page, SHOP);
  await page.goto('/log');
  await page.getByLabel('Person').fill('bo');
  await page.getByRole('button', { name: 'Find' }).click();
  await expect(page.getByText('No record is like that.')).toBeVisible();
  await page.getByLabel('Person').fill('ada');
  await page.getByRole('button', { name: 'Find' }).click();
  await expect(page.getByText('1 of 1 record')).toBeVisible();
  await isSound(page);
  await page.getByRole('link', { name: /Tue 14 April 2026 05:00 to 06:00/ }).click();
  const lacks = page.getByRole('list', { name: 'What this record lacks' });
  await expect(lacks).toContainText('The crop or site treated is unknown');
  await isSound(page);

  await amend(page);
  await expect(lacks).toHaveCount(0);
  await expect(page.getByRole('region', { name: /waits to be confirmed/ })).toContainText('14 April 2026 18:00');
  await isSound(page);
  await boardSays(page, 'until Tue 14 April 18:00');
  await page.goto('/log/a');
  await page.getByLabel('What makes it certain').fill('asked Ada');
  await page.getByRole('button', { name: 'It is right: let it count' }).click();
  await expect(page.getByText(/^Confirmed by owner, .*: asked Ada$/)).toBeVisible();
  await boardSays(page, 'until Tue 14 April 17:30');

  await page.goto('/log/a');
  await page.getByText('It was entered in error').click();
  await page.getByLabel('Why').fill('another bench');
  await page.getByRole('button', { name: 'Withdraw this record' }).click();
  await expect(page.getByRole('region', { name: /waits to be confirmed/ })).toBeVisible();
  await boardSays(page, 'until Tue 14 April 17:30');
  await page.goto('/log/a');
  await page.getByLabel('What makes it certain').fill('looked at the bench');
  await page.getByRole('button', { name: 'It is right: let it count' }).click();
  await expect(page.getByText('Withdrawn.', { exact: true })).toBeVisible();
  await boardSays(page, 'Nothing recorded');

  const csv = await (await page.request.get('/api/v1/log/csv')).text();
  expect(csv.trim().split('\r\n')).toHaveLength(4);
  await page.goto('/log/print');
  await expect(page.getByRole('listitem')).toContainText('WITHDRAWN, entered in error');
});

test('a safety data sheet is kept with its product, and is one tap from the board', async ({ page }) => {
  const shop = await bringShop(page, SHOP);
  await page.goto('/shelf/soap');
  const sheet = page.getByRole('region', { name: 'Safety data sheet' });
  const file = (name: string, buffer: Buffer) => ({ name, mimeType: 'application/pdf', buffer });
  await sheet.getByLabel('Keep its sheet').setInputFiles(file('page.pdf', Buffer.from('<html></html>')));
  await sheet.getByRole('button', { name: 'Keep it', exact: true }).click();
  await expect(sheet.getByRole('alert')).toContainText('This file is no PDF');
  await sheet.getByLabel('Keep its sheet').setInputFiles(file('soap sheet.pdf', PDF));
  await sheet.getByRole('button', { name: 'Keep it', exact: true }).click();
  await expect(sheet.getByRole('link', { name: 'soap sheet.pdf' })).toBeVisible();
  await isSound(page);

  await page.goto('/keep-out');
  await page.getByRole('link', { name: 'In an emergency' }).click();
  await expect(page.getByRole('link', { name: '555 0199' })).toHaveAttribute('href', 'tel:5550199');
  await expect(page.getByRole('region', { name: 'Sprayed lately' })).toContainText('Rinse for 15 minutes.');
  const link = page.getByRole('link', { name: /^Safety data sheet, kept 14 Apr 2026/ });
  const kept = await page.request.get(`${await link.getAttribute('href')}&shop=${shop}`);
  expect(kept.headers()['content-type']).toBe('application/pdf');
  expect(Buffer.compare(await kept.body(), PDF)).toBe(0);
  await expect(page.getByRole('region', { name: 'What is in the store' })).toContainText(/cabinetSoapWARNING1500 mL/);
  await isSound(page);
});
