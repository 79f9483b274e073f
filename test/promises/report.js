import { existsSync, readFileSync } from 'node:fs';
import { PROMISES } from './plan.js';

/** The report of a long run: a line for each promise with its bar and every figure that was noted. */
export function reportOf(file) {
  const noted = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n').filter(Boolean).map(JSON.parse) : [];
  return PROMISES.map(({ number, title, bar, waitsFor }) => {
    const reached = noted.filter((one) => one.number === number).map((one) => one.reached);
    const missing = waitsFor ? `cannot be tried before there is ${waitsFor}` : 'NOT TRIED in this run';
    return `  ${String(number).padStart(2)}  ${title} (${bar}): ${reached.join('; ') || missing}`;
  }).join('\n');
}
