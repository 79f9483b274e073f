/**
 * `npm test`: everything that says whether this program is right, in one go. Plain JavaScript, because it installs what
 * is missing first. Ends with one plain line, `N passed, N failed`, counted over all suites.
 *
 * Takes    names of suites to run (types, style, rules, browser, promises), else all; `--quick` runs only what answers in
 *          half a minute; `--long` gives every property all of its runs and prints what each promise of `promises/plan.js`
 *          reached; what follows `--` goes to the test runner
 */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepareCode } from '../lib/command-line/start/prepare.js';
import { tellTroubles } from '../lib/command-line/start/trouble.js';
import { reportOf } from './promises/report.js';
import { findBrowser } from './run/browser.js';
import { add, NOTHING } from './run/count.js';
import { QUICK_SUITES, SUITES } from './run/suites.js';

const root = fileURLToPath(new URL('../', import.meta.url));
const cut = process.argv.indexOf('--');
const words = process.argv.slice(2, cut === -1 ? undefined : cut);
const named = words.filter((word) => !word.startsWith('--'));
const suites = words.includes('--quick') ? QUICK_SUITES : SUITES;
const extra = cut === -1 ? [] : process.argv.slice(cut + 1);

const isLong = words.includes('--long');
const figures = join(mkdtempSync(join(tmpdir(), 'figures-')), 'figures.jsonl');
if (isLong) Object.assign(process.env, { TEST_LONG: '1', TEST_FIGURES: figures });

await tellTroubles(async () => {
  await prepareCode(root);
  let total = NOTHING;
  const wanted = Object.entries(suites).filter(([name]) => named.length === 0 || named.includes(name));
  if (wanted.some(([name]) => name === 'browser')) void findBrowser(root);
  for (const [name, run] of wanted) {
    const began = performance.now();
    const count = await run(root, extra);
    const seconds = Math.round((performance.now() - began) / 1_000);
    for (const { title, message } of count.failures) console.log(`\n  ✗ ${title}\n${indented(message)}`);
    console.log(`  ${name}: ${count.passed} passed, ${count.failed} failed, in ${seconds} s`);
    total = add(total, count);
  }
  if (isLong) console.log(`\n${reportOf(figures)}`);
  console.log(`\n${total.passed} passed, ${total.failed} failed`);
  process.exitCode = total.failed === 0 && total.passed > 0 ? 0 : 1;
});

function indented(message) {
  return message
    .trimEnd()
    .split('\n')
    .filter((line) => !/^\s+at .*node_modules/.test(line))
    .slice(0, 60)
    .map((line) => `    ${line.slice(0, 2_000)}`)
    .join('\n');
}
