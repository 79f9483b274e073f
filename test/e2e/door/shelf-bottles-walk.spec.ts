import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { isSound, ownDemo } from './walk';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const answer = (page: Page) => page.getByRole('main').getByRole('alert').last();

/** Opens one of the things that can happen to a bottle. */
const deed = (page: Page, title: string) => page.getByText(title, { exact: true }).tap();

test('two bottles come in; one is opened, counted by eye, drawn from, thrown away from, moved, and a slip is taken back', async ({
  page,
}) => {
  await ownDemo(page);
  await page.goto('/shelf/soap-49');
  await page.getByRole('link', { name: 'Receive more' }).tap();
  await page.getByLabel('How many').first().fill('2.5');
  await page.getByLabel(/Paid for all/).fill('$50');
  await page.getByLabel('Where it stands').first().fill('lower shelf');
  await page.getByRole('button', { name: 'Put on the shelf' }).tap();
  await expect(page.getByLabel('How many').first()).toHaveAccessibleDescription(/whole number of bottles/);
  await page.getByLabel('How many').first().fill('2');
  await page.getByLabel('One bottle holds').fill('500 mL');
  await page.getByRole('button', { name: 'Put on the shelf' }).tap();
  await expect(answer(page)).toContainText('2 bottles stand on the shelf.');
  await answer(page).getByRole('link', { name: 'Look at it' }).tap();
  await expect(page.getByRole('link', { name: 'bottle 2' })).toBeVisible();
  await isSound(page);
  await page.getByRole('link', { name: 'bottle 2' }).tap();
  await expect(page).toHaveURL(/\/shelf\/bottle\/[^/]+\/no-2$/);
  const own = page.url();

  await deed(page, 'Opened');
  await page.getByRole('button', { name: 'Note as opened' }).tap();
  await expect(answer(page)).toContainText('Noted as opened');
  await expect(page.getByText('Not opened after all')).toBeVisible();

  // The picture, the keys and the typed amount are one value.
  const level = page.getByRole('slider', { name: 'Level in the bottle' });
  const seen = page.getByLabel('What you see in it');
  await expect(seen).toHaveValue('full');
  await seen.fill('1/4');
  await expect(level).toHaveAttribute('aria-valuetext', '125 mL, 25 % of 500 mL');
  await level.focus();
  await level.press('End');
  await level.press('PageDown');
  await level.press('ArrowDown');
  await expect(seen).toHaveValue('445 mL');
  await level.scrollIntoViewIfNeeded();
  const box = await level.boundingBox();
  if (!box) throw new Error('the picture is not drawn');
  await page.mouse.move(box.x + 60, box.y + box.height - 20);
  await page.mouse.down();
  await page.mouse.move(box.x + 60, box.y + box.height + 80);
  await expect(seen).toHaveValue('empty');
  await page.mouse.move(box.x + 60, box.y + box.height * 0.5);
  await page.mouse.up();
  await expect(level).toHaveAttribute('aria-valuetext', /^[23]\d\d mL, [45]\d % of 500 mL$/);
  await seen.fill('400 mL');
  await page.getByRole('button', { name: 'This is what I see' }).tap();
  await expect(page.getByLabel(/^What may have become of it/)).toHaveAccessibleDescription(/more than 5 %/);
  await page.getByLabel(/^What may have become of it/).selectOption('spilled');
  await page.getByRole('button', { name: 'This is what I see' }).tap();
  await expect(page.getByText('Counted 400 mL. The ledger says so now.')).toBeVisible();

  await deed(page, 'Took some for a spray');
  await page.locator('#draw-amount').fill('5 mL');
  await page.locator('#draw-reason').fill('spot spray on the ferns');
  await page.getByRole('button', { name: 'Note the draw' }).tap();
  await expect(page.getByText('5 mL was drawn.')).toBeVisible();

  await deed(page, 'Thrown away or sent back');
  await page.getByLabel('this much').check();
  await page.locator('#discard-amount').fill('50');
  await page.locator('#discard-why').selectOption('spoiled');
  await page.getByRole('button', { name: 'Take it off the shelf' }).tap();
  await expect(page.locator('#discard-amount')).toHaveAccessibleDescription(/has no unit/);
  await page.locator('#discard-amount').fill('50 mL');
  await page.getByRole('button', { name: 'Take it off the shelf' }).tap();
  await expect(page.getByText('50 mL was thrown away.')).toBeVisible();

  await deed(page, 'Moved');
  await page.getByLabel('Where it stands now').fill('top shelf');
  await page.getByRole('button', { name: 'Note the place' }).tap();
  await expect(page.getByText('It stands in top shelf now.')).toBeVisible();

  const lines = page.getByRole('region', { name: 'Ledger' }).getByRole('list').getByRole('listitem');
  await expect(lines).toHaveCount(6);
  await deed(page, 'Take line 5 back');
  await page.locator('#why-5').fill('the other bottle');
  await page.locator('#line-5').getByRole('button', { name: 'Take it back' }).tap();
  await expect(lines).toHaveCount(7);
  await expect(lines.nth(4).locator('s').first()).toHaveText('Thrown away');
  await expect(lines.nth(4)).toContainText(/Taken back in line 7 by owner, .*: the other bottle/);
  for (const [line, says] of [
    /Received.*in\+ 500 mL.*left after it500 mL.*of the price\$25\.00/,
    /Opened on/,
    /Counted, and less was there: spilled.*out− 100 mL.*left after it400 mL.*\$5\.00/,
    /Drawn: spot spray on the ferns.*− 5 mL.*395 mL.*\$0\.25/,
    /Thrown away: spoiled.*− 50 mL.*345 mL.*\$2\.50/,
    /Moved from lower shelf to top shelf/,
    /Taken back: the other bottle.*\+ 50 mL.*395 mL.*\$2\.50/,
  ].entries()) {
    await expect(lines.nth(line)).toContainText(says);
    await expect(lines.nth(line)).toContainText('owner');
  }
  await isSound(page);

  // Every place says so at once, and the address holds though its lot was divided.
  await page.goto('/shelf/soap-49');
  const bottle = page.getByRole('row').filter({ has: page.locator(`a[href="${new URL(own).pathname}"]`) });
  await expect(bottle).toContainText(/395 mL.*\$19\.75/);
  await bottle.getByRole('link').first().tap();
  await expect(page).toHaveURL(own);
  await page.goto('/shelf');
  await expect(page.getByRole('main')).toContainText('395 mL');
});

test('a count is felt at once wherever the bottle counts: on the shelf, in what today costs, and in the week', async ({
  page,
}) => {
  await ownDemo(page);
  const feed = page.locator('[data-figure="spraying/weekly-feed/2026-04-14/materialCost"]').first();
  const left = page.locator('[data-figure="product/calcium-5/usable"]').first();
  const planned = async () => {
    const { sprayings } = await (await page.request.get('/api/v1/plan?weeks=1')).json();
    const { materialCost } = sprayings.find(({ program }: { program: string }) => program === 'weekly-feed');
    return `$${Number(materialCost).toFixed(2)}`;
  };
  const before = await planned();
  await page.goto('/today');
  await expect(feed).toHaveText(before);
  await page.goto('/shelf');
  await expect(left).toHaveText('36 mL');

  // The bottle with the calcium of today has less in it than the books say, so that the rest must be bought.
  await page.goto('/shelf/bottle/calcium-b/0');
  await page.getByLabel('What you see in it').fill('10 mL');
  await page.getByRole('button', { name: 'This is what I see' }).tap();
  await expect(page.getByLabel(/^What may have become of it/)).toHaveAccessibleDescription(/more than 5 %/);
  await page.getByLabel(/^What may have become of it/).selectOption('spilled');
  await page.getByRole('button', { name: 'This is what I see' }).tap();
  await expect(page.getByText('Counted 10 mL. The ledger says so now.')).toBeVisible();

  const after = await planned();
  expect(after).not.toBe(before);
  for (const path of ['/today', '/week']) {
    await page.goto(path);
    await expect(feed).toHaveText(after);
  }
  await page.goto('/shelf');
  await expect(left).toHaveText('10 mL');
});
