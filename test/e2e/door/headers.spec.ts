import { figure } from '../../promises/figure';
import { expect, test } from '../page-test';
import { demoShopHere, knock, OWN_HOST, OWN_ORIGIN, rawKnock } from './knock';

const PAGES = ['/today', '/week', '/shelf', '/setup'];

const EVERY_KIND = [
  ...PAGES.map((path) => ({ what: path, path })),
  { what: 'a page that is not there', path: '/nope' },
  { what: 'a redirect', path: '/' },
  { what: 'the router’s own format', path: '/today', headers: { RSC: '1' } },
  { what: 'the HTTP API', path: '/api/v1/keepout' },
  { what: 'a refusal of the HTTP API', path: '/api/v1/plan?weeks=x' },
  { what: 'a download', path: '/api/v1/shop' },
  { what: 'a route that is not there', path: '/api/v1/nope' },
  { what: 'a request turned away', path: '/today', headers: { Host: 'shop.example' } },
  { what: 'a method turned away', path: '/today', method: 'DELETE' },
  { what: 'a form that cannot be read', path: '/today', method: 'POST', headers: { Origin: OWN_ORIGIN } },
];

for (const { what, ...sent } of EVERY_KIND) {
  test(`${what} carries every security header, and nothing that breaks plain http`, async () => {
    const { headers } = await knock({ method: 'GET', ...sent });
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'permissions-policy': expect.stringContaining('camera=(self), microphone=()'),
      'content-security-policy': expect.stringContaining("frame-ancestors 'none'"),
    });
    expect(headers['content-security-policy']).not.toMatch(
      /upgrade-insecure-requests|unsafe-eval|script-src[^;]*unsafe-inline/,
    );
    expect(headers).not.toHaveProperty('strict-transport-security');
    expect(headers).not.toHaveProperty('x-powered-by');
  });
}

test('built files carry the headers too', async () => {
  const { body } = await knock({ method: 'GET', path: '/today' });
  const script = /src="(\/_next\/static\/[^"]+\.js)"/.exec(body)?.[1];
  const { status, headers } = await knock({ method: 'GET', path: script ?? '' });
  expect(status).toBe(200);
  expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'cross-origin-resource-policy': 'same-origin' });
});

test('a hundred answers carry a hundred nonces, each on its own scripts', async () => {
  const nonces = new Set<string>();
  for (let count = 0; count < 100; count += 1) {
    const { headers, body } = await knock({ method: 'GET', path: '/setup' });
    const nonce = /'nonce-([^']+)'/.exec(String(headers['content-security-policy']))?.[1] ?? '';
    expect(nonce.length).toBeGreaterThan(20);
    const scripts = body.match(/<script[^>]*>/g) ?? [];
    expect(scripts.length).toBeGreaterThan(0);
    expect(scripts.filter((script) => !script.includes(`nonce="${nonce}"`))).toEqual([]);
    nonces.add(nonce);
  }
  expect(nonces.size).toBe(100);
  figure(26, '100 answers, 100 nonces, 0 violations on the pages walked');
});

test.describe(() => {
  test.use({ expectedErrors: [/404 \(Not Found\)/] });
  for (const path of [...PAGES, '/nope']) {
    test(`nothing on ${path} is refused by its own content policy`, async ({ page }) => {
      await page.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI, sourceFile }) => {
          console.error(`policy: ${violatedDirective} ${blockedURI} ${sourceFile}`);
        });
      });
      await page.context().addCookies([{ name: 'shown-shop', value: demoShopHere(), url: OWN_ORIGIN }]);
      const violations: string[] = [];
      page.on('console', (message) => {
        if (/policy/i.test(message.text())) violations.push(message.text());
      });
      await page.goto(path);
      await page.waitForLoadState('networkidle');
      expect(violations).toEqual([]);
    });
  }
});

test('TRACE is refused, and so is every method without a use', async () => {
  for (const method of ['TRACE', 'PUT', 'DELETE', 'PATCH', 'PROPFIND']) {
    const line = await rawKnock(`${method} /today HTTP/1.1\r\nHost: ${OWN_HOST}\r\nOrigin: ${OWN_ORIGIN}\r\n\r\n`);
    expect({ method, line }).toEqual({ method, line: 'HTTP/1.1 405 Method Not Allowed' });
  }
  expect(await rawKnock(`CONNECT shop.example:80 HTTP/1.1\r\nHost: ${OWN_HOST}\r\n\r\n`)).not.toMatch(/ 2\d\d /);
});

test('an address of another server, or a socket upgrade, leads nowhere', async () => {
  expect(await rawKnock(`GET http://shop.example/today HTTP/1.1\r\nHost: ${OWN_HOST}\r\n\r\n`)).toMatch(/ 400 /);
  const upgrade = `GET /_next/webpack-hmr HTTP/1.1\r\nHost: ${OWN_HOST}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n`;
  const key = 'Sec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n';
  expect(await rawKnock(upgrade + key)).not.toMatch(/ 101 /);
});
