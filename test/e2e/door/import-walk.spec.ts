import { demoShop } from '@/lib/demo/demo-shop';
import { Day } from '@/shared/time/day';
import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

test('a shop file becomes a shop of its own, and this device moves there only when it is told to', async ({ page }) => {
  await ownDemo(page);
  const demo = demoShop(Day.parse('2026-04-14'));
  const file = { ...demo, shop: { ...demo.shop, name: 'Brought In' } };
  await page.goto('/setup');
  const bring = page.getByRole('region', { name: 'Bring in a shop file' });
  await bring.getByLabel('or paste it').fill(JSON.stringify(file));
  await bring.getByRole('button', { name: 'Show what would change' }).click();
  await expect(bring.getByRole('heading', { name: /A new shop, Brought In/ })).toBeVisible();
  await bring.getByRole('button', { name: 'Make this shop' }).click();
  // What would be added is said in the same words before it is done.
  await expect(bring).toContainText(/Brought In: \d+ added/);
  await expect(page.getByRole('banner')).toContainText(demo.shop.name);
  await bring.getByRole('button', { name: 'Work in Brought In on this device' }).click();
  await expect(page.getByRole('banner')).toContainText('Brought In');
  await page.goto('/today');
  await expect(page.getByRole('banner')).toContainText('Brought In');
  await expect(page.getByRole('region', { name: 'Who may stand where' }).getByRole('listitem')).toHaveCount(8);
});

test('a file brought into the shop that is shown changes only what it says', async ({ page }) => {
  await ownDemo(page);
  const file = await (await page.request.get('/api/v1/shop')).json();
  await page.goto('/setup');
  const bring = page.getByRole('region', { name: 'Bring in a shop file' });
  file.benches[0].name = 'First bench of all';
  await bring.getByLabel('or paste it').fill(JSON.stringify({ ...file, programs: [], recipes: [], applications: [] }));
  await bring.getByLabel(/the shop of this device/).check();
  await bring.getByRole('button', { name: 'Show what would change' }).click();
  await bring.getByRole('button', { name: 'Make this change' }).click();
  await expect(bring.getByRole('link', { name: 'Go to today' })).toBeVisible();
  await expect(bring).toContainText('0 added, 1 changed');
  await page.goto('/today');
  await expect(page.getByRole('main')).toContainText('First bench of all');
  const after = await (await page.request.get('/api/v1/shop')).json();
  expect(after.programs).toEqual(file.programs);
});

/** Where an empty place leads on. */
const NEXT_STEPS = [
  ['/today', 'Bring in a shop file', '/setup'],
  ['/week', 'Bring in a shop file', '/setup'],
  ['/shelf', 'Enter the first product', '/shelf/new'],
] as const;

test('a shop of one’s own starts empty, and each place says what belongs there', async ({ page }) => {
  await ownDemo(page);
  await page.goto('/setup');
  const start = page.getByRole('region', { name: 'Start a shop of my own' });
  await start.getByLabel('What it is called').fill('Empty Benches');
  await start.getByLabel('Time zone').fill('Europe/Berlin');
  await start.getByLabel('Currency').fill('eur');
  await start.getByLabel('What one sprayer fill holds').fill('8 L');
  await start.getByRole('button', { name: 'Start it and work in it here' }).click();
  await expect(start).toContainText('Empty Benches is there');
  await expect(page.getByRole('banner')).toContainText('Empty Benches');

  for (const [path, step, href] of NEXT_STEPS) {
    await page.goto(path);
    await expect(page.getByRole('link', { name: step })).toHaveAttribute('href', href);
    await expect(page.getByRole('main')).toContainText(/no (bench|product) yet/);
  }

  await page.goto('/setup');
  await page.getByRole('button', { name: 'Work in Brought In on this device' }).click();
  await expect(page.getByRole('banner')).toContainText('Brought In');
});

test('a device that was given no shop among several is asked, and goes on to where it was going', async ({ page }) => {
  await ownDemo(page);
  await page.context().clearCookies();
  await page.goto('/week');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Which shop is this device in?');
  await isSound(page);
  await page
    .getByRole('button', { name: /^Work in .* on this device$/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Which shop is this device in?');
  expect(new URL(page.url()).pathname).toBe('/week');
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Which shop is this device in?');
});
