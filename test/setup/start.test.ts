import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, expect, test } from 'vitest';
import { figure } from '../promises/figure';

const root = join(import.meta.dirname, '../..');
const started: ChildProcess[] = [];
const all = mkdtempSync(join(tmpdir(), 'start-test-'));
const temp = () => mkdtempSync(join(all, 'one-'));

afterAll(() => rmSync(all, { recursive: true, force: true }));

afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL');
});

type Ended = { code: number | null; said: string };

/** Start the shop as `npm start` does, and wait until it gives up. */
function start(env: Record<string, string>, nodeArgs: string[] = []): Promise<Ended> {
  const child = spawn(process.execPath, [...nodeArgs, 'lib/command-line/start.js'], {
    cwd: root,
    env: { NODE_ENV: 'production', PATH: process.env.PATH, HOME: process.env.HOME, DATA_DIR: temp(), ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  started.push(child);
  let said = '';
  child.stdout.on('data', (chunk) => (said += chunk));
  child.stderr.on('data', (chunk) => (said += chunk));
  return new Promise((resolve) => child.once('close', (code) => resolve({ code, said })));
}

/** A refusal is one sentence about what is wrong and one about how to mend it, and never a stack. */
function expectRefusal({ code, said }: Ended, ...words: RegExp[]) {
  expect(code).toBe(1);
  for (const word of words) expect(said).toMatch(word);
  expect(said).not.toMatch(/\n\s+at |Error:|node:internal/);
  expect(said.trim().split('\n').length).toBeLessThanOrEqual(2);
}

async function listening(): Promise<{ port: number; close(): void }> {
  const server = createServer((_, response) => response.end());
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { port, close: () => server.close() };
}

test.each(['0.0.0.0', '192.168.1.20', '::', 'shop.example', '127.0.0.1.shop.example'])(
  'the shop is not opened to other machines by HOST=%s, and the reason is given',
  async (host) => {
    expectRefusal(await start({ HOST: host, PORT: '3999' }), /other machines can reach/, /127\.0\.0\.1/);
  },
);

test.each(['0', '65536', 'abc', '-1', '3000.5'])('PORT=%s is no port', async (port) => {
  expectRefusal(await start({ PORT: port }), /not a port/, /whole number from 1 to 65535/);
});

test('a port that is taken is named, with another to choose', async () => {
  const taken = await listening();
  expectRefusal(
    await start({ PORT: String(taken.port) }),
    new RegExp(`Port ${taken.port} is already taken`),
    /PORT=\d+/,
  );
  taken.close();
});

test('a data folder that is a file is named, and the file is left as it was', async () => {
  const file = join(temp(), 'data');
  writeFileSync(file, 'mine');
  expectRefusal(await start({ DATA_DIR: file, PORT: '3999' }), /is not a folder but a file/, /DATA_DIR=/);
  expectRefusal(await start({ DATA_DIR: join(file, 'deeper'), PORT: '3999' }), /is not a folder but a file/);
  expect(readFileSync(file, 'utf8')).toBe('mine');
});

test.runIf(process.platform === 'linux')('a data folder that cannot be made is named', async () => {
  expectRefusal(await start({ DATA_DIR: '/proc/shop', PORT: '3999' }), /cannot be used|may not write/, /DATA_DIR=/);
});

test.runIf(existsSync('/dev/full'))('a full disk is named', async () => {
  const folder = temp();
  const full = join(temp(), 'full.cjs');
  writeFileSync(
    full,
    `const fs = require('node:fs'); const real = fs.writeFileSync;
     fs.writeFileSync = (path, ...rest) => real(String(path).includes('.try-') ? '/dev/full' : path, ...rest);
     require('node:module').syncBuiltinESMExports();`,
  );
  expectRefusal(await start({ DATA_DIR: folder, PORT: '3999' }, ['-r', full]), /is full/, /Make room/);
});

test.each(['18.20.4', '20.18.3', '21.7.3', '22.11.0'])(
  'Node %s is too old, and where to get another is said',
  async (version) => {
    const pretend = join(temp(), 'pretend.cjs');
    const versions = `{ ...process.versions, node: '${version}' }`;
    writeFileSync(pretend, `Object.defineProperty(process, 'versions', { value: ${versions} });`);
    expectRefusal(await start({ PORT: '3999' }, ['-r', pretend]), new RegExp(version), /nodejs\.org/);
  },
);

test('a second server on the same data is refused, and says where the first one is', async () => {
  const first = await listening();
  const folder = temp();
  const holder = { pid: process.pid, host: '127.0.0.1', port: first.port };
  writeFileSync(join(folder, 'server.lock'), JSON.stringify(holder));
  const free = await listening();
  free.close();
  const refused = await start({ DATA_DIR: folder, PORT: String(free.port) });
  expectRefusal(refused, /already running/, new RegExp(`process ${process.pid}`), new RegExp(`:${first.port}`));
  expect(JSON.parse(readFileSync(join(folder, 'server.lock'), 'utf8'))).toEqual(holder);
  first.close();
  figure(11, 'refused, with where the first one is');
});
