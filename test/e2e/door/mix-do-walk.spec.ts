import type { Page } from '@playwright/test';
import { expect, test } from '../page-test';
import { wetShop } from './a-wet-shop';
import { bringShop, hold, isSound, press, showShop } from './walk';

test.use({
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  // Some steps are taken without a network, and one mix is refused.
  expectedErrors: [/ERR_INTERNET_DISCONNECTED|Failed to fetch|status of 422/],
});

// The second walk sprays what the first one left behind, in the same shop.
test.describe.configure({ mode: 'serial' });
let shop = '';

/** When these tests take place: the servers' clock stands still there, and the phone's goes on from there. */
const NOW = Date.parse('2026-04-14T13:30:00Z');

test.beforeEach(({ page }) => page.clock.install({ time: NOW }));

const title = (page: Page) => page.getByRole('heading', { level: 1 });
const on = async (page: Page, from: RegExp, button: RegExp | string) => {
  await expect(title(page)).toHaveText(from);
  await page.getByRole('button', { name: button, exact: true }).tap();
};

/** Sound, and what is pressed on its own is large enough for a wet glove. */
async function isSoundWithGloves(page: Page) {
  await isSound(page);
  const small = await page
    .locator('[data-alone] :is(button, a, input, select)')
    .evaluateAll(
      (all) =>
        all
          .map((one) => (one.closest('label') ?? one).getBoundingClientRect())
          .filter(({ height, width }) => height > 0 && (height < 55.5 || width < 44)).length,
    );
  expect(small).toBe(0);
}

const shopNow = async (page: Page) => (await page.request.get('/api/v1/shop')).json();

test('by touch: from Today, past a stop, through two fills with another bottle, without a network, and once into the books', async ({
  page,
  context,
}) => {
  shop = await bringShop(page, wetShop(NOW));
  await page.emulateMedia({ media: 'print' });
  await page.goto('/shelf/labels?lots=salt-b');
  const label = page.getByRole('listitem').filter({ hasText: 'BB1:salt-b/1' });
  const photo = { name: 'label.png', mimeType: 'image/png', buffer: await label.screenshot({ animations: 'allow' }) };
  await page.emulateMedia({ media: 'screen' });
  await page.goto('/today');
  await page.getByRole('region', { name: 'To mix' }).getByRole('link', { name: 'Oil wash' }).tap();
  await page.getByRole('link', { name: 'Mix it now, pour by pour' }).tap();
  await page.getByRole('button', { name: 'Begin' }).tap();

  await on(page, /Stop/, 'Go on all the same');
  await expect(title(page)).toHaveText('Stop');
  await page.getByLabel('Why it is sprayed all the same').fill('nobody is in the house today');
  await isSoundWithGloves(page);
  await on(page, /Stop/, 'Go on all the same');
  await expect(page.getByText('CAUTION')).toBeVisible();
  await on(page, /Put on/, 'I have these on');
  await page.getByLabel('Scan or type the code on a bottle').fill('bb1: oil-a/1');
  await page.getByRole('button', { name: 'Take it' }).tap();
  await expect(page.getByRole('checkbox', { name: /BB1:oil-a\/1/ })).toBeChecked();
  await on(page, /Take down/, 'All here');
  await on(page, /Water first/, 'Water is in');

  // The network goes, and comes back with another bottle in hand.
  await context.setOffline(true);
  await expect(page.getByText('Pour 1 of 2')).toBeVisible();
  await on(page, /Light oil/, 'Poured and stirred');
  await expect(page.getByText(/Use within 3 h 59 min/)).toBeVisible();
  await on(page, /Bittern salt/, 'Other');
  await page.getByRole('button', { name: 'With the camera or a photo' }).tap();
  await page.getByLabel('Take or choose a photo').setInputFiles(photo);
  await expect(page.getByLabel('From which bottle').locator('option:checked')).toHaveText(/BB1:salt-b\/1: 400 g left/);
  await page.getByLabel('How much was poured').fill('14.5 g');
  await isSoundWithGloves(page);
  await context.setOffline(false);
  await page.reload();
  await expect(page.getByText(/You were at pour 2 of 2, Bittern salt, fill 1 of 2, begun/)).toBeVisible();
  await isSoundWithGloves(page);
  await page.getByRole('button', { name: 'Go on' }).tap();
  await expect(page.getByText('14.5 g')).toBeVisible();
  await on(page, /Bittern salt/, 'Poured and stirred');
  await on(page, /Sour powder/, 'In and stirred');
  await page.getByLabel('What the meter says').fill('6.2');
  await page.getByLabel('Sour powder added since').fill('0.1 g');
  await isSoundWithGloves(page);
  await on(page, /Measure the pH/, 'Good so');
  await on(page, /Fill up to/, 'Full and stirred');
  await expect(title(page)).toHaveText('Spray');
  await hold(page, 'Start spraying now');
  // Once the shop has answered, nothing moves any more under the finger that holds.
  await expect(page.getByText('The shop knows.')).toBeVisible();
  await hold(page, /The other fills went in the same/);

  await expect(title(page)).toHaveText('Done');
  await page.getByLabel(/Spray left over/).fill('200 mL');
  await page.getByRole('checkbox', { name: /Spare shelf takes 600 mL/ }).check();
  await isSoundWithGloves(page);
  await context.setOffline(true);
  await on(page, /Done/, 'Write it into the record');
  await expect(page.getByText('Not sent yet: kept on this device.')).toBeVisible();
  const other = await context.newPage();
  await context.setOffline(false);
  await other.goto('/today');
  await expect(title(page)).toHaveText('Oil wash: on record');
  await isSoundWithGloves(page);
  await expect(page.getByText(/Fern row closed until/)).toBeVisible();
  await expect(page.getByText(/Spare shelf closed until/)).toBeVisible();
  // 72 of 500 mL, 29 of 400 g, and of the acid what two fills took.
  const cost = page.getByRole('table', { name: /Cost of each product/ });
  await expect(cost.getByRole('row', { name: /Light oil 72 mL/ })).toContainText('$2.88');
  await expect(cost.getByRole('row', { name: /Bittern salt 29 g/ })).toContainText(/\$1\.20.*\$1\.45/);
  await expect(cost.getByRole('row', { name: /In all/ })).toContainText(/more than planned/);
  // Whoever has nothing of it on the device is told by the books.
  expect(await (await page.request.get(page.url())).text()).toContain('That comes to what the sheet');

  const { applications, lots, programs } = await shopNow(page);
  expect(applications).toHaveLength(2);
  expect(applications[1]).toMatchObject({
    ...{ recipe: 'wash', benches: ['ferns', 'spare'], pH: 6.2, leftover: '200 mL' },
    ...{ leftoverWent: 'sprayed on Spare shelf', acid: { product: 'sour' } },
    passed: [{ rule: 'bench-closed', reason: 'nobody is in the house today' }],
  });
  const left = (id: string) => lots.find((one: { id: string }) => one.id === id).remaining;
  // A full one says nothing.
  expect(left('salt-a')).toBeNull();
  expect(left('salt-b')).toBe('371 g');
  expect(left('oil-a')).toBe('0 mL');
  expect(programs[0].changes).toMatchObject([{ kind: 'done', application: applications[1].id }]);

  await expect(other.getByRole('status')).toHaveCount(0);
  await other.reload();
  await expect(other.getByRole('region', { name: 'Who may stand where' })).toContainText(/Fern row.*closed/i);
  await expect(other.getByRole('region', { name: 'To mix' })).toContainText('Nothing is to be sprayed');
  await other.goto('/shelf/salt');
  await expect(other.getByRole('main')).toContainText('371');
});

test('by keyboard: Enter and the arrows go through a mix, and a refusal comes back to where it is put right', async ({
  page,
  baseURL,
}) => {
  await showShop(page, shop, baseURL ?? '');
  await page.goto('/mix/do?recipe=wash&bench=spare');
  await page.getByRole('button', { name: 'Begin' }).focus();
  await press(page, 'Enter');
  // Its bench took what was left over of the last mix.
  await expect(title(page)).toHaveText('Stop');
  await page.getByLabel('Why it is sprayed all the same').fill('a trial');
  await press(page, 'Tab');
  await press(page, 'Tab');
  await press(page, 'Enter');
  await expect(title(page)).toBeFocused();
  await press(page, 'Enter', 'ArrowRight', 'Enter');
  await expect(title(page)).toHaveText('Light oil');
  await press(page, 'ArrowLeft');
  await expect(title(page)).toHaveText('Water first');
  await press(page, 'ArrowRight', 'Enter', 'Enter');
  await expect(title(page)).toHaveText('Sour powder');
  await press(page, 'Enter', 'Enter', 'Enter');
  await expect(title(page)).toHaveText('Spray');
  // One key starts nothing by mistake: what a finger holds is pressed twice by keys.
  await press(page, 'Enter', 'ArrowRight');
  await expect(title(page)).toHaveText('Spray');
  await page.getByRole('button', { name: 'Start spraying now' }).focus();
  await press(page, 'Enter');
  await expect(page.getByText('Press once more')).toBeVisible();
  await press(page, 'Enter');
  await expect(page.getByText(/Begun at/)).toBeVisible();
  await page.getByRole('button', { name: 'The last plant is sprayed' }).focus();
  await press(page, 'Enter', 'Enter');
  await expect(title(page)).toHaveText('Done');
  await page.getByLabel('Spraying began').fill('2026-01-02T10:00');
  await page.getByRole('button', { name: 'Write it into the record' }).press('Enter');
  const alert = page.getByRole('main').getByRole('alert');
  await expect(alert).toContainText('Nothing was written yet.');
  await isSoundWithGloves(page);
  const began = page.getByLabel('Spraying began');
  await began.fill(await page.getByLabel('The last plant was sprayed').inputValue());
  await page.getByRole('button', { name: 'Write it into the record' }).press('Enter');
  await expect(title(page)).toHaveText('Oil wash: on record');
  expect((await shopNow(page)).applications).toHaveLength(3);
});
