import { type Reading, read, unreadable } from '@/shared/outcome';
import { nearest } from '@/shared/shop-file/nearest';
import { shown } from '@/shared/shop-file/path';

/** What a verb takes: whether it reads a file, and its options, each with an example. */
export type Usage = { file: boolean; options: Record<string, string> };

export type Asked = { verb: string; file: string | null; options: ReadonlyMap<string, string> };

/**
 * What somebody asked on the command line.
 *
 * Takes    the words after the command's name, and what each verb takes
 * Refuses  no or an unknown verb, an unknown or doubled option, an option without its value, a missing file, a second one
 */
export function readArguments(words: readonly string[], usages: Record<string, Usage>): Reading<Asked> {
  const [verb, ...rest] = words;
  const known = Object.keys(usages);
  if (verb === undefined) return unreadable(`Say what to do: one of ${known.join(', ')}. ${usageOf(usages)}`);
  const usage = Object.hasOwn(usages, verb) ? usages[verb] : undefined;
  if (!usage) {
    const meant = nearest(verb, known);
    return unreadable(
      `There is no verb ${shown(verb)}. ${meant ? `Did you mean ${meant}?` : `Write one of ${known.join(', ')}.`}`,
    );
  }
  return readRest(verb, rest, usage);
}

function readRest(verb: string, words: readonly string[], usage: Usage): Reading<Asked> {
  const options = new Map<string, string>();
  const files: string[] = [];
  for (let at = 0; at < words.length; at++) {
    const word = words[at] ?? '';
    if (!word.startsWith('-') || word === '-') {
      files.push(word);
      continue;
    }
    const [name = '', ...given] = word.split('=');
    const value = given.length > 0 ? given.join('=') : words[++at];
    const wrong = wrongOption(verb, name, value, usage, options);
    if (wrong) return unreadable(wrong);
    options.set(name, value ?? '');
  }
  const wrong = wrongFiles(verb, files, usage);
  return wrong ? unreadable(wrong) : read({ verb, file: files[0] ?? null, options });
}

function wrongOption(
  verb: string,
  name: string,
  value: string | undefined,
  { options }: Usage,
  given: ReadonlyMap<string, string>,
): string | null {
  const example = Object.hasOwn(options, name) ? options[name] : undefined;
  if (example === undefined) {
    const known = Object.keys(options);
    const meant = nearest(name, known);
    const hint = meant
      ? `Did you mean ${meant}?`
      : known.length > 0
        ? `It takes ${known.join(' and ')}.`
        : 'It takes none.';
    return `${verb} has no option ${shown(name)}. ${hint}`;
  }
  if (given.has(name)) return `${name} is given twice. Give it once.`;
  return value === undefined || value === '' ? `${name} needs a value. Write it as ${name} ${example}.` : null;
}

function wrongFiles(verb: string, files: readonly string[], usage: Usage): string | null {
  if (!usage.file) return files.length > 0 ? `${verb} takes no file. Write ${verb} alone.` : null;
  if (files.length === 0)
    return `${verb} needs a shop file. Write its name after ${verb}, or - to read standard input.`;
  return files.length > 1 ? `${verb} takes one file; these are ${files.length}: ${files.map(shown).join(', ')}.` : null;
}

/** All verbs in one line. */
const usageOf = (usages: Record<string, Usage>): string => {
  const lines = Object.entries(usages).map(([verb, { file, options }]) =>
    [verb, ...(file ? ['FILE'] : []), ...Object.entries(options).map(([name, example]) => `[${name} ${example}]`)].join(
      ' ',
    ),
  );
  return `For example: ${lines.join(' | ')}.`;
};
