import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { freePort } from '../run/free-port.js';
import { quickFolder } from '../run/quick-folder.js';
import { answering, ended } from './built-app';
import { preparedShop, type ShopKind } from './prepared-shop';

const ROOT = join(import.meta.dirname, '../..');
const MOMENT = '2026-03-02T14:00:00Z';
const TIMES = 6;

const PATHS = [
  ...['/today', '/week', '/mix', '/shelf', '/buy', '/buy/budget', '/keep-out/now', '/keep-out', '/log', '/setup'],
  ...['/api/v1/plan?weeks=26', '/api/v1/keepout', '/api/v1/shop'],
];

/*
 * What one request costs the processor of the built app, of three shops: the demo, 200 products × 60 programs × 40 benches,
 * and that one with 5,000 records and 50,000 movements. CPU time, so that a busy machine does not matter much.
 */

/** Report on all three. Needs /proc, which only Linux has. */
export async function reportOnRequests(): Promise<void> {
  if (!existsSync('/proc/self/stat')) return console.log('\nCPU per request is measured on Linux alone.');
  for (const kind of ['demo', 'large', 'long'] as const) await reportOn(kind);
}

async function reportOn(kind: ShopKind): Promise<void> {
  const folder = mkdtempSync(join(quickFolder(), 'bench-and-bottle-bench-'));
  const took = await preparedShop(kind, folder, MOMENT);
  console.log(
    `\n${kind}: brought in in ${took.importMs} ms; CPU per request, ms (the first one after the start apart):`,
  );
  const port = await freePort();
  const started = performance.now();
  const server = spawn(process.execPath, ['lib/command-line/start.js'], {
    cwd: ROOT,
    env: { ...process.env, DATA_DIR: folder, PORT: String(port), HOST: '127.0.0.1', BENCH_CLOCK: MOMENT },
    stdio: 'ignore',
  });
  try {
    const origin = `http://127.0.0.1:${port}`;
    await answering(`${origin}/api/v1/schema`, server);
    console.log(`  start                    ${(performance.now() - started).toFixed(0)} ms`);
    for (const path of PATHS) await reportOnPath(server, origin, path);
    await reportOnBoard(origin);
    console.log(`  memory                   ${memoryOf(server).toFixed(0)} MB`);
  } finally {
    await ended(server);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function reportOnPath(server: ChildProcess, origin: string, path: string): Promise<void> {
  const get = async () => (await (await fetch(`${origin}${path}`)).arrayBuffer()).byteLength;
  const before = cpuOf(server);
  await get();
  const first = cpuOf(server) - before;
  const from = cpuOf(server);
  let bytes = 0;
  for (let turn = 0; turn < TIMES; turn += 1) bytes = await get();
  const each = (cpuOf(server) - from) / TIMES;
  console.log(
    `  ${path.padEnd(24)} ${each.toFixed(0).padStart(5)}   first ${String(first).padStart(6)}   ${(bytes / 1_000).toFixed(0)} kB`,
  );
}

/** Twenty devices that ask for the board as quickly as they are answered, for five seconds. */
async function reportOnBoard(origin: string): Promise<void> {
  const until = performance.now() + 5_000;
  let answers = 0;
  const waits: number[] = [];
  const ask = async () => {
    while (performance.now() < until) {
      const asked = performance.now();
      const answer = await fetch(`${origin}/keep-out/now`);
      await answer.arrayBuffer();
      if (!answer.ok) continue;
      answers += 1;
      waits.push(performance.now() - asked);
    }
  };
  await Promise.all(Array.from({ length: 20 }, ask));
  const p99 = waits.toSorted((a, b) => a - b)[Math.floor(waits.length * 0.99)] ?? Number.NaN;
  console.log(
    `  twenty boards at once    ${(answers / 5).toFixed(0)} answers a second, 99 of 100 within ${p99.toFixed(0)} ms`,
  );
}

/** User and system time in ms, which the system counts in hundredths of a second. */
function cpuOf({ pid }: ChildProcess): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return (Number(fields[11]) + Number(fields[12])) * 10;
}

const memoryOf = ({ pid }: ChildProcess): number =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1_024;
