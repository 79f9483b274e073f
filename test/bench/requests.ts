import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
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
  const [shopId, port] = [shopIn(folder), await freePort()];
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
    await reportOnFirstReading(origin);
    for (const path of PATHS) await reportOnPath(server, origin, path);
    await reportAfterWrite(server, origin, shopId);
    await reportOnBoard(origin);
    await reportOnMemory(server, origin);
  } finally {
    await ended(server);
    rmSync(folder, { recursive: true, force: true });
  }
}

/** How long after the start the board tells each bench for itself, and how long a small request waits at most until then. */
async function reportOnFirstReading(origin: string): Promise<void> {
  const started = performance.now();
  let longest = 0;
  for (;;) {
    const asked = performance.now();
    await (await fetch(`${origin}/api/v1/health`)).arrayBuffer();
    longest = Math.max(longest, performance.now() - asked);
    const board = (await (await fetch(`${origin}/keep-out/now`)).json()) as { doubt: string | null };
    if (board.doubt === null) break;
  }
  const took = (performance.now() - started).toFixed(0);
  console.log(
    `  read after               ${took} ms; meanwhile a small request waited ${longest.toFixed(0)} ms at most`,
  );
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

/** What the first page costs after a change: what did not change is not read and checked again. */
async function reportAfterWrite(server: ChildProcess, origin: string, shopId: string): Promise<void> {
  const took: number[] = [];
  for (let turn = 0; turn < 4; turn += 1) {
    const before = cpuOf(server);
    await changeShop(origin, shopId, turn);
    const written = cpuOf(server);
    await (await fetch(`${origin}/today`)).arrayBuffer();
    took.push(cpuOf(server) - written);
    if (turn === 3) console.log(`  a change by file         ${written - before}`);
  }
  console.log(`  /today after a change    ${took.slice(1).join(', ')}`);
}

/** A change through the front door: another supplier, brought in by a shop file. */
async function changeShop(origin: string, into: string, turn: number): Promise<void> {
  const headers = { origin, 'content-type': 'application/json' };
  const post = async (path: string, body: object) => {
    const answer = await fetch(`${origin}${path}`, { method: 'POST', headers, body: JSON.stringify(body) });
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${(await answer.text()).slice(0, 300)}`);
    return (await answer.json()) as Record<string, string>;
  };
  const { shop, format } = (await (await fetch(`${origin}/api/v1/shop`)).json()) as Record<string, unknown>;
  const text = JSON.stringify({ format, shop, suppliers: [{ id: `bench-${turn}`, name: `Supplier of turn ${turn}` }] });
  const { fingerprint } = await post('/api/v1/shop/preview', { into, text });
  await post('/api/v1/shop/import', { commandId: randomBytes(16).toString('hex'), into, text, fingerprint });
}

/** The id of the one shop in a data folder. */
function shopIn(folder: string): string {
  const database = new Database(join(folder, 'shop.db'), { readonly: true });
  const id = String(database.prepare('SELECT id FROM Shop').pluck().get());
  database.close();
  return id;
}

/** Memory that does not grow with what was asked: after 500 requests and after 2,000 more. */
async function reportOnMemory(server: ChildProcess, origin: string): Promise<void> {
  const ask = async (times: number) => {
    for (let turn = 0; turn < times; turn += 1) {
      await (await fetch(`${origin}${turn % 20 === 0 ? '/today' : '/keep-out/now'}`)).arrayBuffer();
    }
  };
  await ask(500);
  const before = memoryOf(server);
  await ask(2_000);
  console.log(
    `  memory                   ${before.toFixed(0)} MB, ${memoryOf(server).toFixed(0)} MB 2,000 requests later`,
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
