import { expect, test } from './page-test';
import { wrongColours, wrongWith } from './soundness';

const PAGES = [
  { name: 'Today', path: '/today', heading: /^(Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day \d/ },
  { name: 'Week', path: '/week', heading: /and six days on$/ },
  { name: 'Modes of action', path: '/week/modes', heading: 'Modes of action' },
  { name: 'Shelf', path: '/shelf', heading: 'Shelf' },
  { name: 'Shelf as a table', path: '/shelf?as=table', heading: 'Shelf' },
  { name: 'a product', path: '/shelf/light-oil-98', heading: 'Light oil 98 %' },
  { name: 'Orders', path: '/buy/orders', heading: 'Orders' },
  { name: 'an order', path: '/buy/orders/order-oil-and-copper', heading: /^Order from Hollow Supply/ },
  { name: 'changing an order', path: '/buy/orders/order-calcium/edit', heading: /^Change the order/ },
  { name: 'writing an order', path: '/buy/orders/new?supplier=hollow', heading: 'Order from Hollow Supply' },
  { name: 'a purchase list', path: '/buy/orders/list', heading: 'Purchase list' },
  { name: 'the budget', path: '/buy/budget?by=bench', heading: 'Budget' },
  { name: 'Buy', path: '/buy', heading: 'Buy' },
  { name: 'the purchase plan', path: '/buy/plan', heading: 'Purchase plan' },
  { name: 'equivalents', path: '/buy/equivalents', heading: 'Cheaper equivalents' },
  {
    name: 'what could stand in a recipe',
    path: '/buy/equivalents?recipe=thrips-turn&product=spinosad-half',
    heading: 'Instead of Spinosad liquid 0.5 %',
  },
  { name: 'Keep-out', path: '/keep-out', heading: 'Keep-out' },
  { name: 'Keep-out notices', path: '/keep-out/notice', heading: 'Keep-out notices' },
  { name: 'Log', path: '/log', heading: 'Log' },
  { name: 'a record', path: '/log/a100', heading: /./ },
  { name: 'amending a record', path: '/log/a100/amend', heading: /^Amend / },
  { name: 'the log on paper', path: '/log/print?from=2026-04-01', heading: 'Records of sprayings' },
  { name: 'In an emergency', path: '/emergency', heading: 'In an emergency' },
  { name: 'Setup', path: '/setup', heading: 'Setup' },
  { name: 'the calendar', path: '/setup/calendar', heading: 'Calendar' },
  { name: 'alerts', path: '/setup/alerts', heading: 'Alerts' },
  { name: 'the clock', path: '/setup/clock', heading: 'The clock' },
  { name: 'the sources of the rules', path: '/setup/rules', heading: 'Where the rules come from' },
  { name: 'a board for the sales floor', path: '/setup/board', heading: 'A board for the sales floor' },
  { name: 'a working', path: '/working?figure=totals%2FwasteCost', heading: /wasted/ },
];

// One visit for each, because opening a page takes longer than most that is asked of it.
for (const { name, path, heading } of PAGES) {
  test(`${name} can be read and used by everybody, light and dark, on a screen of every width`, async ({ page }) => {
    await page.goto(path);
    const title = page.getByRole('heading', { level: 1, name: heading });
    await expect(title).toBeVisible();
    expect(await wrongWith(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await wrongColours(page)).toEqual([]);
    for (const width of [320, 390, 768, 1280]) {
      await page.setViewportSize({ width, height: 844 });
      await expect(title).toBeVisible();
      // A chart takes its new width a moment after its page does.
      const tooWide = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      await expect.poll(tooWide, { message: `${width} px` }).toBe(0);
    }
  });
}

test('every page has a title of its own, and the caution that the label governs', async ({ request }) => {
  const titles = new Map<string, string | undefined>();
  for (const { path } of PAGES) {
    const page = await (await request.get(path)).text();
    titles.set(path.split('?')[0] ?? '', /<title>([^<]+)<\/title>/.exec(page)?.[1]);
    expect(page, path).toMatch(/<footer[^>]*><b>The label governs/);
  }
  // One page can be shown in several ways.
  expect(new Set(titles.values()).size, [...titles].join('\n')).toBe(titles.size);
});

test('today fits one laptop screen in the demo shop', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.goto('/today');
  const below = await page
    .getByRole('main')
    .evaluate((main) => main.getBoundingClientRect().bottom - window.innerHeight);
  expect(below).toBeLessThanOrEqual(0);
});

test('the navigation names the places that exist, and every one of them opens', async ({ page }) => {
  await page.goto('/');
  const places = page.getByRole('navigation', { name: 'Places' }).getByRole('link');
  await expect(places).toHaveText(['Today', 'Week', 'Mix', 'Shelf', 'Buy', 'Keep-out', 'Log', 'Setup']);
  for (const name of ['Week', 'Mix', 'Shelf', 'Buy', 'Keep-out', 'Log', 'Setup', 'Today']) {
    await places.filter({ hasText: name }).click();
    await expect(places.filter({ hasText: name })).toHaveAttribute('aria-current', 'page');
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  }
});

test('a browser that asks for an icon by the usual name gets it', async ({ request }) => {
  const icon = await request.get('/favicon.ico');
  expect(icon.status()).toBe(200);
  expect(icon.headers()['content-type']).toBe('image/svg+xml');
});

test('the keyboard can skip the places and reach the page', async ({ page }) => {
  await page.goto('/today');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('main')).toBeFocused();
});

test.describe('where there is nothing', () => {
  test.use({ expectedErrors: [/404/] });

  test('an address that names nothing says so, and leads back', async ({ page }) => {
    for (const path of ['/nowhere', '/shelf/no-such-product', '/working?figure=no%2Fsuch%2Ffigure']) {
      const answer = await page.goto(path);
      expect(answer?.status()).toBe(404);
      await expect(page.getByRole('heading', { name: 'There is nothing here' })).toBeVisible();
      await expect(page.getByRole('link', { name: 'Go to today' })).toHaveAttribute('href', '/today');
    }
  });
});
