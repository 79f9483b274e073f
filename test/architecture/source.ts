import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseAst } from 'vitest/node';

/** One file of ours: its path from the root, and its text. Planted breaches in tests are such files too. */
export type Source = { path: string; text: string };

/** A rule broken: where, and in words what and why. */
export type Breach = { path: string; line: number; message: string };

/** A piece of syntax, as the parser of the test runner gives it (ESTree, with TypeScript and JSX). */
export type Syntax = { type: string; start: number; end: number; [field: string]: unknown };

const root = new URL('../../', import.meta.url).pathname;
const FOLDERS = ['app', 'lib', 'shared', 'prisma', 'test'];
const CODE = /\.(ts|tsx|js|mjs|cjs)$/;

/** Every file of ours that is code, except what is generated. */
export function readSources(): Source[] {
  const own = FOLDERS.flatMap((folder) => pathsUnder(folder)).filter((path) => !path.startsWith('prisma/generated/'));
  const top = readdirSync(root).filter((name) => statSync(join(root, name)).isFile());
  return [...own, ...top]
    .filter((path) => CODE.test(path) && path !== 'next-env.d.ts')
    .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));
}

/** Every path under a folder, with forward slashes. */
export function pathsUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length).replaceAll('\\', '/'));
}

export const topLevel = (): string[] => readdirSync(root);

const parsed = new WeakMap<Source, Syntax>();

/** The syntax tree of a file. Throws when it cannot be parsed. */
export function syntaxOf(source: Source): Syntax {
  const known = parsed.get(source);
  if (known) return known;
  const lang = source.path.endsWith('.tsx') ? 'tsx' : /\.[mc]?js$/.test(source.path) ? 'js' : 'ts';
  const tree: unknown = parseAst(source.text, { lang }, source.path);
  if (!isSyntax(tree)) throw new RangeError(`${source.path} gave no syntax tree`);
  parsed.set(source, tree);
  return tree;
}

type Placed = { node: Syntax; parents: Syntax[] };

/** Every piece of syntax in a file, with the pieces it stands in, the innermost last. */
export function walk(node: Syntax, parents: Syntax[] = [], found: Placed[] = []): Placed[] {
  found.push({ node, parents });
  const within = [...parents, node];
  for (const field in node) {
    const value = node[field];
    if (Array.isArray(value)) {
      for (const child of value) if (isSyntax(child)) walk(child, within, found);
    } else if (isSyntax(value)) walk(value, within, found);
  }
  return found;
}

function isSyntax(value: unknown): value is Syntax {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

/** A field of a node that is a node itself. */
export function part(node: Syntax | null, field: string): Syntax | null {
  const value = node?.[field];
  return isSyntax(value) ? value : null;
}

/** The nodes in a field that is a list. */
export function parts(node: Syntax | null, field: string): Syntax[] {
  const value = node?.[field];
  return Array.isArray(value) ? value.filter(isSyntax) : [];
}

/** The dotted name of an expression such as `Date.now`; null for anything else. `globalThis.` is left out. */
export function dotted(node: Syntax | null): string | null {
  if (node?.type === 'Identifier') return String(node.name);
  if (node?.type === 'ChainExpression' || node?.type === 'ParenthesizedExpression')
    return dotted(part(node, 'expression'));
  if (node?.type !== 'MemberExpression') return null;
  const owner = dotted(part(node, 'object'));
  const property = part(node, 'property');
  const name = node.computed === true ? literal(property) : property && String(property.name);
  if (owner === null || name === null) return null;
  return owner === 'globalThis' ? name : `${owner}.${name}`;
}

/** The text of a string literal, or null. */
export function literal(node: Syntax | null): string | null {
  return node?.type === 'Literal' && typeof node.value === 'string' ? node.value : null;
}

export function breach(source: Source, node: Syntax, message: string): Breach {
  return { path: source.path, line: source.text.slice(0, node.start).split('\n').length, message };
}
