import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { freePort } from '../run/free-port.js';
import { runs } from '../runs';
import { figure } from './figure';
import { booksOf, bringIn, mixesIn, mixOf, worksIn } from './one-bottle';
import { type Answer, serve } from './served';

const HELD_MS = runs(4_000, 10_000);

test('while another program holds the file, boards are answered, changes are refused in time, and then all goes on', {
  timeout: 300_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'held-'));
  const server = await serve(folder, await freePort());
  const shop = await bringIn(server);
  const other = new Database(join(folder, 'shop.db'));
  other.exec('BEGIN IMMEDIATE');
  const until = performance.now() + HELD_MS;
  const [boards, changes]: [Answer[], Answer[]] = [[], []];
  const looking = async () => {
    while (performance.now() < until) boards.push(await server.get('/keep-out/now', worksIn(shop)));
  };
  const changing = async () => {
    while (performance.now() < until - 3_000) changes.push(await server.post('/api/v1/mix/finish', mixOf(shop)));
  };
  await Promise.all([looking(), changing()]);
  other.exec('ROLLBACK');
  other.close();

  expect(boards.every(({ status }) => status === 200)).toBe(true);
  expect(changes.map(({ status, retryAfter }) => ({ status, isTold: retryAfter !== null }))).toEqual(
    changes.map(() => ({ status: 503, isTold: true })),
  );
  const slowest = Math.max(...[...boards, ...changes].map(({ ms }) => ms));
  expect((await server.post('/api/v1/mix/finish', mixOf(shop))).status).toBe(200);
  await server.stop();
  expect(mixesIn(booksOf(folder, shop))).toBe(1);
  const seconds = (ms: number) => `${(ms / 1_000).toFixed(1)} s`;
  figure(
    10,
    `held ${seconds(HELD_MS)}: ${boards.length} boards, ${changes.length} changes refused with 503, slowest answer ${seconds(slowest)}`,
  );
  rmSync(folder, { recursive: true, force: true });
});
