import type { Page } from '@playwright/test';
import { expect, test } from './page-test';

/*
 * Nothing moves under a finger when the face of the letters comes late. Here it comes half a second after everything else,
 * on a phone, and each page may move by less than a tenth of its screen in all.
 */

const MOST = 0.1;

const ROUTES = [
  ...[
    '/today',
    '/week',
    '/mix',
    '/shelf',
    '/shelf?as=table',
    '/shelf/light-oil-98',
    '/buy',
    '/buy/budget',
    '/buy/plan',
  ],
  ...['/keep-out', '/log', '/setup'],
];

test.use({ viewport: { width: 390, height: 844 } });

test('no page moves when its letters come late', async ({ page }) => {
  await page.route('**/*.woff2', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 500));
    await route.continue();
  });
  await page.addInitScript(() => {
    const moved: { by: number; from: string[] }[] = [];
    Object.assign(window, { moved });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) {
        const { value, sources } = entry as unknown as { value: number; sources: { node: Element | null }[] };
        moved.push({ by: value, from: sources.map(({ node }) => node?.nodeName ?? '?') });
      }
    }).observe({ type: 'layout-shift', buffered: true });
  });
  const tooMuch: string[] = [];
  for (const path of ROUTES) {
    await page.goto(path);
    const moved = await movedBy(page);
    const sum = moved.reduce((total, { by }) => total + by, 0);
    if (sum >= MOST) tooMuch.push(`${path}: ${sum.toFixed(3)} ${JSON.stringify(moved)}`);
  }
  expect(tooMuch).toEqual([]);
});

type Moved = { by: number; from: string[] }[];

/** What has moved once the letters are there and drawn. */
const movedBy = (page: Page): Promise<Moved> =>
  page.evaluate(async () => {
    await document.fonts.ready;
    for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
    return (window as unknown as { moved: Moved }).moved;
  });
