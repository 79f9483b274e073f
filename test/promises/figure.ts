import { appendFileSync } from 'node:fs';

/**
 * Note the figure that a promise reached, for the report of `npm run test:long`. Several tests may note one promise.
 *
 * Takes    the promise's number in `plan.js`, and the figure in words
 */
export function figure(number: number, reached: string): void {
  const file = process.env.TEST_FIGURES;
  if (file) appendFileSync(file, `${JSON.stringify({ number, reached })}\n`);
}
