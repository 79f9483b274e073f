import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createVitest, type TestSpecification } from 'vitest/node';
import { FAULTS, type Fault } from './faults';
import { importedBy } from './imported-by';

/*
 * `npm run test:faults`: plants one fault after another in a copy of the program, runs the checks against published
 * figures that come to know of it, and says which faults none of them noticed. Exits with 1 when there is one.
 *
 * Takes  words, to try only the faults whose formula or file has one of them
 */

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const COPIED = ['lib', 'shared', 'test', 'prisma', 'package.json', 'tsconfig.json'];
/** They finish mixes in a real database, which takes longer than all others together; only faults in records ask for it. */
const SLOW = 'record-fields.test.ts';

const words = process.argv.slice(2);
const chosen = FAULTS.filter(
  ({ formula, file }) => words.length === 0 || words.some((word) => `${formula} ${file}`.includes(word)),
);

const lost = chosen.filter((fault) => occurrences(fault) !== 1);
for (const fault of lost)
  console.error(
    `${fault.file}: the text of "${fault.formula}" stands there ${occurrences(fault)} times: ${fault.find}`,
  );
if (lost.length > 0) process.exit(1);

const copy = mkdtempSync(join(tmpdir(), 'faults-'));
process.exitCode = 1;
try {
  for (const name of COPIED) cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  process.exitCode = (await tryAll()) ? 0 : 1;
} finally {
  rmSync(copy, { recursive: true, force: true });
}
process.exit();

function occurrences({ file, find }: Fault): number {
  return readFileSync(join(ROOT, file), 'utf8').split(find).length - 1;
}

/** Whether every fault was noticed. */
async function tryAll(): Promise<boolean> {
  const vitest = await createVitest(
    'test',
    {
      root: copy,
      config: join(copy, 'test/vitest.config.ts'),
      watch: false,
      bail: 1,
      reporters: [{}],
      passWithNoTests: true,
    },
    { logLevel: 'silent' },
  );
  const all = await vitest.globTestSpecifications(['test/outside']);
  const reaches = importedBy(
    copy,
    all.map(({ moduleId }) => moduleId),
  );
  const began = performance.now();
  const missed: Fault[] = [];
  if (!(await areGreen(all.filter(({ moduleId }) => !moduleId.endsWith(SLOW)))))
    throw new Error('A check is red before any fault is planted.');
  for (const fault of chosen) {
    const specs = all.filter((one) => isAsked(one, fault) && reaches(one.moduleId, join(copy, fault.file)));
    const noticed = await notices(fault, specs);
    if (!noticed) missed.push(fault);
    console.log(`${noticed ? 'noticed' : 'MISSED '}  ${fault.formula.padEnd(42)}  ${fault.file}`);
  }
  await vitest.close();
  const seconds = Math.round((performance.now() - began) / 1_000);
  console.log(`\n${chosen.length - missed.length} of ${chosen.length} faults noticed, in ${seconds} s`);
  return missed.length === 0;

  async function areGreen(specs: TestSpecification[]): Promise<boolean> {
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specs);
    return unhandledErrors.length === 0 && testModules.every((module) => module.ok());
  }

  async function notices(fault: Fault, specs: TestSpecification[]): Promise<boolean> {
    if (specs.length === 0) return false;
    const path = join(copy, fault.file);
    const right = readFileSync(path, 'utf8');
    // A function, because a text to put in may hold what a replacement would read as a pattern.
    writeFileSync(
      path,
      right.replace(fault.find, () => fault.put),
    );
    vitest.invalidateFile(path);
    try {
      return !(await areGreen(specs));
    } finally {
      writeFileSync(path, right);
      vitest.invalidateFile(path);
    }
  }
}

function isAsked({ moduleId }: TestSpecification, { file }: Fault): boolean {
  return !moduleId.endsWith(SLOW) || file.includes('/record/');
}
