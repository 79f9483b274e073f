import { expect, test } from './page-test';

test('today says who may stand where, in words beside every strip', async ({ page }) => {
  await page.goto('/today');
  const benches = page.getByRole('region', { name: 'Who may stand where' }).getByRole('listitem');
  await expect(benches).toHaveCount(8);
  for (const bench of await benches.all()) {
    await expect(bench).toContainText(
      /closed until|keep out, not known|interval elapsed .+ as recorded|nothing recorded/,
    );
  }
});

test('a bench whose interval nobody entered reads keep out, and never open', async ({ page }) => {
  await page.goto('/today');
  const unknown = page.getByRole('listitem').filter({ hasText: 'no interval entered' });
  await expect(unknown.first()).toContainText('keep out, not known');
  await expect(page.getByRole('main')).not.toContainText(/\bsafe\b/i);
});

test('today shows what to mix, the days ahead, what to order and what will be wasted', async ({ page }) => {
  await page.goto('/today');
  for (const name of ['To mix', 'The next seven days', 'Order', 'About to be wasted']) {
    await expect(page.getByRole('region', { name })).toBeVisible();
  }
  await expect(page.getByRole('region', { name: 'Order' })).toContainText('runs out');
  await expect(page.getByRole('region', { name: 'About to be wasted' })).toContainText(/Left alone, .+ gone by/);
});

test('a coming spraying leads to its place in its week', async ({ page }) => {
  await page.goto('/today');
  const coming = page.getByRole('region', { name: 'The next seven days' }).getByRole('link').first();
  const name = (await coming.textContent()) ?? '';
  await coming.click();
  await expect(page).toHaveURL(/\/week\?from=\d{4}-\d{2}-\d{2}#spraying-/);
  await expect(page.getByRole('article', { name }).first()).toBeInViewport();
});

test('the week goes forth and back by seven days, and says what is wrong with a day that is none', async ({ page }) => {
  await page.goto('/week');
  const heading = page.getByRole('heading', { level: 1 });
  const first = (await heading.textContent()) ?? '';
  await page.getByRole('link', { name: 'Seven days on' }).click();
  await expect(heading).not.toHaveText(first);
  await page.getByRole('link', { name: 'Seven days back' }).click();
  await expect(heading).toHaveText(first);
  await page.goto('/week?from=tomorrow');
  await expect(page.getByRole('alert').filter({ hasText: 'tomorrow' })).toContainText('Write year-month-day');
});

test('a week that is past shows what was recorded', async ({ page }) => {
  await page.goto('/week');
  await page.getByRole('link', { name: 'Seven days back' }).click();
  await expect(page.getByText('as recorded').first()).toBeVisible();
  await expect(page.getByRole('article')).toHaveCount(0);
});

test('a day shows its sprayings with benches, litres, cost and reopening', async ({ page }) => {
  await page.goto('/week');
  const spraying = page.getByRole('article').first();
  await expect(spraying).toContainText('a batch');
  await expect(spraying).toContainText('a plant');
  await expect(spraying).toContainText('labour apart');
  await expect(spraying).toContainText(/reopens|keep out, not known/);
  await expect(spraying).toContainText(/\d fills? of/);
});

test('on paper no bench is said to be open, since paper does not learn what is sprayed later', async ({ page }) => {
  await page.goto('/today');
  await expect(page.getByText('interval elapsed').first()).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  for (const said of await page.getByText('interval elapsed').all()) await expect(said).toBeHidden();
  await expect(page.getByText('keep out, not known').first()).toBeVisible();
});
