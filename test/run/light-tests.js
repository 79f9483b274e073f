import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { testsUnder } from './tests-under.js';

const PURE = ['test/shared', 'test/lib/engine', 'test/outside', 'test/worked'];

/** What a test takes in when it tries many cases, searches for a plan or walks a calendar minute by minute. */
const HEAVY = /from '(fast-check|luxon|[^']*\/(runs|any-[\w-]+|solver\/[\w-]+))'/;

/**
 * The tests for `npm run quick`: those without a database and without many cases, the rules of the architecture, and every
 * test file that is new or changed since the last commit.
 *
 * @returns {string[]} paths from the root
 */
export function lightTests(root) {
  const light = PURE.flatMap(testsUnder).filter((path) => !HEAVY.test(readFileSync(join(root, path), 'utf8')));
  return [...new Set(['test/architecture.test.ts', ...light, ...changedTests(root)])];
}

/** None where the code is no checkout of Git. */
function changedTests(root) {
  const { status, stdout } = spawnSync('git', ['status', '--porcelain', '--no-renames', '--untracked-files=all'], {
    cwd: root,
    encoding: 'utf8',
  });
  if (status !== 0) return [];
  const changed = stdout.split('\n').filter((line) => !line.startsWith(' D') && !line.startsWith('D'));
  return changed.map((line) => line.slice(3)).filter((path) => /^test\/(?!e2e\/|promises\/).*\.test\.tsx?$/.test(path));
}
