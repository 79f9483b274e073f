import type { Page } from '@playwright/test';
import { demoShop } from '@/lib/demo/demo-shop';
import { Day } from '@/shared/time/day';
import { expect, test } from '../page-test';
import { bringShop, isSound } from './walk';

test.use({ viewport: { width: 390, height: 844 } });

const DEMO = demoShop(Day.parse('2026-04-14'));

/** Eight ingredients that get in each other's way: a powder in spoons, silicate, oil, an acid, and something short. */
const EIGHT = [
  ...[
    ['calcium-5', '4 mL/L'],
    ['iron-chelate-6', '1/8 tsp/gal'],
    ['seaweed-extract', '1 tsp/gal'],
    ['spreader-80', '6 drops/gal'],
    ['silicate-8', '4 mL/L'],
    ['bicarbonate', '2.5 g/L'],
    ['light-oil-98', '0.75 %'],
    ['citric-acid', '0.2 g/L'],
  ],
].map(([product = '', dose = '']) => ({ product, dose, use: null, order: null }));

const SHOP = {
  ...DEMO,
  shop: { ...DEMO.shop, name: 'Mixing Yard' },
  recipes: [
    ...DEMO.recipes,
    { id: 'eight', name: 'Eight in one', targetPh: 6.2, useWithinHours: 4, ingredients: EIGHT },
  ],
};

test('a sheet is opened from today, made smaller, printed on one side, and given a stock solution', async ({
  page,
}) => {
  await page.goto('/setup');
  await bringShop(page, SHOP);
  await page.goto('/today');
  await page.getByRole('region', { name: 'To mix' }).getByRole('link', { name: 'Calcium feed' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Calcium feed' })).toBeVisible();
  await justFourteen(page);
  await agreesWithTheApi(page);
  await page.goto('/mix/sheet?recipe=nothing&volume=lots');
  await expect(page.getByRole('alert').filter({ hasText: 'lots' })).toBeVisible();
  await expect(page.getByLabel('Volume, such as 2 gal')).toHaveValue('lots');
  await printsOnOneSide(page);
  await page.goto('/mix');
  await isSound(page);
  await makesASolution(page);
});

async function justFourteen(page: Page): Promise<void> {
  await page.getByText('Just some of the plants').click();
  await page.getByLabel('just some plants').check();
  await page
    .getByRole('textbox', { name: /Orchid bench/ })
    .first()
    .fill('14');
  await page.getByLabel('Sprayer').selectOption('1');
  await page.getByRole('button', { name: 'Show that' }).click();
  await expect(page).toHaveURL(/plants=orchid-bench%2F0%2F14/);
  await expect(page.getByRole('article')).toContainText(/14 .+ on Orchid bench/);
  await expect(page.getByRole('article')).toContainText(/hand sprayer/);
}

/** The sheet of a fixed volume shows what the API says of the same. */
async function agreesWithTheApi(page: Page): Promise<void> {
  const asked = 'recipe=calcium-feed&volume=1.5+gal';
  const { steps, cost } = await (await page.request.get(`/api/v1/mix?${asked}`)).json();
  await page.goto(`/mix/sheet?${asked}`);
  const pours = page.getByRole('region', { name: 'What goes in' }).getByRole('listitem').filter({ hasText: 'exactly' });
  await expect(pours).toHaveCount(steps.length);
  for (const [at, { amount, unit, measuredWith }] of steps.entries()) {
    await expect(pours.nth(at)).toContainText(`exactly ${Number(amount.toPrecision(4))} ${unit}`);
    await expect(pours.nth(at)).toContainText(measuredWith);
  }
  await expect(page.getByRole('region', { name: 'What it costs' })).toContainText(`$${Number(cost).toFixed(2)}`);
}

async function printsOnOneSide(page: Page): Promise<void> {
  await page.goto('/mix/sheet?recipe=eight&bench=orchid-bench&bench=fern-wall');
  await expect(page.getByText('Never in one tank before')).toBeVisible();
  await isSound(page);
  for (const format of ['Letter', 'A4']) {
    const pdf = (await page.pdf({ format })).toString('latin1');
    expect({ format, pages: pdf.match(/\/Type\s*\/Page\b/g)?.length }).toEqual({ format, pages: 1 });
  }
}

async function makesASolution(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Sheet for Calcium feed' }).first().click();
  const iron = page.getByRole('listitem').filter({ hasText: 'Iron chelate' });
  await iron.getByRole('link', { name: 'a stock solution' }).click();
  await expect(page.getByRole('region', { name: 'In recipes' })).toContainText(
    'of the solution instead of 1/8 tsp/gal',
  );
  await page.getByLabel('May be used for how many days').fill('ten');
  await page.getByRole('button', { name: 'It is made' }).click();
  await expect(page.getByLabel('May be used for how many days')).toHaveAccessibleDescription(/whole number of days/);
  await isSound(page);
  await page.getByLabel('May be used for how many days').fill('10');
  await page.getByRole('button', { name: 'It is made' }).click();
  await expect(page.getByText('The stock solution is on the shelf')).toBeVisible();
  await expect(page.getByRole('link', { name: /^Write it in.*Calcium feed$/ })).toBeVisible();
  await page.getByRole('link', { name: 'Look at it' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Iron chelate 6 % stock solution');
  const file = await (await page.request.get('/api/v1/shop')).json();
  expect(file.lots.at(-1)).toMatchObject({ receivedOn: '2026-04-14', expiresOn: '2026-04-24', count: 1 });
  await pourFromIt(page);
}

/** The recipe takes the solution from then on, as strong as before, once it is written in and saved. */
async function pourFromIt(page: Page): Promise<void> {
  await page.goto('/mix/recipes/calcium-feed');
  await page.getByRole('link', { name: /^Write it in/ }).click();
  await expect(page.getByRole('region', { name: 'poured from a stock solution' })).toContainText(/It was1\/8 tsp\/gal/);
  await isSound(page);
  await page.getByRole('button', { name: 'Save as a new version' }).click();
  await expect(page.getByRole('region', { name: 'What goes in' })).toContainText('Iron chelate 6 % stock solution');
}
