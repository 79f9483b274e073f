import type { Locator, Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { wetShop } from './a-wet-shop';
import { bringShop, hold } from './walk';

/* A sprayer with a phone: how many taps a mix takes, and whether the amount can always be seen. */

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const NOW = Date.parse('2026-04-14T13:30:00Z');
const FOUR = ['oil', 'salt', 'spreader', 'feed'];

/** One fill of four products, due today, with nothing that says stop. */
function fourShop() {
  const shop = wetShop(NOW);
  const ferns = { id: 'ferns', name: 'Fern row', plants: [{ name: 'Ferns', count: 20, mlPerPlant: 200 }] };
  return {
    ...shop,
    products: [...shop.products, { ...shop.products[3], id: 'feed', name: 'Leaf feed', kind: 'nutrient' }],
    lots: [
      ...shop.lots,
      { ...shop.lots[1], id: 'spreader-a', product: 'spreader' },
      { ...shop.lots[1], id: 'feed-a', product: 'feed' },
    ],
    benches: [ferns],
    recipes: [
      {
        ...{ id: 'wash', name: 'Four wash' },
        ingredients: FOUR.map((product) => ({ product, dose: product === 'salt' ? '2 g/L' : '6 mL/L' })),
      },
    ],
    programs: [{ ...shop.programs[0], startTime: '10:00' }],
    applications: [],
  };
}

const title = (page: Page) => page.getByRole('heading', { level: 1 });

test('from Today to a sprayed one-fill mix of four products in twelve taps', async ({ page }) => {
  await bringShop(page, fourShop());
  await page.goto('/today');
  let taps = 0;
  const tap = async (what: Locator) => {
    await expect(page.locator('[data-settling]')).toHaveCount(0);
    await what.tap();
    taps += 1;
  };
  await tap(page.getByRole('link', { name: 'Mix it now', exact: true }));
  await tap(page.getByRole('button', { name: 'Begin' }));
  const screens = [
    ['Put on', 'I have these on'],
    ['Take down', 'All here'],
    ['Water first', 'Water is in'],
    ['Pour 1 of 4', 'Poured and stirred'],
    ['Pour 2 of 4', 'Poured and stirred'],
    ['Pour 3 of 4', 'Poured and stirred'],
    ['Pour 4 of 4', 'Poured and stirred'],
    ['Fill up to', 'Full and stirred'],
  ] as const;
  for (const [shown, button] of screens) {
    await expect(page.getByText(shown).first()).toBeVisible();
    await tap(page.getByRole('button', { name: button }));
  }
  await expect(title(page)).toHaveText('Spray');
  await hold(page, 'Start spraying now');
  await hold(page, 'The last plant is sprayed');
  await expect(title(page)).toHaveText('Done');
  expect(taps + 2).toBeLessThanOrEqual(12);
});

/** The whole of it is on the screen without scrolling, and nothing lies over it. */
async function isSeenWhole(what: Locator): Promise<void> {
  await expect(what).toBeInViewport({ ratio: 1 });
  const isCovered = await what.evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return [0.1, 0.5, 0.9].some((part) => {
      const there = document.elementFromPoint(left + width * 0.2, top + height * part);
      return there !== element && !element.contains(there);
    });
  });
  expect(isCovered).toBe(false);
}

test('neither landscape nor letters twice as large hide the amount or what is pressed', async ({ page }) => {
  await bringShop(page, fourShop());
  await page.goto('/mix/do?recipe=wash&bench=ferns');
  await page.getByRole('button', { name: 'Begin' }).tap();
  for (const button of ['I have these on', 'All here', 'Water is in']) {
    await expect(page.locator('[data-settling]')).toHaveCount(0);
    await page.getByRole('button', { name: button }).tap();
  }
  const amount = page.locator('[data-digits]');
  await expect(amount).toHaveText('24 mL');
  await isSeenWhole(amount);
  await page.setViewportSize({ width: 844, height: 390 });
  await isSeenWhole(amount);
  await expect(page.getByRole('button', { name: 'Poured and stirred' })).toBeInViewport({ ratio: 1 });
  await page.setViewportSize({ width: 390, height: 844 });
  // As somebody sets it in the browser.
  const settings = await page.context().newCDPSession(page);
  await settings.send('Page.setFontSizes', { fontSizes: { standard: 32 } });
  await isSeenWhole(amount);
  await expect(page.getByRole('button', { name: 'Poured and stirred' })).toBeInViewport({ ratio: 1 });
});
