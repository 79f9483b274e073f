import { expect, test, vi } from 'vitest';
import { GET } from '@/app/api/v1/calendar.ics/route';
import { makeSharedLink } from '@/lib/commands/make-shared-link';
import { revokeSharedLink } from '@/lib/commands/revoke-shared-link';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { newId } from '@/lib/data/new-id';
import { workingLinks } from '@/lib/data/shared-links';
import { Problem } from '@/shared/api/problem';
import { Day } from '@/shared/time/day';
import { smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

// The route reads the machine's own clock, which must stand where that of the commands does.
vi.hoisted(() => {
  process.env.BENCH_CLOCK = '2026-03-31T09:00:00Z';
});

const get = (link: string, headers: Record<string, string> = {}) =>
  GET(
    new Request(`http://localhost:3000/api/v1/calendar.ics?link=${encodeURIComponent(link)}`, {
      headers: { host: '127.0.0.1:3000', ...headers },
    }),
  );

async function shopWithLink(kind: 'calendar' | 'board' = 'calendar') {
  const shopId = await smallShop();
  await makeSharedLink({ commandId: newId(), shopId, kind }, CLOCK);
  const [link] = await workingLinks(shopId);
  if (!link) throw new Error('there is no link');
  return { shopId, link };
}

test('a link gives a calendar file that nobody keeps, under a name that calendar programs open', async () => {
  const { link } = await shopWithLink();
  const answer = await get(link.token);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
  expect(answer.headers.get('cache-control')).toBe('no-store');
  expect(answer.headers.get('content-disposition')).toContain('sprayings.ics');
  const text = await answer.text();
  expect(text).toContain('BEGIN:VCALENDAR');
  expect(text).not.toContain(link.token);
  expect(text.replace(/\r\n /g, '')).toContain('SUMMARY:Not known: KEEP OUT of Bench');
});

test('whoever has it already is told so, and gets it anew once the shop has changed', async () => {
  const { shopId, link } = await shopWithLink();
  const tag = (await get(link.token)).headers.get('etag') ?? '';
  expect(tag).toMatch(/^"[\w-]{24}"$/);
  const again = await get(link.token, { 'if-none-match': `"other", W/${tag}` });
  expect({ status: again.status, body: await again.text() }).toEqual({ status: 304, body: '' });
  await skipSpraying({ commandId: newId(), shopId, program: 'g', on: Day.parse('2026-03-03'), reason: 'rain' }, CLOCK);
  expect((await get(link.token, { 'if-none-match': tag })).status).toBe(200);
});

test('a revoked link, one of another kind and one that never was answer as any address where nothing is', async () => {
  const { shopId, link } = await shopWithLink();
  await revokeSharedLink({ commandId: newId(), shopId, link: link.id }, CLOCK);
  await makeSharedLink({ commandId: newId(), shopId, kind: 'board' }, CLOCK);
  const [board] = await workingLinks(shopId);
  const answers = await Promise.all([link.token, board?.token ?? '', 'never-was'].map((token) => get(token)));
  for (const answer of answers) {
    expect(answer.status).toBe(404);
    expect(answer.headers.get('etag')).toBeNull();
    expect(Problem.parse(await answer.json()).code).toBe('no-such-route');
  }
});

test('it passes the door as every route: another Host is turned away', async () => {
  const { link } = await shopWithLink();
  expect((await get(link.token, { host: 'shop.example' })).status).toBe(403);
});
