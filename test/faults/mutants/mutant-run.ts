import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { build } from 'esbuild';
import { ROOT } from '../checks-together';
import { type Mutant, mutated } from './mutated';

/*
 * Wakes one mutant after another in what keeps people out and what counts bottles, and says which no test notices. The
 * mutants are made by a library; all tests and mutants stand in one piece, which is put together once.
 */

const PLACE = join(ROOT, 'node_modules/.cache/mutants');
const STUCK_MS = 120_000;

/** Tests of the pure parts: those that open a database would take minutes a mutant. */
const FOLDERS = ['test/lib/engine/keepout', 'test/lib/engine/ledger', 'test/lib/engine/record', 'test/outside'];
const OPENS_A_DATABASE = /from '[^']*(lib\/(data|views|commands|solver)\/|fresh-database|small-shop-in)/;
const LEFT_OUT = /record-fields|record-keeping|buying|lot-sizing|icalendar|csv|working-days/;

const testFiles = (): string[] =>
  FOLDERS.flatMap((folder) => readdirSync(join(ROOT, folder), { recursive: true }).map((name) => `${folder}/${name}`))
    .filter(
      (file) =>
        file.endsWith('.test.ts') &&
        !LEFT_OUT.test(file) &&
        !OPENS_A_DATABASE.test(readFileSync(join(ROOT, file), 'utf8')),
    )
    .sort();

const united = (): string => `
import { workerData } from 'node:worker_threads';
globalThis.__stryker__ = workerData.awake ? { activeMutant: workerData.ids[workerData.from] } : {};
${testFiles()
  .map((file) => `await import('./${file}');`)
  .join('\n')}
await (await import('./test/faults/mutants/in-worker.ts')).done;
`;

async function putTogether(files: ReadonlyMap<string, string>): Promise<string> {
  const outfile = join(PLACE, `mutants-${process.pid}.mjs`);
  mkdirSync(PLACE, { recursive: true });
  const { outputFiles } = await build({
    stdin: { contents: united(), resolveDir: ROOT, loader: 'ts' },
    ...{ outfile, bundle: true, platform: 'node', format: 'esm', packages: 'external', write: false },
    alias: {
      vitest: join(ROOT, 'test/faults/plain-runner.ts'),
      'server-only': join(ROOT, 'test/server-only.ts'),
    },
    tsconfig: join(ROOT, 'tsconfig.json'),
    logLevel: 'silent',
    plugins: [
      {
        name: 'mutants',
        setup: ({ onLoad }) => {
          onLoad({ filter: /\.ts$/ }, ({ path }) => {
            const contents = files.get(path);
            return contents === undefined ? null : { contents, loader: 'ts' };
          });
        },
      },
    ],
  });
  writeFileSync(outfile, outputFiles[0]?.contents ?? '');
  return outfile;
}

/** What became of each mutant: the test that noticed it, or null. */
export type Fate = Mutant & { by: string | null };

type Run = { piece: string; mutants: Mutant[]; say: (line: string) => void };
type Found = { fates: Map<number, string | null>; atImport: Set<number>; inOrder: number[] };

/**
 * Takes   mutants whose file and text one of the words is found in; all without words
 * Gives   the fate of each
 */
export async function mutantFates(say: (line: string) => void, words: string[] = []): Promise<Fate[]> {
  const { files, mutants: all } = await mutated();
  const mutants = all.filter(({ file }) => words.length === 0 || words.some((word) => file.includes(word)));
  const run = { piece: await putTogether(files), mutants, say };
  const found: Found = { fates: new Map(), atImport: new Set(), inOrder: [] };
  try {
    for (let from = 0; from < mutants.length; ) from = await oneWorker(run, from, found, null);
    for (const from of found.atImport) await oneWorker(run, from, found, { inOrder: found.inOrder });
  } finally {
    rmSync(run.piece, { force: true });
  }
  return mutants.map((mutant, at) => ({ ...mutant, by: found.fates.get(at) ?? null }));
}

type Message = {
  inOrder?: number[];
  seconds?: number;
  began?: number;
  ended?: number;
  by?: string | null;
  isAtImport?: boolean;
  over?: true;
};

/** Runs until the last mutant, or until one is stuck. Gives the place to go on from. */
function oneWorker(run: Run, from: number, found: Found, awake: { inOrder: number[] } | null): Promise<number> {
  const ids = run.mutants.map(({ id }) => id);
  const worker = new Worker(run.piece, { workerData: { ids, from, awake } });
  return new Promise((resolve, reject) => {
    let timer: NodeJS.Timeout | undefined;
    const end = async (next: number) => {
      clearTimeout(timer);
      await worker.terminate();
      resolve(next);
    };
    const watch = (at: number) => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        found.fates.set(at, 'came to no end');
        void end(at + 1);
      }, STUCK_MS);
    };
    // A mutant that is awake while the program loads may keep it from loading.
    worker.on('error', (error) => {
      if (!awake) return reject(error);
      found.fates.set(from, `not loaded: ${error}`);
      void end(from + 1);
    });
    worker.on('message', ({ inOrder, seconds, began, ended, by = null, isAtImport, over }: Message) => {
      if (inOrder) {
        found.inOrder = inOrder;
        run.say(`${inOrder.length} tests in ${Math.round(seconds ?? 0)} s, ${ids.length} mutants`);
      }
      if (ended !== undefined) found.fates.set(ended, by);
      if (ended !== undefined && isAtImport) found.atImport.add(ended);
      if (began !== undefined) watch(began);
      if (over) void end(ids.length);
    });
    if (awake) watch(from);
  });
}
