import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { lockFolder } from '@/lib/command-line/start/one-server.js';

const OWN = { host: '127.0.0.1', port: 3999 };
const mine = JSON.stringify({ pid: process.pid, ...OWN });

const all = mkdtempSync(join(tmpdir(), 'lock-test-'));
afterAll(() => rmSync(all, { recursive: true, force: true }));

const folderWith = (lock: string) => {
  const folder = mkdtempSync(join(all, 'one-'));
  writeFileSync(join(folder, 'server.lock'), lock);
  return folder;
};
const lockIn = (folder: string) => readFileSync(join(folder, 'server.lock'), 'utf8');

/** A process id that was given out and is free again. */
const deadPid = () => spawnSync(process.execPath, ['-e', '']).pid;

test.each([
  ['left by a process that is gone', JSON.stringify({ pid: deadPid(), host: '127.0.0.1', port: 3998 })],
  ['of a process that answers on no port', JSON.stringify({ pid: process.ppid, host: '127.0.0.1', port: 1 })],
  ['of our own number, from before a restart', JSON.stringify({ pid: process.pid, host: '127.0.0.1', port: 3998 })],
  ['that was half written', '{"pid":'],
  ['that is empty', ''],
])('a lock %s is taken over', async (_, lock) => {
  const folder = folderWith(lock);
  await lockFolder(folder, OWN);
  expect(lockIn(folder)).toBe(mine);
});

test('a lock of a server that still answers is left alone', async () => {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const lock = JSON.stringify({ pid: process.ppid, host: '127.0.0.1', port });
  const folder = folderWith(lock);
  await expect(lockFolder(folder, OWN)).rejects.toThrow(/already running/);
  expect(lockIn(folder)).toBe(lock);
  server.close();
});
