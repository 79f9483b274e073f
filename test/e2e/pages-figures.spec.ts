import { expect, test } from './page-test';

test('a figure opens its working from the keyboard, opens further in it, goes back and closes', async ({ page }) => {
  await page.goto('/today');
  const figure = page.getByRole('region', { name: 'Order' }).locator('[data-figure$="/orderBy"]').first();
  await figure.focus();
  await page.keyboard.press('Enter');
  const working = page.getByRole('dialog');
  await expect(working).toContainText('The latest working day of the supplier');
  await expect(working).toContainText('Safety days');
  await expect(working.getByRole('heading')).toBeFocused();

  await working.locator('a[data-figure$="/runsOutOn"]').click();
  await expect(working).toContainText('The first day whose sprayings cannot be met');
  await working.getByRole('button', { name: 'Back' }).click();
  await expect(working).toContainText('The latest working day of the supplier');

  await page.keyboard.press('Escape');
  await expect(working).toBeHidden();
  await expect(figure).toBeFocused();
});

test('a figure opened in another tab leads to the page of its working, with the same value', async ({ page }) => {
  await page.goto('/shelf?as=table');
  const figure = page.locator('[data-figure$="/runsOutOn"]').first();
  const [value, path] = [(await figure.textContent()) ?? '', await figure.getAttribute('href')];
  await page.goto(path ?? '');
  await expect(page.getByRole('main')).toContainText(value);
  await expect(page.getByRole('main')).toContainText('Usable today');
});

const PAGES = [
  ...['/today', '/week', '/shelf', '/shelf?as=table', '/shelf/calcium-5', '/buy/plan', '/buy/budget?by=bench'],
  '/buy/equivalents?recipe=thrips-turn&product=spinosad-half&curve=yes',
  '/buy?product=&price=150&use=170',
];

for (const path of PAGES) {
  test(`every figure on ${path} has a working behind it`, async ({ page, request }) => {
    await page.goto(path);
    const figures = page.locator('[data-figure]');
    const addresses = await figures.evaluateAll((found) => found.map((one) => one.getAttribute('data-figure') ?? ''));
    const once = [...new Set(addresses)];
    expect(once.length).toBeGreaterThan(20);
    // Every eighth, so that each kind is met on some page and the test stays short.
    for (const address of once.filter((_, place) => place % 8 === 0)) {
      const answer = await request.get(`/api/v1/working?figure=${encodeURIComponent(address)}`);
      expect(answer.status(), address).toBe(200);
      expect(await answer.json()).toMatchObject({ figure: address, rule: expect.stringMatching(/\w/) });
    }
  });
}

test('what the pages show is what the plan of the exported shop says', async ({ page, request }) => {
  const plan = await (await request.get('/api/v1/plan?weeks=26')).json();
  const waste = await (await request.get('/api/v1/working?figure=totals%2FwasteCost')).json();
  expect(waste.value).toEqual({ kind: 'money', micros: Number(plan.totals.wasteCost.replace('.', '')) });

  const product = plan.products.find(({ runsOutOn }: { runsOutOn: string | null }) => runsOutOn !== null);
  await page.goto(`/shelf/${product.product}`);
  await expect(page.getByRole('region', { name: 'Stock by week as a table' }).getByRole('row')).toHaveCount(27);
  const runsOut = await request.get(`/api/v1/working?figure=product%2F${product.product}%2FrunsOutOn`);
  expect((await runsOut.json()).value).toEqual({ kind: 'day', day: product.runsOutOn });
});
