import { expect, test } from '@playwright/test';
import { figure } from '../../promises/figure';
import { runs } from '../../runs';
import {
  actionBody,
  builtActions,
  demoShopHere,
  everyRow,
  FORM_TYPE,
  knock,
  OWN_HOST,
  OWN_ORIGIN,
  PORT,
  rawKnock,
} from './knock';

const FIELDS = {
  commandId: '0123456789abcdef0123456789abcdef',
  name: 'A shop that must not be',
  timeZone: 'America/New_York',
  currency: 'USD',
  units: 'us',
  fillCapacity: '2 gal',
  shop: 'x',
};

const FOREIGN: { what: string; headers: Record<string, string | undefined> }[] = [
  { what: 'no Origin', headers: { Origin: undefined } },
  { what: 'Origin null', headers: { Origin: 'null' } },
  { what: 'a foreign Origin', headers: { Origin: 'http://shop.example' } },
  { what: 'an Origin on another port', headers: { Origin: `http://127.0.0.1:${PORT + 1}` } },
  { what: 'an Origin by another name of this machine', headers: { Origin: `http://localhost:${PORT}` } },
  { what: 'an https Origin', headers: { Origin: `https://${OWN_HOST}` } },
  { what: 'an Origin that begins like ours', headers: { Origin: `${OWN_ORIGIN}.shop.example` } },
  { what: 'an Origin that is no address', headers: { Origin: 'shop' } },
  { what: 'a foreign Host', headers: { Host: 'shop.example', Origin: OWN_ORIGIN } },
  { what: 'a foreign Host with its own Origin', headers: { Host: 'shop.example', Origin: 'http://shop.example' } },
  {
    what: 'a foreign Host on our port',
    headers: { Host: `shop.example:${PORT}`, Origin: `http://shop.example:${PORT}` },
  },
  { what: 'a Host without the port', headers: { Host: '127.0.0.1', Origin: 'http://127.0.0.1' } },
  { what: 'any-address as Host', headers: { Host: `0.0.0.0:${PORT}`, Origin: `http://0.0.0.0:${PORT}` } },
  {
    what: 'a foreign Origin with a matching X-Forwarded-Host',
    headers: { Origin: 'http://shop.example', 'X-Forwarded-Host': 'shop.example' },
  },
  {
    what: 'a foreign Host and X-Forwarded-Host of ours',
    headers: { Host: 'shop.example', Origin: OWN_ORIGIN, 'X-Forwarded-Host': OWN_HOST },
  },
  { what: 'a form that the browser says another site sends', headers: { 'Sec-Fetch-Site': 'cross-site' } },
  { what: 'a form that the browser says another port sends', headers: { 'Sec-Fetch-Site': 'same-site' } },
];

/** In an ordinary run each action is sent to one of them, and the next action to the next. */
const PATHS = ['/', '/setup', '/nope', '/api/v1/shop', '/_next/static/x.js'];

for (const { what, headers } of FOREIGN) {
  test(`with ${what}, no action and no route does anything`, async () => {
    const before = everyRow();
    const actions = builtActions();
    expect(actions.length).toBeGreaterThan(0);
    for (const [number, action] of actions.entries()) {
      for (const path of PATHS.filter((_, at) => (number + at) % runs(PATHS.length, 1) === 0)) {
        const sent = { Origin: OWN_ORIGIN, 'Content-Type': FORM_TYPE, 'Next-Action': action, ...headers };
        const { status, body } = await knock({ path, headers: sent, body: actionBody(FIELDS) });
        expect({ path, status }).toEqual({ path, status: 403 });
        expect(JSON.parse(body)).toEqual({ code: 'turned-away', message: expect.stringMatching(/^[A-Z].*\.$/) });
      }
    }
    const sent = { Origin: OWN_ORIGIN, 'Content-Type': 'application/json', ...headers };
    const text = '{"commandId":"0123456789abcdef0","into":"new","text":"{}"}';
    expect((await knock({ path: '/api/v1/shop/import', headers: sent, body: text })).status).toBe(403);
    expect(everyRow()).toBe(before);
    figure(23, `${actions.length} actions on ${runs(1, PATHS.length)} paths with ${what}: 0 executed`);
    figure(24, `${what}: 0 executed`);
  });
}

test('with a foreign Host no byte of a page or a shop is given, whatever form the path has', async () => {
  const paths = ['/', '/today', '/week', '/shelf', '/setup', '/TODAY', '/today/', '//today', '/./today', '/%74oday'];
  const api = [
    '/api/v1/shop',
    '/api/v1/plan',
    '/api/v1/keepout',
    '/API/v1/shop',
    '/api/v1/shop/',
    '/api/v1/../v1/shop',
  ];
  const tricks = [
    {},
    { RSC: '1' },
    { 'X-Middleware-Subrequest': 'proxy:proxy:proxy:proxy:proxy' },
    { 'X-Forwarded-Host': OWN_HOST },
  ];
  for (const path of [...paths, ...api]) {
    for (const headers of tricks) {
      const { status, body } = await knock({ method: 'GET', path, headers: { Host: 'shop.example', ...headers } });
      expect({ path, status: status === 403 || status === 400 }).toEqual({ path, status: true });
      expect(body.length).toBeLessThan(200);
    }
  }
  figure(25, `${(paths.length + api.length) * tricks.length} forms of an address: 0 bytes of a shop`);
});

test('another site is given no page, no figure and no file; a person who follows its link goes on with one tap', async ({
  page,
}) => {
  for (const path of ['/today', '/board/x', '/api/v1/plan', '/api/v1/calendar.ics', '/keep-out/now']) {
    const headers = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'no-cors', 'Sec-Fetch-Dest': 'script' };
    expect({ path, status: (await knock({ method: 'GET', path, headers })).status }).toEqual({ path, status: 403 });
  }
  await page.context().addCookies([{ name: 'shown-shop', value: demoShopHere(), url: OWN_ORIGIN }]);
  await page.route('http://shop.example/', (route) =>
    route.fulfill({ contentType: 'text/html', body: `<a href="${OWN_ORIGIN}/setup?from=mail">to the shop</a>` }),
  );
  await page.goto('http://shop.example/');
  await page.getByRole('link', { name: 'to the shop' }).click();
  await page.getByRole('link', { name: 'Open this page of Bench & Bottle' }).click();
  await expect(page.getByRole('heading', { name: 'Setup', level: 1 })).toBeVisible();
  expect(new URL(page.url()).search).toBe('?from=mail');
});

test('two Host headers are one too many', async () => {
  const twice = `GET /today HTTP/1.1\r\nHost: ${OWN_HOST}\r\nHost: shop.example\r\n\r\n`;
  expect(await rawKnock(twice)).toMatch(/ 400 /);
});

test('every name of this machine is answered, and X-Forwarded-* changes nothing', async () => {
  for (const host of [OWN_HOST, `localhost:${PORT}`, `[::1]:${PORT}`, `LOCALHOST:${PORT}`]) {
    const headers = { Host: host, 'X-Forwarded-Host': 'shop.example', 'X-Forwarded-Proto': 'https' };
    const { status, body } = await knock({ method: 'GET', path: '/setup', headers });
    expect({ host, status }).toEqual({ host, status: 200 });
    expect(body).not.toContain('shop.example');
  }
});
