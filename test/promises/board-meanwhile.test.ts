import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { Day } from '@/shared/time/day';
import { generatedShop } from '../bench/generated-shop';
import { freePort } from '../run/free-port.js';
import { bringIn, worksIn } from './one-bottle';
import { commandId, type Served, serve } from './served';

/*
 * No request holds up another: the board of a small shop is asked for again and again while the same program reads, compares
 * and brings in a large file, and works out two years of it. The search for what to buy is not among them.
 *
 * It measures times, so it stands here, where nothing else runs, and away from the walks, of which two run at once.
 */

const NOW = '2026-04-14T13:30:00Z';
const LARGE = JSON.stringify(generatedShop({ products: 1_500, programs: 120, benches: 40 }));

/** Ask for the board of a shop until some work is done. Gives how long each answer took, ms, the quickest first. */
async function boardMeanwhile(server: Served, shop: string, work: Promise<unknown>): Promise<number[]> {
  let isOver = false;
  const over = work.finally(() => {
    isOver = true;
  });
  const waits: number[] = [];
  while (!isOver) {
    const { status, ms } = await server.get('/keep-out/now', worksIn(shop));
    expect(status).toBe(200);
    waits.push(ms);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  await over;
  return waits.sort((a, b) => a - b);
}

const middleOf = (waits: readonly number[]): number => waits[waits.length >> 1] ?? 0;

test('the board is answered while a large shop is brought in and planned', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'meanwhile-'));
  const server = await serve(folder, await freePort(), { BENCH_CLOCK: NOW });
  const small = await bringIn(server, demoShop(Day.parse('2026-04-14')));
  const waits: Record<string, number[]> = {};
  // The first answer of a server reads everything in.
  await boardMeanwhile(server, small, server.get('/today'));
  const quiet = middleOf(await boardMeanwhile(server, small, new Promise((resolve) => setTimeout(resolve, 1_500))));

  const looked = server.post('/api/v1/shop/preview', { into: 'new', text: LARGE });
  waits.preview = await boardMeanwhile(server, small, looked);
  expect((await looked).status).toBe(200);
  const brought = server.post('/api/v1/shop/import', { commandId: commandId(), into: 'new', text: LARGE });
  waits.import = await boardMeanwhile(server, small, brought);
  const { shopId } = (await brought).body as { shopId: string };
  const plan = server.get(`/api/v1/plan?weeks=104&shop=${shopId}`);
  waits.plan = await boardMeanwhile(server, small, plan);
  expect((await plan).status).toBe(200);

  await server.stop();
  rmSync(folder, { recursive: true, force: true });
  for (const [what, its] of Object.entries(waits)) {
    const [middle, most] = [middleOf(its), its.at(-1) ?? 0];
    const figures = `${its.length} answers, ${middle.toFixed(0)} ms (${quiet.toFixed(0)} alone), ${most.toFixed(0)} at most`;
    console.log(`the board during ${what}: ${figures}`);
    // On a machine that is busy with other things, measured by what the board takes there alone. On one thread it waited
    // for as long as all of this takes.
    expect(middle, what).toBeLessThan(Math.max(100, 5 * quiet));
    expect(most, what).toBeLessThan(Math.max(3_000, 25 * quiet));
  }
});
