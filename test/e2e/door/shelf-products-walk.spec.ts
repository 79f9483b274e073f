import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { bringShop, isSound, ownDemo } from './walk';

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  // A product that was just removed may be asked for once more while its page is left.
  expectedErrors: [/404 \(Not Found\)/],
});

const open = (page: Page, title: string) => page.locator('summary', { hasText: title }).tap();

test('a product is entered by touch, refused, half typed, corrected and weighed, and then its spray has a cost', async ({
  page,
}) => {
  await page.goto('/setup');
  const shop = { name: 'Salt Shed', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' };
  const shopId = await bringShop(page, { format: 'bench-and-bottle/shop@1', shop });

  await page.goto('/shelf/new');
  await page.getByLabel('What it says on the bottle').fill('Magnesium sulfate');
  await page.getByLabel('What it is for').selectOption('nutrient');
  await page.getByLabel('Liquid or powder').selectOption('powder');
  await open(page, 'What it feeds');
  await page.getByLabel('Substance').fill('Mg');
  await page.getByLabel('How much').fill('9,8');
  await page.getByRole('button', { name: 'One more substance' }).tap();
  await expect(page.getByLabel('Substance').nth(1)).toBeFocused();
  await page.getByLabel('Substance').nth(1).fill('Sulphur');
  await page.getByLabel('How much').nth(1).fill('12.9');
  await open(page, 'What its label says');
  await expect(page.getByLabel('Modes of action')).toBeHidden();
  await page.getByLabel('For which use').fill('foliar');
  await page.getByLabel('Highest dose').fill('2 tsp');
  await isSound(page);

  // Half typed, through a reload.
  await page.reload();
  await expect(page.getByLabel('What it says on the bottle')).toHaveValue('Magnesium sulfate');
  await expect(page.locator('[name="contents[1].substance"]')).toHaveValue('Sulphur');

  // Refused, with each fault beside its field, and nothing lost.
  await page.getByRole('button', { name: 'Put it on the shelf' }).tap();
  const amount = page.getByLabel('How much').first();
  await expect(amount).toHaveAccessibleDescription(/Write how much of it there is/);
  await expect(amount).toBeFocused();
  await expect(amount).toHaveValue('9,8');
  await expect(page.getByLabel('Highest dose')).toHaveAccessibleDescription(/does not say per how much spray/);
  await expect(page.getByLabel('For which use')).toHaveValue('foliar');
  await isSound(page);

  await amount.fill('9.8');
  await page.getByLabel('Highest dose').fill('2 tsp/gal');
  await page.getByRole('button', { name: 'Put it on the shelf' }).tap();
  await expect(page).toHaveURL(/\/shelf\/magnesium-sulfate$/);
  const unknown = page.getByRole('region', { name: 'Not known yet' });
  await expect(unknown).toContainText('People keep out until an interval is entered');
  await expect(unknown).toContainText('weigh one level teaspoon');
  await expect(unknown).toContainText('Nobody can tell when it dies');

  // Corrected: what was not known is entered where it is asked for.
  await unknown.getByRole('listitem').filter({ hasText: 'keep out' }).getByRole('link').tap();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Correct Magnesium sulfate');
  const hours = page.getByLabel('Hours people keep out');
  if (!(await hours.isVisible())) await open(page, 'What its label says');
  await hours.fill('until dry');
  await page.getByRole('button', { name: 'Keep these changes' }).tap();
  await expect(hours).toHaveAccessibleDescription(/hours/);
  await hours.fill('0 h');
  await page.getByRole('button', { name: 'Keep these changes' }).tap();
  await expect(page).toHaveURL(/\/shelf\/magnesium-sulfate$/);
  await expect(unknown).not.toContainText('keep out');

  // The same name again is asked about once, and may be kept.
  await page.goto('/shelf/new');
  await page.getByLabel('What it says on the bottle').fill('magnesium Sulfate');
  await page.getByLabel('What it is for').selectOption('nutrient');
  await page.getByLabel('Liquid or powder').selectOption('liquid');
  await page.getByRole('button', { name: 'Put it on the shelf' }).tap();
  const both = page.getByLabel('Yes, keep both under this name');
  await expect(both).toHaveAccessibleDescription(/already a product of this name, nutrient, powder/);
  await both.check();
  await page.getByRole('button', { name: 'Put it on the shelf' }).tap();
  await expect(page).toHaveURL(/\/shelf\/magnesium-sulfate-2$/);

  // Entered by mistake: put away, and, since nothing uses it, removed.
  await open(page, 'Put it away or remove it');
  await page.getByRole('button', { name: 'Put it away' }).tap();
  await expect(page.getByRole('button', { name: 'Take it out again' })).toBeVisible();
  await page.getByRole('button', { name: 'Remove it for good' }).tap();
  await expect(page).toHaveURL(/\/shelf$/);

  // A recipe doses it by the spoon.
  const file = await (await page.request.get('/api/v1/shop')).json();
  const product = 'magnesium-sulfate';
  const planned = {
    suppliers: [{ id: 's', name: 'Salt works' }],
    offers: [{ id: 'o', supplier: 's', product, pack: '1 kg', price: '10.00' }],
    benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 50, mlPerPlant: 20 }] }],
    recipes: [{ id: 'r', name: 'Salt spray', ingredients: [{ product, dose: '2 tsp/gal' }] }],
    programs: [
      {
        id: 'g',
        recipes: ['r'],
        benches: ['b'],
        startsOn: '2026-04-20',
        startTime: '17:00',
        minutes: 20,
        repeat: 'FREQ=WEEKLY',
      },
    ],
  };
  await bringShop(page, { ...file, ...planned }, shopId);
  await page.goto(`/shelf/${product}`);
  await page.getByRole('link', { name: 'Weigh a teaspoon' }).tap();
  const sprays = page.getByRole('region', { name: 'What rests on it' });
  await expect(sprays).toContainText('a litre costs not known');
  await page.getByLabel('Reading 1, g').fill('4.8');
  await page.getByLabel('Reading 2, g').fill('7');
  await expect(page.getByText('Measure more spoons')).toBeVisible();
  await page.getByLabel('Reading 2, g').fill('5.0');
  await page.getByLabel('Reading 3, g').fill('4.9');
  await expect(page.getByText('Measure more spoons')).toBeHidden();
  await isSound(page);
  await page.getByRole('button', { name: 'Keep this weight' }).tap();
  await expect(page.getByRole('alert').filter({ hasText: '4.9 g in a level teaspoon is kept' })).toBeVisible();
  // 9.8 g in 3.785 L, at a cent the gram.
  await expect(sprays).toContainText('a litre costs 2.59 ¢');

  await page.goto(`/shelf/${product}`);
  await open(page, 'Put it away or remove it');
  await page.getByRole('button', { name: 'Remove it for good' }).tap();
  await expect(page.getByText('recipe Salt spray; offer 1 kg of Magnesium sulfate from Salt works')).toBeVisible();
});

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('a product is entered with several substances, and its fault stands beside the field', async ({ page }) => {
    await ownDemo(page);
    await page.goto('/shelf/new');
    await page.getByLabel('What it says on the bottle').fill('Plain iron');
    await page.getByLabel('What it is for').selectOption('nutrient');
    await page.getByLabel('Liquid or powder').selectOption('liquid');
    await page.locator('summary', { hasText: 'What is in it' }).click();
    await page.getByLabel('Substance').nth(2).fill('Fe');
    await page.getByLabel('How much').nth(2).fill('six');
    await page.getByRole('button', { name: 'Put it on the shelf' }).click();
    const amount = page.locator('[name="contents[2].amount"]');
    await expect(amount).toHaveAccessibleDescription(/Write how much of it there is/);
    await amount.fill('6');
    await page.getByRole('button', { name: 'Put it on the shelf' }).click();
    await page.getByRole('link', { name: 'Look at it' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Plain iron');
    await expect(page.getByRole('region', { name: 'What its label says' })).toContainText('Fe 6 % w/w');
  });
});
