import { Worker } from 'node:worker_threads';
import { afterEach, expect, test, vi } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import { PIECES_ON_THE_WAY } from '@/lib/threads/answer';
import { begin } from '@/lib/threads/job';
import { readOnThread, writeOnThread } from '@/lib/threads/on-job-thread';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { runs } from '../../runs';
import { CLOCK, freshDatabase } from '../data/fresh-database';
import { dailyShop } from './daily-shop';

/* Whatever is asked, a question has an upper bound in time and in memory, and the program goes on after it. */

afterEach(() => {
  vi.restoreAllMocks();
});

const PLAN = { what: 'plan', shop: 's', today: null, weeks: 1, flags: 'daily' } as const;

/** A thread that answers every question with this code. */
function handOf(code: string, most?: number) {
  const room = new Int32Array(new SharedArrayBuffer(4)).fill(PIECES_ON_THE_WAY);
  const resourceLimits = most === undefined ? {} : { maxOldGenerationSizeMb: most };
  const body = `require('worker_threads').parentPort.on('message', () => { ${code} });`;
  return { worker: new Worker(body, { eval: true, resourceLimits }), room };
}

test('a question that never ends is stopped after its seconds, with a sentence', async () => {
  const job = begin(handOf('for (;;);'), PLAN, 0.3, {});
  expect(await job.outcome).toMatchObject({
    refusal: { code: 'too-much-work', said: expect.stringMatching(/after 0\.3 seconds.*Nothing was changed/) },
  });
  expect(await job.ended).toBeNull();
});

test('a question that takes more memory than a thread has is stopped, and this program goes on', async () => {
  const before = process.memoryUsage().rss;
  const job = begin(handOf('const all = []; for (;;) all.push(new Array(10_000).fill({}));', 40), PLAN, 60, {});
  expect(await job.outcome).toMatchObject({
    refusal: { code: 'too-much-work', said: expect.stringContaining('more memory than one question may have') },
  });
  expect(await job.ended).toBeNull();
  expect(process.memoryUsage().rss - before).toBeLessThan(400e6);
});

type Threads = { threads?: { reading: { worker: Worker } | null } };
const limitsSet = (spy: { mock: { calls: unknown[][] } }) => spy.mock.calls.map(([, ms]) => ms);

test('a thread has 700 MB; a question has 60 seconds, and an import 180', async () => {
  const shop = await brought({ programs: 2, plants: 10 });
  const timers = vi.spyOn(globalThis, 'setTimeout');
  const answer = await readOnThread({ ...PLAN, shop, today: Day.parse('2026-03-02') });
  if (answer.ok) await answer.value.pieces.cancel();
  expect(answer.ok && limitsSet(timers)).toContain(60_000);
  expect((globalThis as Threads).threads?.reading?.worker.resourceLimits?.maxOldGenerationSizeMb).toBe(700);
  timers.mockClear();
  const text = JSON.stringify(dailyShop({ programs: 3, plants: 10 }));
  expect((await writeOnThread({ what: 'file import', commandId: newId(), into: { isDemo: false }, text })).ok).toBe(
    true,
  );
  expect(limitsSet(timers)).toContain(180_000);
});

test('two thousand daily programs leave the board answering on 120 MB, and the plan says why it is not made', async () => {
  const path = new URL('./two-thousand-daily.ts', import.meta.url).href;
  const code = `import('tsx/esm/api').then((tsx) => { tsx.register(); return import(${JSON.stringify(path)}); });`;
  const worker = new Worker(code, { eval: true, resourceLimits: { maxOldGenerationSizeMb: 120 } });
  const answer = await new Promise((resolve, reject) => worker.once('message', resolve).once('error', reject));
  await worker.terminate();
  expect(answer).toEqual({
    board: ['unknown'],
    plan: expect.stringMatching(/sprayings in 104 weeks; at most 100,000 can be planned/),
  });
});

/** A file of some kB that is within every limit, and whose plan names every fill of every spraying. */
test('the plan of a small file that asks for much comes in pieces, and little of it is in memory at once', async () => {
  const [programs, weeks] = [runs(10, 137), runs(52, 104)];
  const shop = await brought({ programs, plants: 600 });
  const before = process.memoryUsage();
  let turns = 0;
  const ticking = setInterval(() => turns++, 5);
  const answer = await readOnThread({ ...PLAN, shop, today: Day.parse('2026-03-02'), weeks });
  if (!answer.ok) throw new Error(JSON.stringify(answer.refusal));
  let [bytes, most] = [0, 0];
  for await (const piece of answer.value.pieces as unknown as AsyncIterable<Uint8Array>) {
    bytes += piece.byteLength;
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    most = Math.max(most, heapUsed + arrayBuffers - before.heapUsed - before.arrayBuffers);
  }
  clearInterval(ticking);
  expect(bytes).toBeGreaterThan(runs(5e6, 150e6));
  expect(most).toBeLessThan(150e6);
  expect(turns).toBeGreaterThan(20);
}, 120_000);

async function brought(size: Parameters<typeof dailyShop>[0]): Promise<string> {
  await freshDatabase();
  const parsed = parseShopFile(JSON.stringify(dailyShop(size)));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults[0]));
  const done = await importShopFile({ commandId: newId(), file: parsed.file, into: { isDemo: false } }, CLOCK);
  if (!done.ok) throw new Error('the shop was refused');
  return done.value.shopId;
}
