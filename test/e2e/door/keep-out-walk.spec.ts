import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

// A board that hears nothing reports each request that came to nothing, and a revoked link is not found.
test.use({ viewport: { width: 390, height: 844 }, expectedErrors: [/ERR_FAILED|404/] });

const STATES = /KEEP OUT until|KEEP OUT \(not known\)|Interval elapsed .+ as recorded|Nothing recorded/;

const benchesOn = (page: Page) => page.getByRole('main').getByRole('listitem');

async function showStates(page: Page): Promise<void> {
  await expect(benchesOn(page)).toHaveCount(8);
  for (const bench of await benchesOn(page).all()) await expect(bench).toContainText(STATES);
}

const allUnconfirmed = async (page: Page): Promise<void> => {
  await expect(page.getByText('KEEP OUT of every bench (not confirmed).')).toBeVisible();
  for (const bench of await benchesOn(page).all()) await expect(bench).toContainText('KEEP OUT (not confirmed)');
  await expect(page.getByRole('main')).not.toContainText('elapsed');
};

/**
 * Waits for the next answer that the board asks for by itself. The page's clock also goes on without us, so it is moved
 * second by second until the board asks: the minute that an answer counts is then counted from now.
 */
async function untilAnswered(page: Page): Promise<void> {
  let isAsked = false;
  const asked = page.waitForRequest('**/board/now*').then(() => {
    isAsked = true;
  });
  const answered = page.waitForResponse('**/board/now*');
  while (!isAsked) {
    await page.clock.runFor(1_000);
    await Promise.race([asked, page.waitForTimeout(50)]);
  }
  await (await answered).finished();
  // The page has read that answer once it has read one that it asked for later.
  await page.evaluate(async () => (await fetch('/icon.svg')).text());
}

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

  await page.goto(address);
  await showStates(page);
  await expect(page.getByRole('navigation')).toHaveCount(0);
  const { products } = await (await page.request.get('/api/v1/shop')).json();
  const said = await page.content();
  for (const { name } of products) expect(said).not.toContain(name);
  await isSound(page);

  await untilAnswered(page);
  await page.route('**/board/now*', (route) => route.abort());
  await page.clock.runFor(50_000);
  await showStates(page);
  await page.clock.runFor(11_000);
  await allUnconfirmed(page);
  await isSound(page);
  await page.unroute('**/board/now*');
  await page.clock.runFor(6_000);
  await showStates(page);

  // Where no script runs and nothing is read anew, the style sheet lets the board go after the same minute.
  const dead = await page.context().newPage();
  await dead.route('**/*.js', (route) => route.abort());
  await dead.goto(address);
  await showStates(dead);
  await dead.evaluate(() => {
    for (const animation of document.getAnimations()) animation.currentTime = 60_001;
  });
  await expect(dead.getByText('KEEP OUT of every bench (not confirmed).')).toBeVisible();
  for (const bench of await benchesOn(dead).all()) await expect(bench).toBeHidden();
  await dead.close();

  let answer = () => {};
  const held = new Promise<void>((resolve) => {
    answer = resolve;
  });
  await page.route('**/board/now*', (route) => held.then(() => route.continue()));
  await page.evaluate(() => window.dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true })));
  await allUnconfirmed(page);
  answer();
  await showStates(page);
  await page.unroute('**/board/now*');

  await page.clock.setSystemTime('2026-04-15T13:40:00Z');
  await page.clock.runFor(6_000);
  await expect(page.getByText('more than five minutes apart')).toBeVisible();
  await showStates(page);

  const other = await page.context().newPage();
  await other.goto('/setup/board');
  await other.getByRole('button', { name: /^Revoke the link/ }).click();
  await expect(other.getByText('There is none yet')).toBeVisible();
  await page.clock.runFor(26_000);
  await allUnconfirmed(page);
  expect((await page.goto(address))?.status()).toBe(404);
  await expect(page.getByRole('heading', { name: 'KEEP OUT (not known)' })).toBeVisible();
});

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
