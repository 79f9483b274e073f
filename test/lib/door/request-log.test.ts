import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, expect, test, vi } from 'vitest';
import { requestFigures } from '@/lib/door/request-counts';
import { placeOf, watchAnswer } from '@/lib/door/request-log';

afterEach(() => {
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
});

test.each([
  ['/', 'front'],
  ['/today', 'today'],
  ['/log/a-record-id?by=Ada', 'log'],
  ['/board/a-secret-of-a-link', 'board'],
  ['/api/v1/plan?weeks=2', 'api/plan'],
  ['/api/v1/calendar.ics?link=secret', 'api/calendar.ics'],
  ['/api/v1/<script>', 'api'],
  ['/wherever-a-stranger-knocks', 'other'],
])('of %s only the place is told: %s', (path, place) => {
  expect(placeOf(path)).toBe(place);
});

test('an answer is counted, and with LOG=json told on one line without anything about a person', async () => {
  vi.stubEnv('LOG', 'json');
  const said: string[] = [];
  const server = createServer((request, response) => {
    watchAnswer(request, response, 'the-request');
    response.statusCode = 404;
    response.end('no');
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  vi.spyOn(process.stdout, 'write').mockImplementation((part) => said.push(String(part)) > 0);
  await (await fetch(`http://127.0.0.1:${port}/board/secret-token?who=Ada`)).text();
  await vi.waitFor(() => expect(said).toHaveLength(1));
  vi.mocked(process.stdout.write).mockRestore();
  server.close();
  const line = JSON.parse(said[0] ?? '');
  expect(line).toMatchObject({ what: 'answer', id: 'the-request', method: 'GET', place: 'board', status: 404 });
  expect(Object.keys(line).sort()).toEqual(['at', 'id', 'method', 'ms', 'place', 'status', 'what']);
  expect(said[0]).not.toMatch(/secret|Ada|127\.0\.0\.1/);
  const { figures, durations } = requestFigures();
  expect(figures[0]?.values).toContainEqual({ labels: { place: 'board', method: 'GET', status: '4xx' }, value: 1 });
  expect(durations[0]?.count).toBe(1);
});
