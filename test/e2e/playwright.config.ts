import { join } from 'node:path';
import { defineConfig } from '@playwright/test';

const { E2E_BROWSER, E2E_DATA, E2E_PORT = '3900', E2E_DOOR_PORT = '3901', E2E_WALK_PORT = '3902' } = process.env;
const { E2E_NETWORK_PORT = '3903', E2E_PEOPLE_PORT = '3904' } = process.env;
if (!E2E_DATA) throw new Error('Start the browser tests with `npm run e2e`: it makes a throw-away database for them.');

const served = (data: string, port: string, more: Record<string, string> = {}) => ({
  command: 'node lib/command-line/start.js',
  cwd: join(import.meta.dirname, '../..'),
  url: `http://127.0.0.1:${port}/api/v1/schema`,
  env: { DATA_DIR: join(E2E_DATA, data), PORT: port, HOST: '127.0.0.1', ...MANY_CHANGES, ...more },
  reuseExistingServer: false,
  stdout: 'pipe' as const,
  stderr: 'pipe' as const,
  timeout: 300_000,
  gracefulShutdown: { signal: 'SIGTERM' as const, timeout: 5_000 },
});

/** The tests of all pages together send more changes in a minute than a person does. */
const MANY_CHANGES = { CHANGES_PER_MINUTE: '100000' };

/** One server is asked what it holds in memory, and has to be told how before it starts. */
const TELLS_MEMORY = { NODE_OPTIONS: `--require "${join(import.meta.dirname, 'door/tell-memory.cjs')}"` };

/**
 * The shop by https with its own certificate, on an address besides the usual one. It is loopback all the same: nothing
 * is served beyond this machine before a shop has an owner. Only Linux has such an address without further ado.
 */
const NETWORK = `127.0.0.2:${E2E_NETWORK_PORT}`;
const byHttps = {
  ...served('network', E2E_NETWORK_PORT, { HOST: '127.0.0.2' }),
  command: 'node lib/command-line/start.js --network',
  url: `https://${NETWORK}/api/v1/schema`,
  ignoreHTTPSErrors: true,
};
const hasNetwork = process.platform === 'linux';

/**
 * Three servers with a database each: one that is only looked at, so that every page test finds the demo; one to knock
 * about; and one for the walks of a person who brings in shops of their own.
 *
 * Three files run at a time on two cores, because a browser and its server wait for each other. A walk looks only at a shop that it
 * brought in itself; the tests that knock compare the whole database, so they run one after another. The projects with
 * the longest files come first.
 */
export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results',
  workers: 3,
  retries: 0,
  // Nothing here measures a time: a slow machine may take long, and is waited for.
  timeout: 120_000,
  expect: { timeout: 15_000 },
  forbidOnly: Boolean(process.env.CI),
  use: {
    browserName: 'chromium',
    // What a device keeps would answer for the shop; the walk without a network turns it on.
    serviceWorkers: 'block',
    launchOptions: {
      ...(E2E_BROWSER && { executablePath: E2E_BROWSER }),
      // Without hinting, letters are as wide in a browser without a window as in one that has one.
      args: ['--font-render-hinting=none', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
    },
    locale: 'en-US',
    timezoneId: 'America/New_York',
    trace: 'off',
    // A colour is judged as it stands, not on its way there.
    contextOptions: { reducedMotion: 'reduce' },
  },
  projects: [
    {
      name: 'door',
      testMatch: 'door/*.spec.ts',
      testIgnore: 'door/*-walk.spec.ts',
      workers: 1,
      use: { baseURL: `http://127.0.0.1:${E2E_DOOR_PORT}` },
    },
    // A walk is one long test: it takes an eighth of this on a quiet machine.
    {
      name: 'walk',
      testMatch: 'door/*-walk.spec.ts',
      timeout: 300_000,
      use: { baseURL: `http://127.0.0.1:${E2E_WALK_PORT}` },
    },
    {
      name: 'network',
      testMatch: 'network/*.spec.ts',
      testIgnore: hasNetwork ? [] : '**',
      use: { baseURL: `https://${NETWORK}`, ignoreHTTPSErrors: true },
    },
    // Once somebody owns a shop, nothing of it is open: so this one is by itself.
    {
      name: 'people',
      testMatch: 'people/*.spec.ts',
      use: { baseURL: `http://127.0.0.1:${E2E_PEOPLE_PORT}` },
    },
    // What only looks at pages needs no order within a file either.
    {
      name: 'pages',
      testIgnore: ['door/**', 'network/**', 'people/**'],
      fullyParallel: true,
      use: { baseURL: `http://127.0.0.1:${E2E_PORT}` },
    },
  ],
  webServer: [
    ...[served('pages', E2E_PORT), served('door', E2E_DOOR_PORT, TELLS_MEMORY), served('walk', E2E_WALK_PORT)],
    served('people', E2E_PEOPLE_PORT),
    ...(hasNetwork ? [byHttps] : []),
  ],
});
