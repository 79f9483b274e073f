import { spawn } from 'node:child_process';
import { statfsSync } from 'node:fs';
import { trouble } from './trouble.js';

const TAIL_LINES = 60;
const running = new Set();

/**
 * Run one step of the way up as a process of its own. It is quiet when it succeeds; when it fails, its last lines
 * are shown, and what to try.
 *
 * Takes    what is being done (for the screen), the arguments for node, extra environment, and what to try on failure
 */
export async function step(doing, args, { root, env = {}, mend, command = process.execPath, shell = false }) {
  console.log(`  ${doing} …`);
  const { code, output } = await run(command, args, { cwd: root, env: { ...process.env, ...env }, shell });
  if (code === 0) return output;
  if (isDiskFull(root, output)) {
    throw trouble(
      `${doing}: the disk is full.`,
      'Make room on it (about 2 GB for the first start), then run npm start again.',
    );
  }
  console.error(`\n${output.trimEnd().split('\n').slice(-TAIL_LINES).join('\n')}`);
  throw trouble(`${doing}: this did not work; the last lines above say why.`, mend);
}

function run(command, args, options) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { ...options, stdio: ['ignore', 'pipe', 'pipe'] });
    const chunks = [];
    running.add(child);
    child.stdout.on('data', (chunk) => chunks.push(chunk));
    child.stderr.on('data', (chunk) => chunks.push(chunk));
    const done = (code, extra = '') => {
      running.delete(child);
      resolve({ code, output: Buffer.concat(chunks).toString('utf8') + extra });
    };
    child.once('error', (error) => done(1, `${error.message}\n`));
    child.once('close', (code) => done(code ?? 1));
  });
}

function isDiskFull(root, output) {
  if (/ENOSPC|no space left|database or disk is full/i.test(output)) return true;
  try {
    const { bavail, bsize } = statfsSync(root);
    return bavail * bsize < 1_000_000;
  } catch {
    return false;
  }
}

/** Stop whatever step is running, when the owner presses Ctrl-C. */
export function stopSteps() {
  for (const child of running) child.kill('SIGTERM');
}
