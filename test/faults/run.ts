import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Checks, ROOT } from './checks-together';
import type { Fault } from './fault';
import { FAULTS } from './faults';

/*
 * `npm run test:faults`: plants one fault after another in the program, runs the checks against published figures, and
 * says which of them noticed it. Exits with 1 when one fault was noticed by none.
 *
 * Takes  words, to try only the faults whose formula or file has one of them
 */

const words = process.argv.slice(2);
const isChosen = ({ formula, file }: Fault): boolean => words.some((word) => `${formula} ${file}`.includes(word));
const chosen = words.length === 0 ? FAULTS : FAULTS.filter(isChosen);

const occurrences = ({ file, find }: Fault): number => readFileSync(join(ROOT, file), 'utf8').split(find).length - 1;
const lost = chosen.filter((fault) => occurrences(fault) !== 1);
for (const fault of lost) {
  console.error(
    `${fault.file}: the text of "${fault.formula}" stands there ${occurrences(fault)} times: ${fault.find}`,
  );
}
if (lost.length > 0) process.exit(1);

const began = performance.now();
const checks = new Checks();
const before = await checks.outcomeWith(null);
if ('red' in before) throw new Error(`Before any fault is planted this is red: ${before.red}`);
let missed = 0;
for (const fault of chosen) {
  const outcome = await checks.outcomeWith(fault);
  if (!('red' in outcome)) missed += 1;
  console.log(`${'red' in outcome ? 'noticed' : 'MISSED '}  ${fault.formula}  (${fault.file})`);
  if ('red' in outcome) console.log(`         by ${outcome.red}`);
}
await checks.close();
const seconds = Math.round((performance.now() - began) / 1_000);
console.log(`\n${before.passed} checks; ${chosen.length - missed} of ${chosen.length} faults noticed, in ${seconds} s`);
process.exit(missed === 0 ? 0 : 1);
