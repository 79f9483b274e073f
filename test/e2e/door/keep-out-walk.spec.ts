import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

// A board that hears nothing reports each request that came to nothing, and a revoked link is not found.
test.use({ viewport: { width: 390, height: 844 }, expectedErrors: [/ERR_FAILED|404/] });

const STATES = /KEEP OUT\s+until|KEEP OUT \(not known\)|Interval elapsed\s.+ as recorded|Nothing recorded/;

const benchesOn = (page: Page) => page.getByRole('main').getByRole('listitem');

async function showStates(page: Page): Promise<void> {
  await expect(benchesOn(page)).toHaveCount(8);
  for (const bench of await benchesOn(page).all()) await expect(bench).toContainText(STATES);
}

/** What the device shows of a link's board once it may not count any more. */
const isCovered = async (page: Page): Promise<void> => {
  await expect(page.getByRole('heading', { name: 'KEEP OUT of every bench (not confirmed)' })).toBeVisible();
  await expect(page.locator('#b')).toBeHidden();
};

/** Lets both clocks of a page be moved ahead, in milliseconds; a page that is read anew starts with neither moved. */
const withMovableClocks = (page: Page) =>
  page.addInitScript(() => {
    const moved = { steady: 0, wall: 0 };
    const [steady, wall] = [performance.now.bind(performance), Date.now.bind(Date)];
    performance.now = () => steady() + moved.steady;
    Date.now = () => wall() + moved.wall;
    Reflect.set(window, 'moved', moved);
  });

const move = (page: Page, clock: 'steady' | 'wall', ms: number) =>
  page.evaluate(({ clock, ms }) => void Reflect.set(Reflect.get(window, 'moved'), clock, ms), { clock, ms });

test('from the board to a notice, to a link for the sales floor that lets nothing stale stand, and to its end', async ({
  page,
}) => {
  await ownDemo(page);
  // The browser's clock agrees with the one at which the tests' server stands still.
  await page.clock.install({ time: '2026-04-14T13:30:00Z' });
  await page.goto('/keep-out');
  await showStates(page);
  await expect(page.getByText('As of Tue 14 April 2026 09:30, America/New_York')).toBeVisible();
  await expect(page.getByRole('main')).not.toContainText(/\bsafe\b/i);
  await isSound(page);

  await page.getByRole('link', { name: 'Notice to print' }).first().click();
  const notice = page.getByRole('article').first();
  await expect(notice).toContainText('KEEP OUT');
  await expect(notice).toContainText(/until (\w{3} \d+ April 2026 \d\d:\d\d|this notice is taken down \(not known\))/);
  await expect(notice).toContainText('Printed Tue 14 April 2026 09:30');
  await expect(notice).not.toContainText('elapsed');
  await page.getByRole('link', { name: 'On A4 instead' }).click();
  await expect(page.getByRole('link', { name: 'On Letter instead' })).toBeVisible();
  await isSound(page);

  await page.goto('/setup/board');
  await page.getByRole('button', { name: 'Make a link' }).click();
  const link = page.getByRole('link', { name: /^Board of Tue 14 April/ });
  const address = (await link.getAttribute('href')) ?? '';
  await isSound(page);
  await page.goto('/keep-out/notice');
  await expect(page.getByText(`The state now: http`).first()).toContainText(address);

  await page.goto('/setup/board');
  await page.getByRole('link', { name: /square code/ }).click();
  await expect(page.getByText(new RegExp(`^http.*${address}$`))).toBeVisible();
  await isSound(page);
  const board = await page.context().newPage();
  await withMovableClocks(board);
  await boardOfALink(board, address);

  await page.goto('/setup/board');
  await page.getByRole('button', { name: /^Revoke the link/ }).click();
  await expect(page.getByText('There is none yet')).toBeVisible();
  // The board asks by itself once what it shows is old, and hears that it is none any more.
  await move(board, 'steady', 61_000);
  await expect(board.getByRole('heading', { name: 'KEEP OUT (not known)' })).toBeVisible();
  expect((await board.goto(address))?.status()).toBe(404);
});

async function boardOfALink(page: Page, address: string): Promise<void> {
  const answer = await page.goto(address);
  await showStates(page);
  // The shop of these tests stands still at 09:30, and its word counts for a minute.
  await expect(page.getByText('Counts until 09:31:00')).toBeVisible();
  const said = await page.content();
  const { products } = await (await page.request.get('/api/v1/shop')).json();
  for (const { name } of products) expect(said).not.toContain(name);
  await expect(page.getByRole('navigation')).toHaveCount(0);
  await expect(page.locator('script[src], link[rel=stylesheet]')).toHaveCount(0);
  expect((await answer?.body())?.length ?? 0).toBeLessThan(10_000);
  await isSound(page);

  // A tab that slept shows nothing old: neither by the count that stands still in sleep, nor by the clock that may be set.
  const isAsked = (request: { resourceType(): string }) => request.resourceType() === 'fetch';
  await page.route(`**${address}`, (route) => (isAsked(route.request()) ? route.abort() : route.continue()));
  for (const [clock, ms] of [
    ['steady', 61_000],
    ['wall', 61_000],
    ['wall', -61_000],
  ] as const) {
    await move(page, clock, ms);
    await isCovered(page);
    await move(page, clock, 0);
    await showStates(page);
  }
  await page.evaluate(() => window.dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true })));
  await isCovered(page);
  await isSound(page);
  await page.unroute(`**${address}`);
  await showStates(page);

  // Where no script runs, the style sheet lets the board go after the same minute.
  await page.evaluate(() => {
    document.body.removeAttribute('data-alive');
    for (const animation of document.getAnimations()) animation.currentTime = 60_001;
  });
  await isCovered(page);
  const dead = await page.context().browser()?.newContext({ javaScriptEnabled: false });
  const still = await dead?.newPage();
  await still?.goto(new URL(address, page.url()).href);
  await expect(still?.getByText('Counts until 09:31:00') ?? page.locator('none')).toBeVisible();
  await dead?.close();
}

test('a spraying that is closed in opening hours is moved clear of them in one step, back, and by hand', async ({
  page,
}) => {
  await ownDemo(page);
  // On Friday 24 April the shop of these tests is open late.
  await page.goto('/week?from=2026-04-20');
  await expect(page.getByRole('listitem').filter({ hasText: 'Front table' }).first()).toBeVisible();
  const flagged = page.getByRole('article').filter({ hasText: 'Customers could not reach' }).first();
  const name = (await flagged.getByRole('heading').textContent()) ?? '';
  await isSound(page);
  await flagged
    .getByRole('button', { name: /nearest clear start|in time for the next opening/ })
    .first()
    .click();
  const moved = page.getByRole('status').filter({ hasText: 'It was on' });
  await expect(moved).toContainText(`${name} is now on Thu 23 April 20:10. It was on Fri 24 April 18:30.`);
  await moved.getByRole('button', { name: 'Undo it' }).click();
  await expect(moved).toContainText(`${name} is now on Fri 24 April 18:30`);

  const ticket = page.getByRole('article', { name }).first();
  await ticket.getByText('Move it elsewhere').click();
  await ticket.getByRole('button', { name: 'A day later' }).click();
  await expect(ticket.getByText(/Over the 26 weeks ahead: product/)).toBeVisible();
  await expect(ticket).toContainText('Reopens');
  await isSound(page);
  await ticket.getByRole('button', { name: 'Move it there' }).click();
  await expect(moved).toContainText(`${name} is now on Sat 25 April 18:30`);
});
