import type { Page } from '@playwright/test';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { supposedOf } from '@/lib/engine/ahead/supposed';
import { supposedProjection, whatIf } from '@/lib/engine/ahead/what-if';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { whatIfIn } from '@/shared/forms/what-if';
import { parseShopFile } from '@/shared/shop-file/parse';
import { bringShop } from '../e2e/door/walk';
import { withBuiltApp } from './built-app';
import { TODAY } from './demand-table';
import { generatedShop } from './generated-shop';
import { inMs, spread, timed } from './timing';

/*
 * How long it takes until what somebody supposes is answered: the weeks ahead worked out anew, and on the built app in a
 * browser everything from moving a slider to the changed figures on screen, the first time on a page and after that. It
 * reports; it never fails on a time.
 */

const WEEKS = 26;
const MOVES = 15;

const SHOPS: [name: string, file: unknown][] = [
  ['the demo shop', demoShop(TODAY)],
  ['50 products, 10 suppliers', generatedShop({ products: 50, programs: 15, benches: 12 })],
  ['200 products, 10 suppliers', generatedShop({ products: 200, programs: 60, benches: 40 })],
];

/** Report all of it. */
export async function reportOnWhatIf(): Promise<void> {
  console.log(`\nWhat if, over ${WEEKS} weeks:`);
  for (const [name, file] of SHOPS) reportOnWeeks(name, file);
  await withBuiltApp(`${TODAY}T15:00:00Z`, async ({ origin, browser }) => {
    for (const [name, file] of SHOPS) {
      const viewport = { width: 1280, height: 900 };
      const context = await browser.newContext({ baseURL: origin, viewport, locale: 'en-US' });
      const page = await context.newPage();
      await bringShop(page, file);
      await reportOnSlider(name, page);
      await context.close();
    }
  });
}

function reportOnWeeks(name: string, file: unknown): void {
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults.slice(0, 3)));
  const plan = planAhead(shopOfFile(parsed.file), TODAY, WEEKS);
  const { supposed } = supposedOf(plan, whatIfIn({ use: '150', price: '120' }));
  console.log(`  ${name}, ${plan.sprayings.length} sprayings`);
  console.log(
    `    the weeks worked out anew                 ${inMs(timed(() => whatIf(plan, supposedProjection(plan, supposed))))}`,
  );
}

/** The first move of a slider on each of a few fresh pages, and the moves after that: of one product, and of all. */
async function reportOnSlider(name: string, page: Page): Promise<void> {
  const first: number[] = [];
  for (let visit = 0; visit < 5; visit += 1) {
    // The page asks for nothing in particular once, so that the shop is ready.
    const ready = page.waitForResponse(/\/buy\/what-if/);
    await page.goto('/buy', { waitUntil: 'networkidle' });
    await ready;
    first.push(await answeredIn(page, 150 + 5 * visit));
  }
  const ofOne = await movesOf(page);
  await page.getByLabel('Price and use of').selectOption('');
  // Choosing every product is a question of its own.
  await page.waitForLoadState('networkidle');
  const ofEvery = await movesOf(page);
  console.log(`  ${name}: from moving the slider of a use to the changed figures on screen`);
  console.log(`    of one product, the first on a fresh page ${inMs(spread(first))}`);
  console.log(`    of one product, after that                ${inMs(spread(ofOne))}`);
  console.log(`    of every product                          ${inMs(spread(ofEvery))}`);
}

async function movesOf(page: Page): Promise<number[]> {
  const took: number[] = [];
  for (let move = 0; move < MOVES; move += 1) took.push(await answeredIn(page, 105 + 10 * move));
  return took;
}

/** Move the slider, and wait until the browser has painted another answer. Milliseconds, by the browser's clock. */
const answeredIn = (page: Page, percent: number): Promise<number> =>
  page.evaluate(
    (value) =>
      new Promise<number>((resolve, reject) => {
        const input = document.querySelector<HTMLInputElement>('#if-use');
        const section = document.querySelector('section[aria-labelledby="what-if"]');
        if (!input || !section) throw new Error('there is no slider');
        const before = section.textContent?.replace(/\d+ % of what it is/g, '');
        const started = performance.now();
        setTimeout(() => reject(new Error('nothing changed within 10 s')), 10_000);
        const watch = new MutationObserver(() => {
          // What the slider itself says changes at once.
          if (section.textContent?.replace(/\d+ % of what it is/g, '') === before) return;
          watch.disconnect();
          // A task after the next frame begins when that frame is painted.
          requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - started), 0));
        });
        watch.observe(section, { subtree: true, childList: true, characterData: true });
        Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(input, String(value));
        input.dispatchEvent(new Event('input', { bubbles: true }));
      }),
    percent,
  );
