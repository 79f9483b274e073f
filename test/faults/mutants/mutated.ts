import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import { createInjector } from 'typed-inject';
import { ROOT } from '../checks-together';

/** Where a mutant would open a bench, miscount a bottle or lose a record. */
const BOARD = ['counting', 'held-back', 'keep-out', 'reopening'].map((name) => `lib/engine/keepout/${name}.ts`);
const REST = [
  ...['clock-doubt', 'earlier-openings', 'still-to-come', 'waiting'].map((name) => `lib/engine/keepout/${name}.ts`),
  ...['account', 'balance', 'decide', 'draw-cost', 'draw-order', 'last-usable-day'].map(
    (name) => `lib/engine/ledger/${name}.ts`,
  ),
  ...['chain', 'late-entry', 'retention', 'seal-text'].map((name) => `lib/engine/record/${name}.ts`),
];

/**
 * Mutants that change nothing: no test can tell them from the program.
 * Every unknown record has left before the latest end is looked for, and no moment is before 1970.
 */
const ALIKE: readonly { file: string; was: string; becomes: string }[] = [
  { file: 'keep-out.ts', was: 'reopensAt !== null', becomes: 'true' },
  { file: 'keep-out.ts', was: 'until === null', becomes: 'false' },
  { file: 'keep-out.ts', was: 'reopensAt > until', becomes: 'reopensAt >= until' },
];

/** One small change to the program, made by a rule: an operator, a number, a condition or a list. */
export type Mutant = { id: string; file: string; line: number; was: string; becomes: string; isBoard: boolean };

/** The files with all mutants in them, each asleep until its id is the active one. */
export type Mutated = { files: ReadonlyMap<string, string>; mutants: Mutant[] };

export async function mutated(): Promise<Mutated> {
  const texts = new Map([...BOARD, ...REST].map((file) => [file, readFileSync(join(ROOT, file), 'utf8')]));
  const files = [...texts].map(([file, content]) => ({ name: join(ROOT, file), content, mutate: true }));
  const outcome = await createInjector()
    .provideValue('logger', SILENT)
    .provideValue('getLogger', () => SILENT)
    .injectFunction(createInstrumenter)
    .instrument(files, { plugins: null, excludedMutations: [], ignorers: [], noHeader: false });
  const mutants = outcome.mutants.flatMap(({ id, fileName, location, mutatorName, replacement }) => {
    const file = fileName.slice(ROOT.length);
    const isBoard = BOARD.includes(file);
    // The words of a message are not the board's answer.
    if (mutatorName === 'StringLiteral' && !isBoard) return [];
    const { start } = location;
    const was = cut(texts.get(file) ?? '', location);
    const isAlike = ALIKE.some((one) => file.endsWith(one.file) && one.was === was && one.becomes === replacement);
    return isAlike ? [] : [{ id, file, line: start.line + 1, was, becomes: replacement, isBoard }];
  });
  return { files: new Map(outcome.files.map(({ name, content }) => [name, content])), mutants };
}

type Place = { line: number; column: number };

function cut(text: string, { start, end }: { start: Place; end: Place }): string {
  const lines = text.split('\n').slice(start.line, end.line + 1);
  const last = lines.length - 1;
  const kept = lines.map((line, at) => line.slice(at === 0 ? start.column : 0, at === last ? end.column : undefined));
  return kept.join(' ').replace(/\s+/g, ' ');
}

const nothing = (): void => {};
const no = (): boolean => false;
const SILENT = {
  ...{ trace: nothing, debug: nothing, info: nothing, warn: nothing, error: nothing, fatal: nothing },
  ...{ isTraceEnabled: no, isDebugEnabled: no, isInfoEnabled: no },
  ...{ isWarnEnabled: no, isErrorEnabled: no, isFatalEnabled: no },
};
