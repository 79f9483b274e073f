import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser } from './browser.js';
import { add, countPlaywright, countVitest, fail, pass } from './count.js';
import { freePort } from './free-port.js';
import { lightTests } from './light-tests.js';
import { postgresqlPrograms } from './postgresql.js';
import { quickFolder } from './quick-folder.js';

/** Tuesday 14 April 2026, 9:30 in the morning where the demo shop is: every page is made for this moment. */
const PINNED_CLOCK = '2026-04-14T13:30:00Z';

/** Every suite by its name: it says what it does, runs, and gives its count. */
export const SUITES = {
  types: (root) => judged('types: TypeScript', root, ['node_modules/typescript/bin/tsc', '--noEmit']),
  style: runStyle,
  rules: runRules,
  browser: runBrowser,
  promises: runPromises,
};

/** What answers in half a minute on two idle cores. */
export const QUICK_SUITES = { types: SUITES.types, style: SUITES.style, light: runLight };

/** How it is written, and what of it nobody uses. */
async function runStyle(root) {
  const biome = await judged('style: Biome', root, ['node_modules/@biomejs/biome/bin/biome', 'check', '--colors=off']);
  const knip = ['node_modules/knip/bin/knip.js', '--config', 'test/knip.jsonc', '--no-progress', '--no-config-hints'];
  return add(biome, await judged('style: Knip (exports, files and packages that nobody uses)', root, knip));
}

/** A tool that either finds nothing, which counts as one test passed, or something, which counts as one failed. */
async function judged(title, root, args) {
  console.log(`  ${title} …`);
  const { code, output } = await run(root, args);
  return code === 0 ? pass() : fail(title, output);
}

/** Architecture, units, properties, whole shops, outside checks. */
async function runRules(root, extra) {
  console.log('  rules: architecture, units, properties, whole shops, outside checks …');
  if (postgresqlPrograms() === null) {
    console.log(
      '  PostgreSQL is not installed here, so what is tried on it is left out (Debian: apt-get install postgresql)',
    );
  }
  return runVitest(root, extra);
}

/** Those rules that take no time, and every changed test. */
function runLight(root, extra) {
  console.log('  light: architecture, every test without a database and without many cases, changed tests …');
  return runVitest(root, [...lightTests(root), ...extra]);
}

function runVitest(root, extra) {
  return inTempFolder(async (folder) => {
    const report = join(folder, 'rules.json');
    const args = ['run', '--config', 'test/vitest.config.ts', '--reporter=json', `--outputFile=${report}`, ...extra];
    const ended = await run(root, ['node_modules/vitest/vitest.mjs', ...args]);
    return countVitest(readJson(report), ended);
  });
}

/** The built program, broken on purpose. */
async function runPromises(root, extra) {
  console.log('  promises: the built program, broken on purpose …');
  return inTempFolder(async (folder) => {
    const report = join(folder, 'promises.json');
    const env = { BUILD_DIR: process.env.BUILD_DIR || '.next-test' };
    const built = await run(root, ['lib/command-line/build.js', '--if-changed'], env);
    if (built.code !== 0) return fail('the pages could not be built', built.output);
    const args = ['run', '--config', 'test/promises/vitest.config.ts', '--reporter=json', `--outputFile=${report}`];
    const ended = await run(root, ['node_modules/vitest/vitest.mjs', ...args, ...extra], env);
    return countVitest(readJson(report), ended);
  });
}

/** The built app in a browser, on ports and data of its own, at a pinned moment. */
async function runBrowser(root, extra) {
  console.log('  browser: the built app …');
  const browser = await findBrowser(root);
  if (!browser.ok) return fail('browser', browser.message);
  const app = { BUILD_DIR: process.env.BUILD_DIR || '.next-test' };
  const built = await run(root, ['lib/command-line/build.js', '--if-changed'], app);
  if (built.code !== 0) return fail('the pages could not be built', built.output);
  return inTempFolder(async (folder) => {
    const report = join(folder, 'browser.json');
    const env = {
      ...app,
      BENCH_CLOCK: PINNED_CLOCK,
      E2E_BROWSER: browser.path ?? '',
      E2E_DATA: folder,
      E2E_PORT: String(await freePort()),
      E2E_DOOR_PORT: String(await freePort()),
      E2E_WALK_PORT: String(await freePort()),
      E2E_NETWORK_PORT: String(await freePort()),
      E2E_PEOPLE_PORT: String(await freePort()),
      PLAYWRIGHT_JSON_OUTPUT_FILE: report,
    };
    const args = ['test', '--config', 'test/e2e/playwright.config.ts', '--reporter=json', ...extra];
    const ended = await run(root, ['node_modules/@playwright/test/cli.js', ...args], env);
    return countPlaywright(readJson(report), ended);
  });
}

function run(root, args, env = {}) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, {
      cwd: root,
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const chunks = [];
    child.stdout.on('data', (chunk) => chunks.push(chunk));
    child.stderr.on('data', (chunk) => chunks.push(chunk));
    child.once('error', (error) => resolve({ code: 1, output: error.message }));
    child.once('close', (code) => resolve({ code: code ?? 1, output: Buffer.concat(chunks).toString('utf8') }));
  });
}

async function inTempFolder(work) {
  const folder = mkdtempSync(join(quickFolder(), 'bench-and-bottle-test-'));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return null;
  }
}
