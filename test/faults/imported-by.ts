import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** What a file of the program may be called where it is imported. */
const ENDINGS = ['', '.ts', '.tsx', '.js'];

/**
 * Which files each of some files comes to know, through whatever imports them.
 *
 * Takes  the root that "@/" stands for, and the files to begin with
 * Gives  whether a file reaches another
 */
export function importedBy(root: string, files: readonly string[]): (from: string, to: string) => boolean {
  const known = new Map(files.map((file) => [file, reachedFrom(root, file)]));
  return (from, to) => known.get(from)?.has(to) ?? false;
}

function reachedFrom(root: string, start: string): Set<string> {
  const reached = new Set<string>();
  const left = [start];
  for (let file = left.pop(); file !== undefined; file = left.pop()) {
    if (reached.has(file)) continue;
    reached.add(file);
    left.push(...importsOf(root, file));
  }
  return reached;
}

const imports = new Map<string, string[]>();

function importsOf(root: string, file: string): string[] {
  const known = imports.get(file);
  if (known) return known;
  const text = readFileSync(file, 'utf8');
  const names = [...text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map(([, name = '']) => name);
  const found = names.flatMap((name) => fileOf(root, file, name) ?? []);
  imports.set(file, found);
  return found;
}

function fileOf(root: string, from: string, name: string): string | null {
  const inRoot = name.startsWith('@/');
  if (!inRoot && !name.startsWith('.')) return null;
  const path = inRoot ? join(root, name.slice(2)) : join(dirname(from), name);
  return ENDINGS.map((ending) => path + ending).find((each) => existsSync(each) && statSync(each).isFile()) ?? null;
}
