import type { BrowserContext, Page } from '@playwright/test';
import { isLong } from '../../runs';
import { expect, test } from '../page-test';
import { wetShop } from './a-wet-shop';
import { bringShop, hold, isSound } from './walk';

/*
 * A mix on a phone that keeps what it needs: at every screen the network is cut, the page is reloaded and a finger taps
 * twice. Each time it is one screen on, Back is one screen back, and in the end it is one record. The ordinary run walks
 * the worst case once; the long run walks every combination.
 */

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  serviceWorkers: 'allow',
  expectedErrors: [/ERR_INTERNET_DISCONNECTED|Failed to fetch|net::ERR_FAILED/],
});

const NOW = Date.parse('2026-04-14T13:30:00Z');
const PAUSES = [60, 150, 250, 400];

type Walk = { pause: number; isCut: boolean; isReloaded: boolean };
const WORST: Walk = { pause: 150, isCut: true, isReloaded: true };
const EVERY = PAUSES.flatMap((pause) =>
  [true, false].flatMap((isCut) => [true, false].map((isReloaded): Walk => ({ pause, isCut, isReloaded }))),
);

const title = (page: Page) => page.getByRole('heading', { level: 1 });

/** Until the device has kept the page, and what it is made of. */
const isKept = (page: Page) =>
  expect
    .poll(
      () =>
        page.evaluate(async () => {
          const [store = ''] = await caches.keys();
          const paths = (await (await caches.open(store)).keys()).map(({ url }) => new URL(url).pathname);
          return ['/mix/do', '/emergency', '/last-board'].every((path) => paths.includes(path)) && paths.length > 8;
        }),
      { timeout: 20_000 },
    )
    .toBe(true);

/** Two taps on the one thing to press, in the page itself, so that the pause between them is just that long. */
async function tapTwice(page: Page, pause: number): Promise<void> {
  await expect(page.locator('[data-settling]')).toHaveCount(0);
  // Whatever goes on is the last one, under the thumb.
  const box = await page.locator('[data-alone] button').last().boundingBox();
  if (!box) throw new Error('nothing to tap');
  const place = [box.x + box.width / 2, box.y + box.height / 2, pause] as const;
  await page.evaluate(async ([x, y, wait]) => {
    const tap = () => (document.elementFromPoint(x, y) as HTMLElement | null)?.click();
    tap();
    await new Promise((resume) => setTimeout(resume, wait));
    tap();
  }, place);
}

async function begin(page: Page): Promise<void> {
  await bringShop(page, wetShop(NOW));
  await page.goto('/mix/do?recipe=wash&bench=spare');
  await isKept(page);
  await page.getByRole('button', { name: 'Begin' }).tap();
  await expect(title(page)).toHaveText('Put on');
}

async function again(page: Page): Promise<void> {
  await page.reload();
  await page.getByRole('button', { name: 'Go on' }).tap();
}

/** Every screen up to spraying, in its turn. */
const SCREENS = ['Put on', 'Take down', 'Water first', 'Light oil', 'Bittern salt', 'Sour powder', 'Measure the pH'];

async function toSpraying(page: Page, context: BrowserContext, { pause, isCut, isReloaded }: Walk): Promise<void> {
  for (const [at, screen] of [...SCREENS, 'Fill up to'].entries()) {
    // Cut at every step; back for a moment between them, so that it is cut anew.
    if (isCut) await context.setOffline(at % 2 === 0);
    if (isReloaded) await again(page);
    await expect(title(page)).toHaveText(screen);
    await tapTwice(page, pause);
    await expect(title(page)).not.toHaveText(screen);
  }
  await expect(title(page)).toHaveText('Spray');
}

async function spraying(page: Page, context: BrowserContext, { isCut, isReloaded }: Walk): Promise<void> {
  if (isCut) await context.setOffline(true);
  await hold(page, 'Start spraying now');
  await expect(page.getByText(isCut ? 'The shop does not know yet.' : 'The shop knows.')).toBeVisible();
  if (isReloaded) await again(page);
  await hold(page, 'The last plant is sprayed');
  await expect(title(page)).toHaveText('Done');
  if (isReloaded) await again(page);
  await page.getByRole('button', { name: 'Write it into the record' }).tap();
  if (isCut) await expect(page.getByText('Not sent yet: kept on this device.')).toBeVisible();
  await context.setOffline(false);
  await expect(title(page)).toHaveText('Oil wash: on record', { timeout: 45_000 });
}

for (const walk of isLong ? EVERY : [WORST]) {
  test(`taps ${walk.pause} ms apart, ${walk.isCut ? 'cut' : 'not cut'}, ${walk.isReloaded ? 'reloaded' : 'left'} at every step: one record`, async ({
    page,
    context,
  }) => {
    await begin(page);
    await toSpraying(page, context, walk);
    await spraying(page, context, walk);
    await expect(page.getByRole('region', { name: 'After spraying' })).toContainText('Rinse the sprayer three times');
    const { applications, underWay } = await (await page.request.get('/api/v1/shop')).json();
    expect(applications).toHaveLength(2);
    expect(underWay).toBeUndefined();
    const { benches } = await (await page.request.get('/api/v1/keepout')).json();
    expect(benches.find((one: { bench: string }) => one.bench === 'spare').state).not.toBe('open');
  });
}

test('without a network Back, Emergency and Today work, and no page shows a bench as open', async ({
  page,
  context,
}) => {
  await begin(page);
  await context.setOffline(true);
  await tapTwice(page, 250);
  await expect(title(page)).toHaveText('Take down');
  await page.goBack();
  await expect(title(page)).toHaveText('Put on');
  await page.goBack();
  await expect(title(page), 'never out of the mix').toHaveText('Put on');

  await page.getByRole('link', { name: 'In an emergency' }).tap();
  await expect(title(page)).toHaveText('In an emergency');
  await expect(page.getByText(/No network: this page is as it was \d+ min ago/)).toBeVisible();
  await isSound(page);
  for (const place of ['/today', '/keep-out', '/week']) {
    await page.goto(place);
    await expect(title(page)).toHaveText('No network: KEEP OUT of every bench');
    await expect(page.getByRole('main')).toContainText(/The shop was last heard \d+ min ago/);
    await expect(page.getByText('Spare shelf: KEEP OUT (not known)')).toBeVisible();
    await expect(page.getByRole('main')).not.toContainText(/interval elapsed|nothing recorded/i);
  }
  await isSound(page);
  await context.setOffline(false);
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await expect(title(page), 'it finds the shop again by itself').not.toHaveText('No network: KEEP OUT of every bench');
  await page.waitForLoadState('load');
  await context.setOffline(true);
  await page.goto('/today');
  await page.getByRole('link', { name: 'The mix that was opened here last' }).tap();
  await page.getByRole('button', { name: 'Go on' }).tap();
  await expect(title(page)).toHaveText('Put on');
});

test('a page that cannot refresh stays, and says how old it is', async ({ page, context }) => {
  await bringShop(page, wetShop(NOW));
  await page.goto('/today');
  // The device fetches what keeps its pages on the first page of its shop, and the network goes only after that.
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await context.setOffline(true);
  // An answer that was on its way when the network went still counts, so the page is come back to until none is.
  await expect(async () => {
    await page.evaluate(() => window.dispatchEvent(new Event('online')));
    await expect(page.getByText('KEEP OUT of every bench (not confirmed)')).toBeVisible({ timeout: 2_000 });
  }).toPass();
  await expect(page.getByText(/The shop does not answer: this page is as it was at 09:30/)).toBeVisible();
  await context.setOffline(false);
  await page.evaluate(() => window.dispatchEvent(new Event('online')));
  await expect(page.getByText('The shop does not answer')).toHaveCount(0);
});

test('another build throws away what the one before kept, and keeps the same pages anew', async ({ page }) => {
  await begin(page);
  const stores = () => page.evaluate(() => caches.keys());
  const [before = ''] = await stores();
  await page.evaluate(() => navigator.serviceWorker.register('/sw.js?build=next'));
  await expect.poll(stores, { timeout: 20_000 }).toEqual(['kept next']);
  expect(before).not.toBe('kept next');
  const kept = await page.evaluate(async () =>
    (await (await caches.open('kept next')).keys()).map(({ url }) => new URL(url).pathname),
  );
  expect(kept).toEqual(expect.arrayContaining(['/mix/do', '/emergency']));
});
