import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { changed, type Json, smallShop } from '../../shared/shop-file/small-shop';

const LAUNCHER = fileURLToPath(new URL('../../../lib/command-line/shop.js', import.meta.url));
const PATIENCE = 120_000;
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shop-'));
  put('shop.json', JSON.stringify(smallShop()));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const put = (name: string, content: string | Uint8Array) => writeFileSync(join(folder, name), content);

type Run = { code: number | null; out: string; faults: { path: string; message: string }[] };

/** The command as it is run from the folder with the files, without anything of npm in its surroundings. */
function shop(words: string[], input = '', env: Record<string, string> = {}, enough = Infinity): Promise<Run> {
  const clean = { PATH: process.env.PATH, HOME: process.env.HOME, INIT_CWD: folder, NODE_ENV: 'test' as const, ...env };
  const child = spawn(process.execPath, [LAUNCHER, ...words], { env: clean });
  const [out, err]: [Buffer[], Buffer[]] = [[], []];
  child.stdout.on('data', (chunk) => {
    out.push(chunk);
    if (out.length >= enough) child.stdout.destroy();
  });
  child.stderr.on('data', (chunk) => err.push(chunk));
  child.stdin.on('error', () => undefined);
  child.stdin.end(input);
  return new Promise((resolve) => {
    child.on('close', (code) => {
      const lines = Buffer.concat(err).toString('utf8').split('\n').filter(Boolean);
      resolve({ code, out: Buffer.concat(out).toString('utf8'), faults: lines.map((line) => JSON.parse(line)) });
    });
  });
}

test('check counts what is in the file', { timeout: PATIENCE }, async () => {
  const { code, out, faults } = await shop(['check', 'shop.json']);
  expect({ code, faults }).toEqual({ code: 0, faults: [] });
  expect(JSON.parse(out)).toEqual({
    ok: true,
    counts: {
      suppliers: 1,
      products: 2,
      offers: 1,
      lots: 2,
      benches: 2,
      recipes: 1,
      programs: 1,
      applications: 1,
      orders: 0,
    },
  });
});

test('a file may come through standard input', { timeout: PATIENCE }, async () => {
  const { code, out } = await shop(['check', '-'], JSON.stringify(smallShop()));
  expect({ code, ok: JSON.parse(out).ok }).toEqual({ code: 0, ok: true });
});

test('an answer larger than a pipe arrives whole', { timeout: PATIENCE }, async () => {
  const program = {
    recipes: ['r1'],
    benches: ['b1'],
    startsOn: '2026-01-01',
    repeat: 'FREQ=DAILY',
    startTime: '06:00',
    minutes: 1,
  };
  const programs: Json = Array.from({ length: 10 }, (_, index) => ({ id: `g${index}`, ...program }));
  put('busy.json', JSON.stringify(changed(smallShop(), ['programs'], programs)));
  const { code, out } = await shop(['plan', 'busy.json', '--today', '2026-03-02', '--weeks', '52']);
  expect(code).toBe(0);
  expect(out.length).toBeGreaterThan(1_000_000);
  expect(JSON.parse(out).sprayings).toHaveLength(3_640);

  // Whoever pipes an answer into `head` has seen enough, and nothing went wrong.
  const cut = await shop(['plan', 'busy.json', '--today', '2026-03-02', '--weeks', '52'], '', {}, 1);
  expect({ code: cut.code, faults: cut.faults }).toEqual({ code: 0, faults: [] });
});

test('a refused file answers nothing, and names every fault on a line of its own', { timeout: PATIENCE }, async () => {
  let file = changed(smallShop(), ['shop', 'timeZone'], 'Mars/North');
  file = changed(file, ['lots', 0, 'remaining'], '2 gal');
  put('faults.json', JSON.stringify(file));
  const { code, out, faults } = await shop(['plan', 'faults.json']);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(faults.map(({ path }) => path)).toEqual(['shop.timeZone', 'lots[0].remaining']);
});

test('a verb that is none is refused', { timeout: PATIENCE }, async () => {
  const { code, out, faults } = await shop(['chek', 'shop.json']);
  expect({ code, out, faults: faults.length }).toEqual({ code: 2, out: '', faults: 1 });
});

test('a picture, a file of 50 MB and 100,000 brackets end in a sentence', { timeout: PATIENCE }, async () => {
  put(
    'picture',
    Uint8Array.from({ length: 2_000 }, (_, index) => index % 256),
  );
  put('latin', Uint8Array.from([0x22, 0xe9, 0x22]));
  put('large.json', `{"a":"${'x'.repeat(50_000_000)}"}`);
  put('deep.json', '['.repeat(100_000));
  const runs = await Promise.all(['picture', 'latin', 'large.json', 'deep.json'].map((name) => shop(['check', name])));
  expect(runs.map(({ code }) => code)).toEqual([2, 2, 2, 2]);
  expect(runs.map(({ faults }) => faults[0]?.message)).toEqual([
    expect.stringContaining('not a text file'),
    expect.stringContaining('not a text file'),
    expect.stringContaining('20 MB'),
    expect.stringContaining('more than 32 deep'),
  ]);
});

test('a fault of the program says so and shows nothing of its inside', { timeout: PATIENCE }, async () => {
  const broken = { BENCH_CLOCK: 'no time at all' };
  const { code, out, faults } = await shop(['plan', 'shop.json'], '', broken);
  expect({ code, out }).toEqual({ code: 1, out: '' });
  expect(faults).toEqual([{ path: '', message: expect.stringContaining('fault of the program') }]);
});
