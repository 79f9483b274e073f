import { expect, test, vi } from 'vitest';
import { z } from 'zod';
import { doorRoute } from '@/lib/door/door-route';
import { MOST_SHEET_BYTES, SheetBytes } from '@/shared/forms/safety-sheet';
import { accept } from '@/shared/outcome';

vi.mock('@/lib/access/who-asks', () => ({ whoAsks: async () => ({ kind: 'unowned' }) }));

const ours = { host: '127.0.0.1:3000', origin: 'http://127.0.0.1:3000' };
const PDF = 'application/pdf';
const bytes = new TextEncoder().encode('%PDF-1.7\nx\n%%EOF\n');

const kept = vi.fn(async ({ body }: { body: Uint8Array }) => accept({ size: body.length }));
const keep = doorRoute({ may: 'spray', query: z.strictObject({}), body: SheetBytes, takes: PDF }, kept);
const show = doorRoute(
  { may: 'spray', query: z.strictObject({}), saveAs: () => 'the sheet/of "soap".pdf', type: PDF },
  async () => accept(bytes),
);

async function send(body: BodyInit, headers: Record<string, string> = {}) {
  kept.mockClear();
  const request = new Request('http://localhost:3000/api/v1/sheet', {
    ...{ method: 'POST', headers: { ...ours, 'content-type': PDF, ...headers }, body },
    ...(body instanceof ReadableStream && { duplex: 'half' }),
  });
  const { status } = await keep(request);
  return { status, ran: kept.mock.calls.length };
}

test('a PDF that fits is taken as its bytes', async () => {
  expect(await send(bytes)).toEqual({ status: 200, ran: 1 });
});

const endless = () =>
  new ReadableStream({ pull: (controller) => controller.enqueue(new TextEncoder().encode('%PDF-1.7'.repeat(20_000))) });

test.each([
  ['longer than it may be', 413, new Uint8Array(MOST_SHEET_BYTES + 1), {}],
  ['longer than it may be, and says less', 413, new Uint8Array(MOST_SHEET_BYTES + 1), { 'content-length': '10' }],
  ['without an end', 413, endless(), {}],
  ['shorter than it says', 400, bytes, { 'content-length': '500' }],
  ['of another kind', 415, bytes, { 'content-type': 'text/html' }],
  ['squeezed', 415, bytes, { 'content-encoding': 'gzip' }],
  ['no PDF', 422, new TextEncoder().encode('<html>'), {}],
  ['cut off', 422, bytes.slice(0, 12), {}],
  ['from elsewhere', 403, bytes, { origin: 'http://shop.example' }],
])('a file that is %s is answered %i and nothing is kept', async (_, status, body, headers) => {
  expect(await send(body, headers)).toEqual({ status, ran: 0 });
});

test('a file is shown as what it is, under a name that is safe, and nothing in it may run or load', async () => {
  const answer = await show(new Request('http://localhost:3000/api/v1/sheet', { headers: ours }));
  expect(answer.status).toBe(200);
  expect(new Uint8Array(await answer.arrayBuffer())).toEqual(bytes);
  expect(answer.headers.get('content-type')).toBe(PDF);
  expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  expect(answer.headers.get('content-disposition')).toBe('inline; filename="the-sheet-of-soap-.pdf"');
  const policy = answer.headers.get('content-security-policy') ?? '';
  expect(policy).toContain("default-src 'none'");
  expect(policy).not.toMatch(/script-src|connect-src|frame-src/);
});
