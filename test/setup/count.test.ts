import { expect, test } from 'vitest';
import { countPlaywright, countVitest } from '@/test/run/count.js';

const ended = (code: number, output = 'the last lines') => ({ code, output });
const file = (status: string, tests: string[], message = '') => ({
  name: 'a.test.ts',
  status,
  message,
  assertionResults: tests.map((each) => ({ status: each, fullName: each, failureMessages: [`${each}!`] })),
});
const spec = (...statuses: string[]) => ({
  title: 'a page',
  specs: [
    { title: 'shows', tests: statuses.map((status) => ({ status, results: [{ errors: [{ message: 'no' }] }] })) },
  ],
});

test.each([
  ['all passed', [file('passed', ['passed', 'passed'])], 0, [2, 0]],
  ['one failed', [file('failed', ['passed', 'failed'])], 1, [1, 1]],
  ['what is skipped counts for nothing', [file('passed', ['passed', 'skipped', 'todo'])], 0, [1, 0]],
  ['a file that cannot be read in has failed', [file('failed', [], 'no such import')], 1, [0, 1]],
  ['a run that ended badly has failed, though every test passed', [file('passed', ['passed'])], 1, [1, 1]],
  ['a run in which nothing ran has failed', [], 0, [0, 1]],
])('rules: %s', (_, testResults, code, [passed, failed]) => {
  expect(countVitest({ testResults }, ended(code))).toMatchObject({ passed, failed });
});

test.each([
  ['all passed', { suites: [spec('expected', 'expected')] }, 0, [2, 0]],
  ['one failed', { suites: [spec('expected', 'unexpected')] }, 1, [1, 1]],
  ['a test that passed at the second try has failed', { suites: [spec('flaky')] }, 0, [0, 1]],
  ['suites within suites count', { suites: [{ title: 'x', suites: [spec('unexpected')] }] }, 1, [0, 1]],
  [
    'what went wrong outside any test counts',
    { suites: [spec('expected')], errors: [{ message: 'no server' }] },
    1,
    [1, 1],
  ],
  ['a run in which nothing ran has failed', { suites: [] }, 0, [0, 1]],
])('browser: %s', (_, report, code, [passed, failed]) => {
  expect(countPlaywright(report, ended(code))).toMatchObject({ passed, failed });
});

test('a suite that crashed has failed, and its last lines are shown', () => {
  for (const count of [countVitest(null, ended(139)), countPlaywright(null, ended(139))]) {
    expect(count).toMatchObject({ passed: 0, failed: 1, failures: [{ message: 'the last lines' }] });
  }
});
