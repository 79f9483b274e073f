/**
 * What a suite came to: how many passed and failed, and each failure with its name and message.
 *
 * @typedef {{ passed: number, failed: number, failures: { title: string, message: string }[] }} Count
 */

/** @type {Count} */
export const NOTHING = { passed: 0, failed: 0, failures: [] };

/** @returns {Count} */
export function add(a, b) {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, failures: [...a.failures, ...b.failures] };
}

/** @returns {Count} */
export const pass = () => ({ ...NOTHING, passed: 1 });

/** @returns {Count} */
export const fail = (title, message) => ({ passed: 0, failed: 1, failures: [{ title, message: plain(message) }] });

/**
 * Vitest's JSON report, counted. A file that could not be read in counts as one failure, and so does a run that ended
 * badly although every test in it passed.
 *
 * @returns {Count}
 */
export function countVitest(report, { code, output }) {
  if (!report) return fail('the rules could not be run', output);
  const counts = report.testResults.flatMap((file) => {
    const tests = file.assertionResults.map((test) => countOne(test, file.name));
    return file.status === 'failed' && !tests.some(({ failed }) => failed > 0)
      ? [...tests, fail(file.name, file.message || output)]
      : tests;
  });
  return wholly(counts.reduce(add, NOTHING), code, output);
}

function countOne({ status, fullName, failureMessages }, file) {
  if (status === 'passed') return pass();
  if (status === 'failed') return fail(`${file}: ${fullName}`, failureMessages.join('\n'));
  return NOTHING;
}

/**
 * Playwright's JSON report, counted. What went wrong outside any test counts too.
 *
 * @returns {Count}
 */
export function countPlaywright(report, { code, output }) {
  if (!report) return fail('the browser tests could not be run', output);
  const outside = (report.errors ?? []).map((error) => fail('outside any test', error.stack ?? error.message ?? ''));
  const counts = [...report.suites.flatMap((suite) => countSuite(suite, '')), ...outside];
  return wholly(counts.reduce(add, NOTHING), code, output);
}

function countSuite(suite, above) {
  const title = [above, suite.title].filter(Boolean).join(' › ');
  const specs = (suite.specs ?? []).flatMap((spec) =>
    spec.tests.map((test) => {
      if (test.status === 'expected') return pass();
      if (test.status === 'skipped') return NOTHING;
      const errors = test.results.flatMap(({ errors: found }) => found ?? []);
      return fail(`${title} › ${spec.title}`, errors.map(({ message }) => message).join('\n') || test.status);
    }),
  );
  return [...specs, ...(suite.suites ?? []).flatMap((inner) => countSuite(inner, title))];
}

/** A run that ended badly has failed, whatever its report says; and so has one in which nothing ran. */
function wholly(count, code, output) {
  if (count.failed > 0 || (code === 0 && count.passed > 0)) return count;
  return add(count, fail(code === 0 ? 'nothing was run' : 'the run itself ended badly', output));
}

function plain(message) {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: colours are control characters, and they are to go.
  return message.replace(/\u001b\[[0-9;]*m/g, '');
}
