import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { freePort } from '../run/free-port.js';
import { isLong } from '../runs';
import { figure } from './figure';
import { booksOf, bringIn, mixesIn, mixOf } from './one-bottle';
import { commandId, type Served, serve } from './served';

const CUTS = 100;
const CLIENTS = 4;
const canCompile = process.platform === 'linux' && spawnSync('cc', ['--version']).status === 0;

/** What the disk holds when the power goes: of each file what was asked to be on the disk last, and of others nothing. */
function cutPower(folder: string): void {
  for (const name of readdirSync(folder)) {
    if (/\.(db|db-wal)$/.test(name)) rmSync(join(folder, name));
    if (/\.db-shm$|\.half$/.test(name)) rmSync(join(folder, name), { force: true });
  }
  for (const name of readdirSync(folder)) {
    if (name.endsWith('.on-disk')) renameSync(join(folder, name), join(folder, name.slice(0, -'.on-disk'.length)));
  }
}

/** Clients that send mixes until the server is gone. Gives the ids that were acknowledged. */
async function sendUntilGone(server: Served, shop: string): Promise<string[]> {
  const acknowledged: string[] = [];
  const client = async () => {
    for (;;) {
      const id = commandId();
      const answer = await server.post('/api/v1/mix/finish', mixOf(shop, id)).catch(() => null);
      if (answer === null) return;
      expect(answer.status, JSON.stringify(answer.body)).toBe(200);
      acknowledged.push(id);
    }
  };
  const killed = new Promise((over) => setTimeout(over, 100 + Math.random() * 900)).then(() => server.kill());
  await Promise.all([killed, ...Array.from({ length: CLIENTS }, client)]);
  return acknowledged;
}

test.runIf(isLong && canCompile)(
  `${CUTS} power cuts lose nothing that was acknowledged`,
  {
    timeout: 4 * 3_600_000,
  },
  async () => {
    const all = mkdtempSync(join(tmpdir(), 'power-'));
    const shim = join(all, 'power-cut.so');
    execFileSync('cc', ['-shared', '-fPIC', '-o', shim, join(import.meta.dirname, 'power-cut.c'), '-ldl']);
    const folder = join(all, 'data');
    const watched = { LD_PRELOAD: shim, POWER_CUT_FOLDER: folder };
    const port = await freePort();
    let server = await serve(folder, port, watched);
    const shop = await bringIn(server);
    let sent = 0;
    let lost = 0;
    for (let cut = 0; cut < CUTS; cut += 1) {
      const acknowledged = await sendUntilGone(server, shop);
      cutPower(folder);
      const books = booksOf(folder, shop);
      expect(books.sound).toBe(true);
      expect([books.records, books.draws]).toEqual([mixesIn(books), mixesIn(books)]);
      sent += acknowledged.length;
      lost += acknowledged.filter((id) => !books.commands.has(id)).length;
      expect(existsSync(join(folder, 'shop.db'))).toBe(true);
      server = await serve(folder, port, watched);
    }
    await server.stop();
    expect({ lost, sent: sent > CUTS }).toEqual({ lost: 0, sent: true });
    figure(2, `${CUTS} cuts amid ${sent} acknowledged mixes: ${lost} lost, 0 half`);
    rmSync(all, { recursive: true, force: true });
  },
);
