import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { wetShop } from './a-wet-shop';
import { bringShop, hold, isSound, onToSpraying, press } from './walk';

/*
 * The moment of spraying on a phone, watched from a second device: what is begun there closes its benches here, a hand
 * that trembles confirms nothing, and what happens without a network is kept and told later.
 */

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  // A part of a page that is loaded later cannot be, while the network is away.
  expectedErrors: [/ERR_INTERNET_DISCONNECTED|Failed to fetch|ChunkLoadError/],
});

const NOW = Date.parse('2026-04-14T13:30:00Z');

const title = (page: Page) => page.getByRole('heading', { level: 1 });

/** Begin a mix, and go on to the screen that sprays. */
async function toSpraying(page: Page): Promise<void> {
  await page.goto('/mix/do?recipe=wash&bench=spare');
  await page.getByRole('button', { name: 'Begin' }).tap();
  await onToSpraying(page);
}

const stateOf = async (page: Page, bench: string) => {
  const { benches } = await (await page.request.get('/api/v1/keepout')).json();
  return benches.find((one: { bench: string }) => one.bench === bench);
};

test('a second tap within 400 ms confirms nothing that was not seen', async ({ page }) => {
  await bringShop(page, wetShop(NOW));
  await page.goto('/mix/do?recipe=wash&bench=spare');
  await page.getByRole('button', { name: 'Begin' }).tap();
  await expect(title(page)).toHaveText('Put on');
  await press(page, 'ArrowRight');
  await expect(title(page)).toHaveText('Take down');
  await press(page, 'ArrowRight');
  await expect(title(page)).toHaveText('Water first');
  for (const [pause, next] of [
    [60, 'Light oil'],
    [150, 'Bittern salt'],
    [250, 'Sour powder'],
    [400, 'Measure the pH'],
  ] as const) {
    await expect(page.locator('[data-settling]')).toHaveCount(0);
    const box = await page.locator('[data-alone] button[data-main]').boundingBox();
    if (!box) throw new Error('nothing to tap');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    // In the page itself, so that the pause between them is just that long.
    await page.evaluate(
      async ([x, y, pause]) => {
        const tap = () => (document.elementFromPoint(x, y) as HTMLElement | null)?.click();
        tap();
        await new Promise((resume) => setTimeout(resume, pause));
        tap();
      },
      [x, y, pause] as const,
    );
    await expect(title(page)).toHaveText(next);
  }
});

test('what is begun on a phone is kept out of everywhere, until the end and the interval', async ({
  page,
  context,
}) => {
  await bringShop(page, wetShop(NOW));
  await toSpraying(page);
  expect(await stateOf(page, 'spare')).toMatchObject({ state: 'open' });
  // A tap begins nothing.
  await page.getByRole('button', { name: 'Start spraying now' }).tap();
  await expect(page.getByText(/Begun at/)).toHaveCount(0);
  await hold(page, 'Start spraying now');
  await expect(page.getByText('The shop knows.')).toBeVisible();
  await isSound(page);

  const other = await context.newPage();
  await other.goto('/keep-out');
  const bench = other.locator('#bench-spare');
  await expect(bench).toContainText('KEEP OUT, being sprayed');
  await expect(bench).toContainText('Oil wash is being sprayed, begun');
  expect(await stateOf(page, 'spare')).toMatchObject({ state: 'unknown', until: null });
  await other.goto('/today');
  await expect(other.getByRole('region', { name: 'Begun, and not on record' })).toContainText(
    'Oil wash on Spare shelf',
  );
  await other.goto('/keep-out/notice?bench=spare');
  await expect(other.getByRole('main')).toContainText('Oil wash is being sprayed');

  await page.getByRole('button', { name: 'The last plant is sprayed' }).tap();
  await expect(title(page)).toHaveText('Spray');
  await hold(page, 'The last plant is sprayed');
  await expect(title(page)).toHaveText('Done');
  await expect(page.getByText(/^Ended 09:3/)).toBeVisible();
  await expect(page.getByText('The shop knows.')).toBeVisible();
  expect(await stateOf(page, 'spare')).toMatchObject({ state: 'closed' });
  await page.reload();
  await page.getByRole('button', { name: 'Go on' }).tap();
  await page.getByRole('button', { name: 'Write it into the record' }).tap();
  await expect(title(page)).toHaveText('Oil wash: on record');
  expect(await stateOf(page, 'spare')).toMatchObject({ state: 'closed' });
});

test('without a network start and end are kept, named, and told once it is back; a phone that is lost keeps people out', async ({
  page,
  context,
}) => {
  await bringShop(page, wetShop(NOW));
  await toSpraying(page);
  await context.setOffline(true);
  await hold(page, 'Start spraying now');
  await expect(page.getByText('The shop does not know yet.')).toBeVisible();
  await expect(page.getByText(/Keep people out of Spare shelf yourself/)).toBeVisible();
  await isSound(page);
  await context.setOffline(false);
  const other = await context.newPage();
  await other.goto('/today');
  await expect.poll(async () => (await stateOf(page, 'spare')).state).toBe('unknown');
  await context.setOffline(true);
  await hold(page, 'The last plant is sprayed');
  await expect(page.getByText('The shop does not know yet.')).toBeVisible();
  // The phone is gone: the shop knows of no end, and somebody says what became of it.
  await page.evaluate(() => localStorage.clear());
  await page.close();
  await context.setOffline(false);
  await other.goto('/today');
  const begun = other.getByRole('region', { name: 'Begun, and not on record' });
  await begun.getByText('Say what became of it').tap();
  await begun.getByLabel('It ended; put it on record without amounts').check();
  await begun.getByLabel('When the last plant was sprayed').fill('2026-04-14T09:40');
  await begun.getByRole('button', { name: 'Note it' }).tap();
  await expect(begun).toHaveCount(0);
  expect(await stateOf(other, 'spare')).toMatchObject({ state: 'closed' });
  await other.goto('/log');
  await expect(other.getByRole('main')).toContainText('Oil wash');
});
