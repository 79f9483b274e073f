import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { freePort } from '../run/free-port.js';
import { runs } from '../runs';
import { figure } from './figure';
import { booksOf, bringIn, mixesIn, mixOf } from './one-bottle';
import { commandId, type Served, serve } from './served';

const KILLS = runs(3, 500);
const CLIENTS = 4;

/** Clients that send mixes until the server is gone. Gives the ids that were acknowledged, and those nobody knows of. */
async function sendUntilGone(server: Served, shop: string) {
  const acknowledged: string[] = [];
  const unknown: string[] = [];
  const client = async () => {
    for (;;) {
      const id = commandId();
      const answer = await server.post('/api/v1/mix/finish', mixOf(shop, id)).catch(() => null);
      if (answer === null) return void unknown.push(id);
      expect(answer.status, JSON.stringify(answer.body)).toBe(200);
      acknowledged.push(id);
    }
  };
  const killed = new Promise((over) => setTimeout(over, 100 + Math.random() * 900)).then(() => server.kill());
  await Promise.all([killed, ...Array.from({ length: CLIENTS }, client)]);
  return { acknowledged, unknown };
}

test(`${KILLS} times killed while it writes: what was acknowledged is there, once and whole`, {
  timeout: 4 * 3_600_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'killed-'));
  const port = await freePort();
  let server = await serve(folder, port);
  const shop = await bringIn(server);
  const sent = new Set<string>();
  let repeated = 0;
  for (let kill = 0; kill < KILLS; kill += 1) {
    const { acknowledged, unknown } = await sendUntilGone(server, shop);
    const after = booksOf(folder, shop);
    expect(after.sound).toBe(true);
    expect(acknowledged.filter((id) => !after.commands.has(id))).toEqual([]);
    server = await serve(folder, port);
    for (const id of unknown) {
      if (after.commands.has(id)) repeated += 1;
      expect((await server.post('/api/v1/mix/finish', mixOf(shop, id))).status).toBe(200);
    }
    for (const id of [...acknowledged, ...unknown]) sent.add(id);
  }
  await server.stop();
  const books = booksOf(folder, shop);
  expect([mixesIn(books), books.records, books.draws]).toEqual([sent.size, sent.size, sent.size]);
  figure(
    1,
    `${KILLS} kills amid ${sent.size} mixes: 0 lost, 0 half, 0 double; ${repeated} had been kept unacknowledged and were answered again`,
  );
  rmSync(folder, { recursive: true, force: true });
});
