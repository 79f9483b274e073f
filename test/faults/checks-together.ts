import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type BuildContext, context, type Plugin } from 'esbuild';
import type { Fault } from './fault';

/*
 * All checks against published figures in one piece, put together anew for each fault, with its text replaced. Nothing of
 * the program on disk is changed.
 */

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const CHECKS = join(ROOT, 'test/outside');
/** One finishes mixes in a real database, the others give a search its seconds: each takes longer than all others together. */
const LEFT_OUT = ['record-fields.test.ts', 'buying-cases.test.ts', 'lot-sizing.test.ts'];
/** Where the piece stands for a moment, so that it finds the packages. */
const PLACE = join(ROOT, 'node_modules/.cache/faults');
const LONGEST_MS = 300_000;

/** How many checks passed, or which was the first that did not. */
export type Outcome = { passed: number } | { red: string };

const names = readdirSync(CHECKS).filter((name) => name.endsWith('.test.ts') && !LEFT_OUT.includes(name));

const UNITED = `
import { parentPort } from 'node:worker_threads';
import { runAll } from 'vitest';
let passed = 0;
let red = null;
${names.map((name) => `if (!red) red = await look('${name}', () => import('./${name}'));`).join('\n')}
parentPort.postMessage(red ? { red } : { passed });

async function look(name, load) {
  try {
    await load();
  } catch (error) {
    return name + ': ' + error;
  }
  const outcome = await runAll();
  if ('red' in outcome) return name + ': ' + outcome.red;
  passed += outcome.passed;
  return null;
}
`;

export class Checks {
  private planted: Fault | null = null;
  private made = 0;
  private readonly bundle: Promise<BuildContext>;

  constructor() {
    mkdirSync(PLACE, { recursive: true });
    this.bundle = context({
      stdin: { contents: UNITED, resolveDir: CHECKS, loader: 'ts' },
      outfile: join(PLACE, 'checks.mjs'),
      ...{ bundle: true, platform: 'node', format: 'esm', packages: 'external', write: false, logLevel: 'silent' },
      alias: { vitest: join(ROOT, 'test/faults/plain-runner.ts') },
      tsconfig: join(ROOT, 'tsconfig.json'),
      plugins: [this.faultPlugin()],
    });
  }

  /** What the checks say of the program with a fault in it; without one, of the program as it is. */
  async outcomeWith(fault: Fault | null): Promise<Outcome> {
    this.planted = fault;
    const [piece] = (await (await this.bundle).rebuild()).outputFiles ?? [];
    if (!piece) throw new Error('The checks could not be put together.');
    this.made += 1;
    // A name of its own each time, because what was once loaded under a name is not loaded again.
    const file = join(PLACE, `checks-${process.pid}-${this.made}.mjs`);
    writeFileSync(file, piece.contents);
    const worker = new Worker(file);
    try {
      return await answerOf(worker);
    } finally {
      await worker.terminate();
      rmSync(file, { force: true });
    }
  }

  async close(): Promise<void> {
    await (await this.bundle).dispose();
  }

  private faultPlugin(): Plugin {
    return {
      name: 'fault',
      setup: ({ onLoad }) => {
        onLoad({ filter: /\.tsx?$/ }, ({ path }) => {
          if (!this.planted || path !== join(ROOT, this.planted.file)) return null;
          const { find, put } = this.planted;
          // A function, because a text to put in may hold what a replacement would read as a pattern.
          return { contents: readFileSync(path, 'utf8').replace(find, () => put), loader: 'ts' };
        });
      },
    };
  }
}

function answerOf(worker: Worker): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    setTimeout(() => resolve({ red: 'the checks came to no end' }), LONGEST_MS).unref();
  });
}
