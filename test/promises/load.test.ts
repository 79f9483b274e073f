import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { freePort } from '../run/free-port.js';
import { isLong } from '../runs';
import { figure } from './figure';
import { booksOf, bringIn, mixesIn, mixOf, worksIn } from './one-bottle';
import { type Answer, type Served, serve } from './served';

const MB = 2 ** 20;

/** Ask again and again until the time is over, so many at once. Gives what was answered. */
async function askFor(ms: number, atOnce: number, ask: () => Promise<Answer>): Promise<Answer[]> {
  const until = performance.now() + ms;
  const answers: Answer[] = [];
  const client = async () => {
    while (performance.now() < until) answers.push(await ask());
  };
  await Promise.all(Array.from({ length: atOnce }, client));
  return answers;
}

/** How many answers a second, and the time that 99 of 100 stayed under. */
function told(what: string, answers: Answer[], ms: number): string {
  const times = answers.map((answer) => answer.ms).sort((a, b) => a - b);
  const p99 = times[Math.floor(times.length * 0.99)] ?? 0;
  return `${what} ${Math.round((answers.length * 1_000) / ms)} a second, p99 ${Math.round(p99)} ms`;
}

/** How much memory the server's process holds, where the system tells. */
function heldBytes(server: Served): number {
  const held = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${server.pid}/status`, 'utf8'))?.[1];
  return Number(held) * 1024;
}

async function withShop(work: (server: Served, shop: string, folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'load-'));
  const server = await serve(folder, await freePort());
  await work(server, await bringIn(server), folder);
  rmSync(folder, { recursive: true, force: true });
}

test.runIf(isLong)(
  'twenty boards and four clients that mix, for a minute: everybody is answered',
  { timeout: 600_000 },
  () =>
    withShop(async (server, shop, folder) => {
      const boards = await askFor(30_000, 20, () => server.get('/keep-out/now', worksIn(shop)));
      const mixes = await askFor(30_000, 4, () => server.post('/api/v1/mix/finish', mixOf(shop)));
      expect([...boards, ...mixes].filter(({ status }) => status !== 200)).toEqual([]);
      await server.stop();
      expect(mixesIn(booksOf(folder, shop))).toBe(mixes.length);
      figure(37, `${told('boards', boards, 30_000)}; ${told('mixes', mixes, 30_000)}; 0 errors`);
    }),
);

test.runIf(isLong && process.platform === 'linux')(
  'ten minutes of looking and mixing: memory and the write-ahead log stay small',
  { timeout: 1_200_000 },
  () =>
    withShop(async (server, shop, folder) => {
      const minutes: { held: number; log: number }[] = [];
      for (let minute = 0; minute < 10; minute += 1) {
        const looking = askFor(60_000, 2, () =>
          server.get(minute % 2 === 0 ? '/keep-out/now' : '/today', worksIn(shop)),
        );
        const mixing = askFor(60_000, 1, async () => {
          await new Promise((pause) => setTimeout(pause, 500));
          return server.post('/api/v1/mix/finish', mixOf(shop));
        });
        const answers = [...(await looking), ...(await mixing)];
        expect(answers.filter(({ status }) => status !== 200)).toEqual([]);
        const log = statSync(join(folder, 'shop.db-wal'), { throwIfNoEntry: false })?.size ?? 0;
        minutes.push({ held: heldBytes(server), log });
      }
      await server.stop();
      // After five minutes everything has been used that is ever kept; from then on memory must not go on growing.
      const [middle, last] = [minutes[4]?.held ?? 0, minutes[9]?.held ?? 0];
      const perMinute = (last - middle) / 5 / MB;
      const log = Math.max(...minutes.map((minute) => minute.log)) / MB;
      expect(perMinute).toBeLessThan(5);
      expect(log).toBeLessThan(64);
      figure(38, `memory ${perMinute.toFixed(1)} MB a minute after warm-up, log file at most ${log.toFixed(1)} MB`);
    }),
);
