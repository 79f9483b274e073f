import { expect, test, vi } from 'vitest';
import { z } from 'zod';
import { JSON_BYTES } from '@/lib/door/body-limits';
import { doorRoute } from '@/lib/door/door-route';
import { Problem } from '@/shared/api/problem';
import { accept, refuse } from '@/shared/outcome';

vi.mock('@/lib/access/who-asks', () => ({ whoAsks: async () => ({ kind: 'unowned' }) }));

const ours = { host: '127.0.0.1:3000', origin: 'http://127.0.0.1:3000', 'content-type': 'application/json' };
const seen = vi.fn(async ({ body }: { body: { text: string } }) => accept({ length: body.text.length }));
const route = doorRoute({ may: 'spray', query: z.strictObject({}), body: z.strictObject({ text: z.string() }) }, seen);

const tooLong = `{"text":"${'x'.repeat(JSON_BYTES)}"}`;

async function send(body: BodyInit | null, headers: Record<string, string> = {}, path = '/api/v1/x') {
  seen.mockClear();
  const request = new Request(`http://localhost:3000${path}`, {
    method: 'POST',
    headers: { ...ours, ...headers },
    body,
    ...(body instanceof ReadableStream && { duplex: 'half' }),
  });
  const answer = await route(request);
  const said = await answer.json();
  return { status: answer.status, said, ran: seen.mock.calls.length };
}

const endless = () =>
  new ReadableStream({ pull: (controller) => controller.enqueue(new TextEncoder().encode('x'.repeat(20_000))) });

test('a body that fits is answered', async () => {
  expect(await send('{"text":"abc"}')).toEqual({ status: 200, said: { length: 3 }, ran: 1 });
});

test.each([
  ['longer than it may be, and says so', 413, tooLong, { 'content-length': String(tooLong.length) }],
  ['longer than it may be, and says less', 413, tooLong, { 'content-length': '10' }],
  ['shorter than it says', 400, '{"text":"abc"}', { 'content-length': '500' }],
  ['longer than it says', 400, '{"text":"abc"}', { 'content-length': '5' }],
  ['cut off', 400, '{"text":', {}],
  ['nested 33 deep', 400, '['.repeat(33), {}],
  ['empty', 400, '', {}],
  ['of another kind', 415, '{"text":"abc"}', { 'content-type': 'text/plain' }],
  ['squeezed', 415, '{"text":"abc"}', { 'content-encoding': 'gzip' }],
  ['not what the route takes', 422, '{"text":5}', {}],
  ['with a field too many', 422, '{"text":"a","more":1}', {}],
  ['from elsewhere', 403, '{"text":"abc"}', { origin: 'http://shop.example' }],
  ['to another Host', 403, '{"text":"abc"}', { host: 'shop.example' }],
])('a body that is %s is answered %i and does nothing', async (_, status, body, headers) => {
  const answer = await send(body, headers);
  expect(answer).toMatchObject({ status, ran: 0, said: { message: expect.stringMatching(/\.$/) } });
  expect(Problem.parse(answer.said).code).toBe(status === 422 ? 'unreadable' : 'turned-away');
});

test('the sixty-first change in a minute is not made, and says when to come back', async () => {
  const visitor = { 'x-bench-address': '10.0.0.3' };
  for (let change = 1; change <= 60; change += 1) {
    expect(await send('{"text":"abc"}', visitor)).toMatchObject({ status: 200 });
  }
  expect(await send('{"text":"abc"}', visitor)).toMatchObject({
    status: 429,
    ran: 0,
    said: { message: expect.stringContaining('Wait') },
  });
  expect(await send('{"text":"abc"}', { 'x-bench-address': '10.0.0.4' })).toMatchObject({ status: 200 });
});

test('a body that never ends is cut off when it is too long', async () => {
  expect(await send(endless())).toMatchObject({ status: 413, ran: 0 });
});

test('a body that breaks off while it is read does nothing', async () => {
  const broken = new ReadableStream({
    start: (controller) => controller.enqueue(new TextEncoder().encode('{"text":"a')),
    pull: (controller) => controller.error(new Error('hung up')),
  });
  expect(await send(broken)).toMatchObject({ status: 400, ran: 0 });
});

test('a query field that is not offered, or comes twice, is refused', async () => {
  expect(await send('{"text":"abc"}', {}, '/api/v1/x?y=1')).toMatchObject({ status: 400, ran: 0 });
});

test('a refusal of the shop is its code and a sentence, with the status that fits it', async () => {
  seen.mockImplementationOnce(async () => refuse({ code: 'shop-changed-since-preview' }) as never);
  const { status, said } = await sendKept();
  expect(status).toBe(409);
  expect(Problem.parse(said)).toMatchObject({
    code: 'shop-changed-since-preview',
    message: expect.stringContaining('preview'),
  });
});

test('a fault of ours gives a reference and nothing else', async () => {
  const log = vi.spyOn(console, 'error').mockImplementation(() => {});
  seen.mockRejectedValueOnce(new Error('SQLITE_FULL at /home/owner/shop.db'));
  const { status, said } = await sendKept();
  expect(status).toBe(500);
  expect(JSON.stringify(said)).not.toMatch(/SQLITE|owner/);
  log.mockRestore();
});

async function sendKept() {
  const request = new Request('http://localhost:3000/api/v1/x', {
    method: 'POST',
    headers: ours,
    body: '{"text":"abc"}',
  });
  const answer = await route(request);
  return { status: answer.status, said: await answer.json() };
}
