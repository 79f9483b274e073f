import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createVitest, type TestModule, type TestSpecification, type Vitest } from 'vitest/node';
import { FAULTS, type Fault } from './faults';
import { importedBy } from './imported-by';

/*
 * `npm run test:faults`: plants one fault after another in a copy of the program, runs the checks against published
 * figures that come to know of it, and says which check noticed it. Exits with 1 when one fault was noticed by none.
 *
 * Takes  words, to try only the faults whose formula or file has one of them
 */

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const COPIED = ['lib', 'shared', 'test', 'prisma', 'package.json', 'tsconfig.json'];
/** It finishes mixes in a real database, which takes longer than all others together; only faults in records ask for it. */
const SLOW = 'record-fields.test.ts';

const words = process.argv.slice(2);
const isChosen = ({ formula, file }: Fault): boolean => words.some((word) => `${formula} ${file}`.includes(word));
const chosen = words.length === 0 ? FAULTS : FAULTS.filter(isChosen);

const lost = chosen.filter((fault) => occurrences(fault) !== 1);
for (const fault of lost) {
  console.error(
    `${fault.file}: the text of "${fault.formula}" stands there ${occurrences(fault)} times: ${fault.find}`,
  );
}
if (lost.length > 0) process.exit(1);

const copy = mkdtempSync(join(tmpdir(), 'faults-'));
let missed = chosen.length;
try {
  for (const name of COPIED) cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  missed = await tryAll();
} finally {
  rmSync(copy, { recursive: true, force: true });
}
process.exit(missed === 0 ? 0 : 1);

function occurrences({ file, find }: Fault): number {
  return readFileSync(join(ROOT, file), 'utf8').split(find).length - 1;
}

/** How many faults were noticed by nothing. */
async function tryAll(): Promise<number> {
  const config = join(copy, 'test/vitest.config.ts');
  const quiet = { logLevel: 'silent' } as const;
  const vitest = await createVitest('test', { root: copy, config, watch: false, bail: 1, reporters: [{}] }, quiet);
  const all = await vitest.globTestSpecifications(['test/outside']);
  const reaches = importedBy(
    copy,
    all.map(({ moduleId }) => moduleId),
  );
  const began = performance.now();
  const before = await redIn(vitest, all.filter(isQuick));
  if (before) throw new Error(`${before} is red before any fault is planted.`);
  let count = 0;
  for (const fault of chosen) {
    const path = join(copy, fault.file);
    const asked = all.filter((one) => isQuick(one) || fault.file.includes('/record/'));
    const noticed = await withFault(vitest, fault, () =>
      redIn(
        vitest,
        asked.filter(({ moduleId }) => reaches(moduleId, path)),
      ),
    );
    if (!noticed) count += 1;
    console.log(`${(noticed ?? 'MISSED').padEnd(32)}  ${fault.formula}  (${fault.file})`);
  }
  await vitest.close();
  const seconds = Math.round((performance.now() - began) / 1_000);
  console.log(`\n${chosen.length - count} of ${chosen.length} faults noticed, in ${seconds} s`);
  return count;
}

function isQuick({ moduleId }: TestSpecification): boolean {
  return !moduleId.endsWith(SLOW);
}

async function withFault(vitest: Vitest, { file, find, put }: Fault, look: () => Promise<string | null>) {
  const path = join(copy, file);
  const right = readFileSync(path, 'utf8');
  // A function, because a text to put in may hold what a replacement would read as a pattern.
  writeFileSync(
    path,
    right.replace(find, () => put),
  );
  vitest.invalidateFile(path);
  try {
    return await look();
  } finally {
    writeFileSync(path, right);
    vitest.invalidateFile(path);
  }
}

/** The check that is red, or null. A run that came to nothing, as on a machine with no time left, is no answer. */
async function redIn(vitest: Vitest, specs: TestSpecification[], tries = 3): Promise<string | null> {
  if (specs.length === 0) return null;
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specs);
  const red = testModules.find(isRed);
  if (red) return basename(red.moduleId);
  if (unhandledErrors.length === 0 && testModules.every((module) => module.ok())) return null;
  if (tries === 0) throw new Error(`The checks could not be run: ${JSON.stringify(unhandledErrors)}`);
  return redIn(vitest, specs, tries - 1);
}

function isRed(module: TestModule): boolean {
  return module.errors().length > 0 || [...module.children.allTests('failed')].length > 0;
}
