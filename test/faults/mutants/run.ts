import { mutantFates } from './mutant-run';

/*
 * `npm run test:mutants`: says which mutants of the keep-out board, the ledger and the record no test notices.
 *
 * Takes  words, to try only the files that have one of them in their names
 */

const began = performance.now();
const fates = await mutantFates(console.log, process.argv.slice(2));
const alive = fates.filter(({ by }) => by === null);
for (const { file, line, was, becomes } of alive) console.log(`MISSED  ${file}:${line}  ${was}  →  ${becomes}`);
const seconds = Math.round((performance.now() - began) / 1_000);
console.log(`\n${fates.length - alive.length} of ${fates.length} mutants noticed, in ${seconds} s`);
process.exit(0);
