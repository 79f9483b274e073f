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
globalThis.__stryker__ ??= {};

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

type Message = { ready?: number; seconds?: number; began?: number; ended?: number; by?: string | null; over?: true };

/** What became of each mutant: the test that noticed it, or null. */
export type Fate = Mutant & { by: string | null };

/**
 * Takes   mutants whose file and text one of the words is found in; all without words
 * Gives   the fate of each
 */
export async function mutantFates(say: (line: string) => void, words: string[] = []): Promise<Fate[]> {
  const { files, mutants } = await mutated();
  const chosen = mutants.filter(({ file }) => words.length === 0 || words.some((word) => file.includes(word)));
  const piece = await putTogether(files);
  const fates = new Map<number, string | null>();
  try {
    for (let from = 0; from < chosen.length; ) from = await oneWorker(piece, chosen, from, { fates, say });
  } finally {
    rmSync(piece, { force: true });
  }
  return chosen.map((mutant, at) => ({ ...mutant, by: fates.get(at) ?? null }));
}

/** Runs until the last mutant, or until one is stuck. Gives the place to go on from. */
function oneWorker(
  piece: string,
  mutants: Mutant[],
  from: number,
  { fates, say }: { fates: Map<number, string | null>; say: (line: string) => void },
): Promise<number> {
  const worker = new Worker(piece, { workerData: { ids: mutants.map(({ id }) => id), from } });
  return new Promise((resolve, reject) => {
    let timer: NodeJS.Timeout | undefined;
    const end = async (next: number) => {
      clearTimeout(timer);
      await worker.terminate();
      resolve(next);
    };
    worker.on('error', reject);
    worker.on('message', ({ ready, seconds, began, ended, by = null, over }: Message) => {
      if (ready !== undefined) say(`${ready} tests in ${Math.round(seconds ?? 0)} s, ${mutants.length} mutants`);
      if (over) void end(mutants.length);
      if (ended !== undefined) fates.set(ended, by);
      if (began === undefined) return;
      clearTimeout(timer);
      timer = setTimeout(() => {
        fates.set(began, 'came to no end');
        void end(began + 1);
      }, STUCK_MS);
    });
  });
}
