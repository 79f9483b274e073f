import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from '@playwright/test';
import { findBrowser } from '../run/browser.js';
import { freePort } from '../run/free-port.js';
import { quickFolder } from '../run/quick-folder.js';

const ROOT = join(import.meta.dirname, '../..');
const PATIENCE_MS = 300_000;

/** The built app on a port and data of its own, and a browser to look at it in. */
export type BuiltApp = { origin: string; browser: Browser };

/** Start the built app at a pinned moment, do some work with it, and stop it. Where there is no browser, says so. */
export async function withBuiltApp(moment: string, work: (app: BuiltApp) => Promise<void>): Promise<void> {
  const found = await findBrowser(ROOT);
  if (!found.ok) return console.log(`  not measured: ${found.message}`);
  const data = mkdtempSync(join(quickFolder(), 'bench-and-bottle-bench-'));
  const port = await freePort();
  const server = spawn(process.execPath, ['lib/command-line/start.js'], {
    cwd: ROOT,
    env: { ...process.env, DATA_DIR: data, PORT: String(port), HOST: '127.0.0.1', BENCH_CLOCK: moment },
    stdio: 'ignore',
  });
  const args = ['--font-render-hinting=none', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])];
  const browser = await chromium.launch({ args, ...(found.path && { executablePath: found.path }) });
  try {
    const origin = `http://127.0.0.1:${port}`;
    await answering(`${origin}/api/v1/schema`, server);
    await work({ origin, browser });
  } finally {
    await browser.close();
    await ended(server);
    rmSync(data, { recursive: true, force: true });
  }
}

/** Done once the app answers at an address. Throws when it ends before, or takes too long. */
export async function answering(address: string, server: ChildProcess): Promise<void> {
  const started = performance.now();
  while (performance.now() - started < PATIENCE_MS) {
    if (server.exitCode !== null) throw new Error(`the app ended with ${server.exitCode}; npm start says why`);
    const answer = await fetch(address).catch(() => null);
    if (answer?.ok) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('the app did not start');
}

/** End the app as Ctrl-C does, and wait for it. */
export function ended(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    server.once('exit', () => resolve());
    server.kill('SIGTERM');
  });
}
