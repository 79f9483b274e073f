import { demoShop } from '@/lib/demo/demo-shop';
import { Day } from '@/shared/time/day';
import { figure } from '../../promises/figure';
import { expect, test } from '../page-test';
import { bringShop } from './walk';

test.use({ expectedErrors: [/404/] });

const SCRIPT = 'window.ranFromAName = true';
const HOSTILE = [
  `<script>${SCRIPT}</script>`,
  `"><img src=x onerror="${SCRIPT}">`,
  `' onmouseover='${SCRIPT}' x='`,
  `</title></textarea><svg onload="${SCRIPT}">`,
  `javascript:${SCRIPT}`,
  `\${${SCRIPT}}{{${SCRIPT}}}`,
  `=HYPERLINK("http://shop.example","x")`,
  `&lt;b&gt;&#39;%3Cscript%3E\\u003cscript\\u003e`,
];

const PAGES = [
  ...['/today', '/week', '/week/modes', '/mix', '/mix/recipes', '/shelf', '/shelf?as=table', '/shelf/suppliers'],
  ...['/shelf/labels', '/buy', '/buy/plan', '/buy/orders', '/buy/orders/list', '/buy/budget?by=bench'],
  ...['/buy/equivalents', '/keep-out', '/keep-out/notice', '/log', '/log/print', '/emergency', '/setup'],
  ...['/setup/benches', '/setup/programs', '/setup/shop', '/setup/calendar'],
];

type Tree = { [field: string]: unknown };

/** The same shop with a hostile text in each name. */
function hostile(value: unknown, count = { named: 0 }): unknown {
  if (Array.isArray(value)) return value.map((one) => hostile(one, count));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value as Tree).map(([field, held]) => {
    if (!['name', 'place', 'reason', 'conditions', 'by'].includes(field)) return [field, hostile(held, count)];
    if (typeof held !== 'string') return [field, held];
    count.named += 1;
    return [
      field,
      field === 'name' ? `${HOSTILE[count.named % HOSTILE.length]} ${count.named}` : HOSTILE[count.named % 3],
    ];
  });
  return Object.fromEntries(entries);
}

test('a shop full of hostile names runs nothing on any page, and its lists open without a formula', async ({
  page,
}) => {
  await bringShop(page, hostile(demoShop(Day.parse('2026-04-14'))));

  let opened = 0;
  for (const path of PAGES) {
    const answer = await page.goto(path);
    if (answer?.status() === 404) continue;
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();
    expect(await page.evaluate(() => 'ranFromAName' in window), path).toBe(false);
    opened += 1;
  }
  expect(opened).toBeGreaterThan(18);
  for (const list of ['products', 'offers', 'lots']) {
    const text = await (await page.request.get(`/api/v1/csv/${list}.csv`)).text();
    expect(text).not.toMatch(/(^|[,\n])"?[=+@]/m);
  }
  figure(29, `${opened} pages and 3 lists of a shop whose every name is hostile: 0 scripts run, 0 formulas`);
});
