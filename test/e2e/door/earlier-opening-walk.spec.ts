import type { Page } from '@playwright/test';
import type { WrittenShopFile } from '@/shared/shop-file/contract';
import { expect, test } from '../page-test';
import { bringShop, isSound } from './walk';

test.use({ viewport: { width: 390, height: 844 } });

/*
 * The tests' server stands still at 09:30 of Tuesday 14 April. The ferns were sprayed by hand at 06:00, and the spraying of
 * 09:15 has no record.
 */
const SHOP: WrittenShopFile = {
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'A shop at half past nine', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
  products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', label: { reiHours: 1 } }],
  benches: [{ id: 'b', name: 'Ferns', plants: [{ name: 'Ferns', count: 12, mlPerPlant: 18 }] }],
  recipes: [{ id: 'r', name: 'Soap spray', ingredients: [{ product: 'p', dose: '12 mL/gal' }] }],
  programs: [
    {
      ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-04-14', startTime: '09:15', minutes: 45 },
      repeat: 'FREQ=DAILY',
    },
  ],
  applications: [
    { id: 'a', recipe: 'r', benches: ['b'], startedAt: '2026-04-14T10:00:00Z', endedAt: '2026-04-14T10:20:00Z' },
  ],
};

const boardSays = async (page: Page, what: string | RegExp): Promise<void> => {
  await page.goto('/keep-out');
  await expect(page.getByRole('main').getByRole('listitem')).toContainText(what);
};

test('a record of the morning is not the spraying of 09:15, and another zone leaves that where it began', async ({
  page,
}) => {
  await bringShop(page, SHOP);
  await boardSays(page, /KEEP OUT \(not known\).*Soap spray was due .*09:15/s);
  await page.goto('/setup/shop');
  await page.getByLabel('Time zone').fill('America/Los_Angeles');
  await page.getByRole('button', { name: 'Save the shop' }).click();
  await page.waitForURL('**/setup');
  await boardSays(page, /KEEP OUT \(not known\).*Soap spray was due .*06:15/s);
});

test('a start is moved to later only with a reason and a tick', async ({ page }) => {
  await bringShop(page, SHOP);
  await page.goto('/setup/programs/g');
  const start = page.getByLabel('Starts at');
  const save = page.getByRole('button', { name: 'Save this program' });
  await start.fill('11:00');
  await save.click();
  const asked = page.getByRole('group', { name: /A bench would open earlier/ });
  await expect(asked).toContainText('Ferns: now KEEP OUT, not known until when; then open at once.');
  await isSound(page);
  const other = await page.context().newPage();
  await boardSays(other, 'KEEP OUT (not known)');

  const why = page.getByLabel('How you know that people may go in');
  await why.fill('Ada has not begun yet');
  await save.click();
  await expect(page.getByRole('checkbox', { name: /I am certain/ })).not.toBeChecked();
  await expect(why).toHaveValue('Ada has not begun yet');
  await boardSays(other, 'KEEP OUT (not known)');

  await page.getByRole('checkbox', { name: /I am certain/ }).check();
  await save.click();
  await page.waitForURL('**/setup/programs');
  await boardSays(other, /Interval elapsed .*as recorded/);
});
