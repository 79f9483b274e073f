import { createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, expect, test, vi } from 'vitest';
import { concurrencyGate } from '@/lib/door/concurrency';
import { frontOf } from '@/lib/door/front';

let server: Server;
let port: number;
const seen = vi.fn();

/** A server behind the front that answers each request after `answerMs` with the body that it was sent. */
async function serve(answerMs = 0, gate = concurrencyGate()) {
  seen.mockClear();
  server = createServer(
    frontOf(async (asked, response) => {
      const parts: Buffer[] = [];
      for await (const part of asked) parts.push(part);
      seen(asked.url, asked.headers);
      setTimeout(() => response.end(Buffer.concat(parts)), answerMs);
    }, gate),
  );
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  port = (server.address() as AddressInfo).port;
  vi.stubEnv('PORT', String(port));
}

afterEach(() => {
  server.closeAllConnections();
  server.close();
  vi.unstubAllEnvs();
});

type Answer = { status: number; type: string; body: string; retryAfter?: string };

function send(method: string, path: string, headers: Record<string, string> = {}, body = ''): Promise<Answer> {
  const host = `127.0.0.1:${port}`;
  const length = body === '' ? {} : { 'Content-Length': String(Buffer.byteLength(body)) };
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, method, path, headers: { Host: host, ...length, ...headers } });
    sent.on('error', reject);
    sent.on('response', async (answer) => {
      const parts: Buffer[] = [];
      for await (const part of answer) parts.push(part);
      const { 'content-type': type = '', 'retry-after': retryAfter } = answer.headers;
      resolve({ status: answer.statusCode ?? 0, type, body: Buffer.concat(parts).toString(), retryAfter });
    });
    sent.end(body);
  });
}

const field = (name: string, value: string) =>
  `--cut\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`;
const form = (...fields: [string, string][]) =>
  `${fields.map(([name, value]) => field(name, value)).join('')}--cut--\r\n`;
const formHeaders = () => ({
  Origin: `http://127.0.0.1:${port}`,
  'Content-Type': 'multipart/form-data; boundary=cut',
});

test('a form arrives byte for byte, however large it is', async () => {
  await serve();
  const body = form(['0', '[{"a":["b"]}]'], ['notes', `${'é['.repeat(200_000)} "`]);
  expect(await send('POST', '/setup', formHeaders(), body)).toMatchObject({ status: 200, body });
});

test.each([
  ['32 deep is let in', 32, 200],
  ['33 deep is turned away before anything parses it', 33, 400],
])('a form whose JSON nests %s', async (_, depth, status) => {
  await serve();
  const body = form(['name', 'x'], ['0', '['.repeat(depth) + ']'.repeat(depth)]);
  expect((await send('POST', '/setup', formHeaders(), body)).status).toBe(status);
  expect(seen).toHaveBeenCalledTimes(status === 200 ? 1 : 0);
});

test('brackets inside a text of that JSON do not count', async () => {
  await serve();
  const body = form(['0', JSON.stringify(['[{'.repeat(50), 'a"[', '\\'])]);
  expect((await send('POST', '/setup', formHeaders(), body)).status).toBe(200);
});

test.each(['cross-site', 'same-site', 'else'])(
  'what a browser says is asked %s is refused, page or change',
  async (site) => {
    await serve();
    const asked = { 'Sec-Fetch-Site': site };
    expect((await send('GET', '/today', asked)).status).toBe(403);
    expect((await send('GET', '/api/v1/plan', asked)).status).toBe(403);
    expect((await send('POST', '/setup', { ...formHeaders(), ...asked }, form(['a', 'b']))).status).toBe(403);
    expect(seen).not.toHaveBeenCalled();
  },
);

test.each(['none', 'same-origin'])('what a browser says is asked %s is let in', async (site) => {
  await serve();
  expect((await send('GET', '/today', { 'Sec-Fetch-Site': site })).status).toBe(200);
});

test('a person who followed a link on another site gets one link to go on with, and nothing of the shop', async () => {
  await serve();
  const followed = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'navigate', 'Sec-Fetch-Dest': 'document' };
  const answer = await send('GET', `/board/t?a="><script>&b='`, followed);
  expect(answer).toMatchObject({ status: 403, type: 'text/html; charset=utf-8' });
  expect(answer.body).toContain('href="/board/t?a=&#34;&#62;&#60;script&#62;&#38;b=&#39;"');
  expect(answer.body).not.toContain('<script>');
  const framed = await send('GET', '/today', { ...followed, 'Sec-Fetch-Dest': 'iframe' });
  expect(framed.type).toBe('application/json; charset=utf-8');
});

test('one visitor has so many answered at once; the next wait, and one too many is refused with when to come back', async () => {
  await serve(150, concurrencyGate({ atOnce: 2, waiting: 2, patienceMs: 5_000 }));
  const began = Date.now();
  const answers = await Promise.all(Array.from({ length: 5 }, () => send('GET', '/today')));
  expect(answers.map(({ status }) => status).sort()).toEqual([200, 200, 200, 200, 503]);
  expect(answers.find(({ status }) => status === 503)?.retryAfter).toBe('3');
  expect(Date.now() - began).toBeGreaterThanOrEqual(290);
  expect((await send('GET', '/today')).status).toBe(200);
});

test('who waits too long is refused, and the place of who hung up is free again', async () => {
  await serve(400, concurrencyGate({ atOnce: 1, waiting: 5, patienceMs: 100 }));
  const [first, second] = await Promise.all([send('GET', '/today'), send('GET', '/today')]);
  expect([first.status, second.status].sort()).toEqual([200, 503]);
  expect((await send('GET', '/today')).status).toBe(200);
});

test('an address that a sender claims is not believed', async () => {
  await serve();
  await send('GET', '/today', { 'X-Bench-Address': '10.0.0.9' });
  expect(seen.mock.calls[0]?.[1]).toMatchObject({ 'x-bench-address': '127.0.0.1' });
});
