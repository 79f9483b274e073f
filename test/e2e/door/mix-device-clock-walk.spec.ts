import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { wetShop } from './a-wet-shop';
import { bringShop, hold, isSound, onToSpraying } from './walk';

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  // Spraying begins and ends without a network.
  expectedErrors: [/ERR_INTERNET_DISCONNECTED|Failed to fetch/],
});

/** When these tests take place: the server's clock stands still there. */
const NOW = Date.parse('2026-04-14T13:30:00Z');
const [MINUTE, DAY] = [60_000, 86_400_000];

const title = (page: Page) => page.getByRole('heading', { level: 1 });

for (const { name, ahead, said } of [
  { name: 'a day ahead', ahead: DAY, said: /clock is 24 h( 1 min)? ahead/ },
  { name: 'a day behind', ahead: -DAY, said: /clock is (24 h|23 h 59 min) behind/ },
]) {
  test(`a phone whose clock is ${name} says so, and records the shop’s times, without a network too`, async ({
    page,
    context,
  }) => {
    await page.clock.install({ time: NOW + ahead });
    await bringShop(page, wetShop(NOW));
    await page.goto('/mix/do?recipe=wash&bench=spare');
    await page.getByRole('button', { name: 'Begin' }).tap();
    await expect(page.getByText(said)).toBeVisible();
    await isSound(page);
    await onToSpraying(page);
    await context.setOffline(true);
    await hold(page, 'Start spraying now');
    await hold(page, 'The last plant is sprayed');
    await expect(page.getByLabel('Spraying began')).toHaveValue(/^2026-04-14T09:3/);
    await expect(page.getByText(/clock was set since/)).toHaveCount(0);
    await isSound(page);
    await context.setOffline(false);
    await page.getByRole('button', { name: 'Write it into the record' }).tap();
    await expect(title(page)).toHaveText('Oil wash: on record');
    const { applications } = await (await page.request.get('/api/v1/shop')).json();
    const { startedAt, endedAt } = applications.at(-1);
    expect(Math.abs(Date.parse(startedAt) - NOW)).toBeLessThan(2 * MINUTE);
    expect(Date.parse(endedAt)).toBeGreaterThanOrEqual(NOW);
    expect(Date.parse(endedAt) - NOW).toBeLessThan(3 * MINUTE);
  });
}
