import { chai, JestAsymmetricMatchers, JestChaiExpect } from '@vitest/expect';

/*
 * Stands in for the test runner while faults are planted: the same `expect`, and a `test` that only remembers what it was
 * given, so that all checks run in one go and stop at the first that is red.
 */

chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);

const asymmetric = Reflect.get(chai, 'expect');
export const expect = Object.assign((value: unknown, message?: string) => chai.expect(value, message), asymmetric);

type Run = (...row: unknown[]) => unknown;
/** All tests that were defined and have not run. */
export const tests: { name: string; run: () => unknown }[] = [];

export function test(name: string, first: Run | object, second?: Run): void {
  const run = typeof first === 'function' ? (first as Run) : second;
  if (run) tests.push({ name, run });
}

test.each =
  (rows: readonly unknown[]) =>
  (name: string, run: Run): void => {
    for (const row of rows) tests.push({ name, run: () => (Array.isArray(row) ? run(...row) : run(row)) });
  };

export const describe = (_: string, define: () => void): void => define();

/** How many checks a file brought, or the first of them that is red. */
export async function runAll(): Promise<{ passed: number } | { red: string }> {
  const all = tests.splice(0);
  for (const { name, run } of all) {
    try {
      await run();
    } catch {
      return { red: name };
    }
  }
  return { passed: all.length };
}
