import { expect, test, vi } from 'vitest';
import { z } from 'zod';
import { doorRoute } from '@/lib/door/door-route';
import { accept, refuse } from '@/shared/outcome';

vi.mock('@/lib/access/who-asks', () => ({ whoAsks: async () => ({ kind: 'unowned' }) }));

const HEADERS = { host: '127.0.0.1:3000', origin: 'http://127.0.0.1:3000', 'content-type': 'application/json' };
const body = z.strictObject({ what: z.enum(['well', 'no']) });
const route = doorRoute(
  { may: 'spray', query: z.strictObject({}), body, tells: true },
  async ({ body: { what }, tell }) => {
    await tell({ step: 'read', lines: 2 });
    return what === 'well' ? accept({ lines: 2 }) : refuse({ code: 'not-found', what: 'shop', id: 'x' });
  },
);

const send = (what: string, accept?: string) =>
  route(
    new Request('http://localhost:3000/api/v1/x', {
      method: 'POST',
      headers: { ...HEADERS, ...(accept && { accept }) },
      body: JSON.stringify({ what }),
    }),
  );

test('whoever accepts steps is told them line by line, and last the answer with its status', async () => {
  const answer = await send('well', 'application/x-ndjson');
  expect(answer.headers.get('content-type')).toMatch(/^application\/x-ndjson/);
  expect(answer.headers.get('cache-control')).toMatch(/no-store/);
  expect(await answer.text()).toBe('{"step":"read","lines":2}\n{"status":200,"answer":{"lines":2}}\n');
});

test('a refusal comes as the last line, too', async () => {
  expect(JSON.parse((await (await send('no', 'application/x-ndjson')).text()).split('\n')[1] ?? '')).toMatchObject({
    ...{ status: 404, answer: { message: expect.stringMatching(/no shop/) } },
  });
});

test('whoever does not gets the answer alone', async () => {
  const answer = await send('well');
  expect([answer.status, await answer.json()]).toEqual([200, { lines: 2 }]);
  expect((await send('no')).status).toBe(404);
});

test('a body that is refused is refused with its own status, before any step', async () => {
  expect((await send('else', 'application/x-ndjson')).status).toBe(422);
});
