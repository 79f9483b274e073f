import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

test.use({ viewport: { width: 390, height: 844 } });

test('a recipe is typed in four ways on a phone, priced while it is typed, saved, and changed', async ({ page }) => {
  await ownDemo(page);
  await page.goto('/mix/recipes/new');
  await page.getByLabel('What it is called').fill('Four ways');
  await page.getByRole('button', { name: 'Add a line' }).click();
  const lines = page.getByRole('region', { name: 'What goes in' }).getByRole('listitem');
  for (const [at, product, dose] of [
    [0, 'spinosad-half', '40 ppm spinosad'],
    [1, 'light-oil-98', '96 fl oz/100 gal'],
    [2, 'seaweed-extract', '1 tsp/gal'],
    [3, 'spreader-80', '6 oz/gal'],
  ] as const) {
    await lines.nth(at).getByLabel('Product').selectOption(product);
    await lines.nth(at).getByLabel('Dose').fill(dose);
  }
  const total = page.getByRole('region', { name: 'What it comes to' });
  await expect(lines.nth(0)).toContainText('spinosad 40 mg/L');
  await expect(lines.nth(1)).toContainText('7.5 mL a litre · 28.4 mL a gallon');
  await expect(lines.nth(3)).toContainText('fluid ounces or ounces by weight?');
  await expect(total).toContainText('Cost not known');
  await page.reload();
  await expect(lines.nth(3).getByLabel('Dose')).toHaveValue('6 oz/gal');
  await page.getByRole('button', { name: 'Save this recipe' }).click();
  await expect(lines.nth(3).getByLabel('Dose')).toHaveAttribute('aria-invalid', 'true');
  await expect(lines.nth(0).getByLabel('Product')).toHaveValue('spinosad-half');

  await lines.nth(3).getByLabel('Dose').fill('6 drops/gal');
  await expect(total).toContainText(/\$[\d.]+ a litre/);
  await page.getByRole('button', { name: 'Move Spreader 80 % up' }).click();
  const order = page.getByRole('region', { name: 'Order of addition' });
  await expect(order).toContainText('This recipe gives Spreader 80 % this place');
  await isSound(page);
  await page.getByRole('button', { name: 'Save this recipe' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Four ways' })).toBeVisible();
  await expect(page.getByText('No program uses it.')).toBeVisible();

  await page.getByRole('link', { name: 'Change this recipe' }).click();
  await page
    .getByRole('listitem', { name: /Seaweed/ })
    .getByLabel('Dose')
    .fill('2 tsp/gal');
  await page.getByRole('button', { name: 'Save as a new version' }).click();
  const versions = page.getByRole('region', { name: 'Versions' });
  await expect(versions).toContainText(/Version 2.*from 1 tsp\/gal to 2 tsp\/gal/s);
  await isSound(page);
});

test('a bench gets its area, and the mL per plant of a trial that was measured', async ({ page }) => {
  await ownDemo(page);
  await page.goto('/setup/benches/new');
  await page.getByLabel('What it is called').fill('Trial bench');
  await page.getByLabel('Area', { exact: true }).fill('130 sq feet of it');
  const plants = page.getByRole('listitem', { name: /Plants 1/ });
  await plants.getByLabel('Plants', { exact: true }).fill('Fern');
  await plants.getByLabel('How many').fill('40');
  await plants.getByText('Find the mL per plant').click();
  const trial = plants.getByRole('group', { name: 'Trial 1 on Fern' });
  await trial.getByLabel('Plants sprayed').fill('12');
  await trial.getByLabel('Put in').fill('1 L');
  await trial.getByLabel('Left').fill('640 mL');
  await plants.getByRole('button', { name: 'Use 30 mL' }).click();
  await expect(plants.getByLabel('mL per plant', { exact: true })).toHaveValue('30');
  await page.getByRole('button', { name: 'Save this bench' }).click();
  await expect(page.getByLabel('Area', { exact: true })).toHaveAccessibleDescription(/no unit of area/);
  await page.getByLabel('Area', { exact: true }).fill('130 sq ft');
  await isSound(page);
  await page.getByRole('button', { name: 'Save this bench' }).click();
  await expect(page.getByRole('listitem').filter({ hasText: 'Trial bench' })).toContainText('40 plants in one group');
  const { benches } = await (await page.context().request.get('/api/v1/shop')).json();
  expect(benches.at(-1)).toMatchObject({ name: 'Trial bench', area: '130 sq ft', plants: [{ mlPerPlant: 30 }] });
});
