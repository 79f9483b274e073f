import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { step } from './step.js';

/** Install exactly what the lock file says, when something is missing or of another version. */
export async function installPackages(root) {
  if (isInstalled(root)) return;
  const npm = process.env.npm_execpath;
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const how = npm?.endsWith('.js')
    ? { command: process.execPath, args: [npm, ...args] }
    : { command: 'npm', args, shell: process.platform === 'win32' };
  await step('Installing packages (a few minutes the first time)', how.args, {
    root,
    command: how.command,
    shell: how.shell,
    mend: 'It needs the npm registry, and a C++ compiler where no ready-made database driver fits this machine. Then run npm start again.',
  });
}

/**
 * npm writes what it installed into a lock file of its own, last of all. Every package that the project's lock asks
 * for must be in it, in that version; packages for other platforms are left out by both.
 */
function isInstalled(root) {
  const wanted = packagesOf(join(root, 'package-lock.json'));
  const there = packagesOf(join(root, 'node_modules/.package-lock.json'));
  return Object.entries(wanted ?? {}).every(
    ([path, { version, optional }]) => path === '' || optional || there?.[path]?.version === version,
  );
}

function packagesOf(lock) {
  try {
    return JSON.parse(readFileSync(lock, 'utf8')).packages;
  } catch {
    return null;
  }
}
