/**
 * `npm run -s shop -- VERB FILE`: plain JavaScript with nothing but Node, because it has to run before anything is
 * installed. Standard output is for the answer alone, so whatever else is said goes to standard error.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Enough for 2,000 products, 500 weekly programs and 104 weeks; with all else, the process stays under 1 GB. */
const MOST_MEGABYTES = 800;
const TOO_LARGE =
  'Working this out takes more memory than one question may have. Ask for fewer weeks, or look for programs that spray much too often.';

const NEEDED = ['tsx', 'zod', 'temporal-polyfill', 'highs', 'better-sqlite3'];

process.on('uncaughtException', failed);
try {
  if (isTooOld(process.versions.node)) sayAndStop(`This needs Node 20.19 or newer; here is ${process.versions.node}.`);
  else if (isInstalled() || install()) process.exitCode = await (isLimited() ? answer() : answerWithin(MOST_MEGABYTES));
  else sayAndStop('The packages could not be installed; the lines above say why. It needs the npm registry.');
} catch (error) {
  failed(error);
}

/** Whether this process has a limit of memory: that of `answerWithin`, or one that somebody has set. */
function isLimited() {
  return process.execArgv.some((given) => given.startsWith('--max-old-space-size'));
}

/**
 * The verb works in a process with a limit of its own. A shop that takes more ends that process, and is told so in one line
 * instead of in the runtime's words.
 */
function answerWithin(megabytes) {
  const args = [`--max-old-space-size=${megabytes}`, fileURLToPath(import.meta.url), ...process.argv.slice(2)];
  const child = spawn(process.execPath, args, { stdio: ['inherit', 'inherit', 'pipe'] });
  // Whoever ends this process ends that one.
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  const said = [];
  child.stderr.on('data', (chunk) => said.push(chunk));
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (status, signal) => {
      const text = Buffer.concat(said);
      const hasAborted = signal === 'SIGABRT' || status === 134;
      if (hasAborted && /heap out of memory|heap limit/.test(String(text))) return resolve(refuse(TOO_LARGE, 2));
      process.stderr.write(text);
      resolve(status ?? 1);
    });
  });
}

async function answer() {
  const { register } = await import('tsx/esm/api');
  register({ tsconfig: join(ROOT, 'tsconfig.json') });
  const { shop } = await import('./verbs.ts');
  return shop(process.argv.slice(2));
}

function isTooOld(version) {
  const [major, minor] = version.split('.').map(Number);
  return major < 20 || (major === 20 && minor < 19);
}

function isInstalled() {
  return NEEDED.every((name) => existsSync(join(ROOT, 'node_modules', name, 'package.json')));
}

function install() {
  process.stderr.write('Installing packages (a few minutes the first time) …\n');
  const npm = process.env.npm_execpath;
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const [command, given] = npm?.endsWith('.js') ? [process.execPath, [npm, ...args]] : ['npm', args];
  const { status } = spawnSync(command, given, {
    cwd: ROOT,
    stdio: ['ignore', 2, 2],
    shell: command === 'npm' && process.platform === 'win32',
  });
  return status === 0;
}

/** A bug. What it was is for whoever mends it, and is told on request only. */
function failed(error) {
  sayAndStop(
    'This is a fault of the program, not of your file: please report it. With BENCH_DEBUG=1 set, it tells more.',
  );
  if (process.env.BENCH_DEBUG) process.stderr.write(`${error?.stack ?? error}\n`);
}

function sayAndStop(message) {
  process.exitCode = refuse(message, 1);
}

function refuse(message, code) {
  process.stderr.write(`${JSON.stringify({ path: '', message })}\n`);
  return code;
}
