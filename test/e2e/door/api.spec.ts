import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { ImportAnswer, KeepoutAnswer, MixAnswer, PlanAnswer, PreviewAnswer, WorkingAnswer } from '@/shared/api/answers';
import { everyRow, knock, OWN_ORIGIN } from './knock';

const root = join(import.meta.dirname, '../../..');
const get = async (path: string) => {
  const { status, body } = await knock({ method: 'GET', path });
  return { status, answer: JSON.parse(body) };
};
const post = async (path: string, body: unknown) => {
  const headers = { Origin: OWN_ORIGIN, 'Content-Type': 'application/json' };
  const heard = await knock({ path, headers, body: JSON.stringify(body) });
  return { status: heard.status, answer: JSON.parse(heard.body) };
};

/** What the `shop` command prints for the shop that the API exports. */
async function shopCommand(verb: string, ...options: string[]): Promise<unknown> {
  const { body } = await knock({ method: 'GET', path: '/api/v1/shop' });
  const file = join(mkdtempSync(join(process.env.E2E_DATA ?? '', 'shop-file-')), 'shop.json');
  writeFileSync(file, body);
  const { stdout } = spawnSync(
    process.execPath,
    ['lib/command-line/shop.js', verb, ...(verb === 'schema' ? [] : [file]), ...options],
    {
      cwd: root,
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
    },
  );
  return JSON.parse(stdout);
}

test('the plan is the one that the shop command prints for the exported file', async () => {
  for (const [today, weeks] of [
    ['2026-04-14', '26'],
    ['2026-10-20', '4'],
    ['2027-03-01', '1'],
  ] as const) {
    const { status, answer } = await get(`/api/v1/plan?today=${today}&weeks=${weeks}`);
    expect(status).toBe(200);
    expect(answer.sprayings.length).toBeGreaterThan(0);
    expect(PlanAnswer.parse(answer)).toEqual(await shopCommand('plan', '--today', today, '--weeks', weeks));
  }
  expect((await get('/api/v1/plan')).answer).toEqual(await shopCommand('plan'));
});

test('the closed benches are those that the shop command prints', async () => {
  for (const now of ['2026-04-14T13:30:00Z', '2026-04-13T23:30:00-04:00']) {
    const { answer } = await get(`/api/v1/keepout?now=${encodeURIComponent(now)}`);
    expect(KeepoutAnswer.parse(answer)).toEqual(await shopCommand('keepout', '--now', now));
  }
});

test('the mix sheet is the one that the shop command prints, and bad questions are refused with a sentence', async () => {
  const { recipes } = (await get('/api/v1/shop')).answer;
  const recipe = recipes[0].id;
  const asked = `recipe=${encodeURIComponent(recipe)}&volume=2%20gal&today=2026-04-14`;
  const { status, answer } = await get(`/api/v1/mix?${asked}`);
  expect(status).toBe(200);
  const options = ['--recipe', recipe, '--volume', '2 gal', '--today', '2026-04-14'];
  expect(MixAnswer.parse(answer)).toEqual(await shopCommand('mix', ...options));
  expect((await get('/api/v1/mix?recipe=nothing&volume=2%20gal')).status).toBe(404);
  const nothing = await get(`/api/v1/mix?recipe=${encodeURIComponent(recipe)}&volume=0%20mL`);
  expect(nothing).toMatchObject({
    status: 400,
    answer: { faults: [{ message: expect.stringMatching(/above nothing/) }] },
  });
});

test('the schema is the one that the shop command prints', async () => {
  expect((await get('/api/v1/schema')).answer).toEqual(await shopCommand('schema'));
});

test('a figure opens to its working, and an address without a figure is not found', async () => {
  const plan = (await get('/api/v1/plan')).answer;
  const known = plan.sprayings.find(({ materialCost }: { materialCost: string | null }) => materialCost !== null);
  const figure = `spraying/${known.program}/${known.date}/materialCost`;
  const { status, answer } = await get(`/api/v1/working?figure=${encodeURIComponent(figure)}`);
  expect(status).toBe(200);
  expect(WorkingAnswer.parse(answer).steps.length).toBeGreaterThan(0);
  expect((await get('/api/v1/working?figure=nothing')).status).toBe(404);
});

test('an export is a file to save, and imported into a new shop it comes out the same', async () => {
  const exported = await knock({ method: 'GET', path: '/api/v1/shop' });
  expect(exported.headers['content-disposition']).toMatch(/^attachment; filename="[\w.-]+\.json"$/);
  const commandId = '00000000000000000000000000000001';
  const body = { commandId, into: 'new', text: exported.body };
  const first = await post('/api/v1/shop/import', body);
  expect(first.status).toBe(200);
  const { shopId } = ImportAnswer.parse(first.answer);
  const again = await knock({ method: 'GET', path: `/api/v1/shop?shop=${shopId}` });
  expect(again.body).toBe(exported.body);

  const before = everyRow();
  expect((await post('/api/v1/shop/import', body)).answer).toEqual(first.answer);
  const other = { ...body, text: exported.body.replace('"safetyDays": 3', '"safetyDays": 4') };
  expect(other.text).not.toBe(body.text);
  expect((await post('/api/v1/shop/import', other)).status).toBe(409);
  expect(everyRow()).toBe(before);
});

test('a preview changes nothing, and an import goes in only as it was previewed', async () => {
  const { body: text } = await knock({ method: 'GET', path: '/api/v1/shop' });
  const made = await post('/api/v1/shop/import', { commandId: '00000000000000000000000000000002', into: 'new', text });
  const into = made.answer.shopId;
  const changed = text.replace('"safetyDays": 3', '"safetyDays": 5');
  const before = everyRow();
  const preview = await post('/api/v1/shop/preview', { into, text: changed });
  const { comparison, fingerprint } = PreviewAnswer.parse(preview.answer);
  expect(comparison.settings).toEqual([{ field: 'safetyDays', from: 3, to: 5 }]);
  expect(everyRow()).toBe(before);

  const send = (commandId: string, seen: string | null | undefined) =>
    post('/api/v1/shop/import', { commandId, into, fingerprint: seen, text: changed });
  expect((await send('00000000000000000000000000000003', undefined)).status).toBe(422);
  expect((await send('00000000000000000000000000000004', 'another')).status).toBe(409);
  expect(everyRow()).toBe(before);
  expect((await send('00000000000000000000000000000005', fingerprint)).status).toBe(200);
  expect((await send('00000000000000000000000000000006', fingerprint)).status).toBe(409);
  expect((await get(`/api/v1/shop?shop=${into}`)).answer.shop.safetyDays).toBe(5);
});

test('every fault of a file is named with its place, and nothing of it is imported', async () => {
  const before = everyRow();
  const text = '{"format":"bench-and-bottle/shop@1","shop":{"name":"A","timeZone":"Mars/Olympus"},"lots":3}';
  for (const path of ['preview', 'import']) {
    const command = path === 'import' ? { commandId: '00000000000000000000000000000007' } : {};
    const { status, answer } = await post(`/api/v1/shop/${path}`, { ...command, into: 'new', text });
    expect(status).toBe(422);
    expect(answer.faults.length).toBeGreaterThan(1);
    expect(answer.faults.map((fault: { path: string }) => fault.path).join(' ')).toContain('timeZone');
  }
  expect(everyRow()).toBe(before);
});

test('a question that is not offered is refused with its field, and a shop that is not there is not found', async () => {
  for (const asked of [
    'plan?weeks=0',
    'plan?weeks=105',
    'plan?weeks=1.5',
    'plan?today=2026-02-30',
    'plan?week=3',
    'plan?weeks=1&weeks=2',
  ]) {
    const { status, answer } = await get(`/api/v1/${asked}`);
    expect({ asked, status }).toEqual({ asked, status: 400 });
    expect(answer.faults.length).toBeGreaterThan(0);
  }
  for (const path of ['plan', 'keepout', 'shop']) expect((await get(`/api/v1/${path}?shop=nobody`)).status).toBe(404);
});

test('a route that is not there says where to look, as data', async () => {
  const read = await get('/api/v1/nope');
  expect(read).toEqual({
    status: 404,
    answer: { code: 'no-such-route', message: expect.stringContaining('/api/v1/openapi.json') },
  });
  expect((await post('/api/v2/shop', {})).status).toBe(404);
});

test('the description names every route, and every route is described', async () => {
  const { answer } = await get('/api/v1/openapi.json');
  expect(answer.openapi).toBe('3.1.0');
  for (const [path, methods] of Object.entries<Record<string, unknown>>(answer.paths)) {
    const isRead = 'get' in methods;
    const method = isRead ? 'GET' : 'POST';
    const headers = { Origin: OWN_ORIGIN, 'Content-Type': 'application/json' };
    const { status } = await knock({ method, path: `/api/v1${path}`, headers, ...(isRead ? {} : { body: '{}' }) });
    expect({ path, found: ![404, 405].includes(status) }).toEqual({ path, found: true });
  }
  const references = JSON.stringify(answer).match(/#\/components\/schemas\/\w+/g) ?? [];
  for (const reference of new Set(references)) {
    expect(answer.components.schemas).toHaveProperty(reference.split('/').at(-1) ?? '');
  }
});
