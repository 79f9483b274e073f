import { type Breach, breach, part, parts, type Source, type Syntax, syntaxOf, walk } from './source';

const MOST_LINES = 300;
const MOST_FUNCTION_LINES = 40;
const MOST_COMPONENT_LINES = 70;

/**
 * Files of at most 300 lines, functions of at most 40: past that a noun is missing. A component may have 70, since its
 * markup is laid out one attribute a line. Functions in tests may hold long tables.
 */
export function tooLong(source: Source): Breach[] {
  const lines = source.text.split('\n').length - 1;
  const file =
    lines > MOST_LINES ? [{ path: source.path, line: 1, message: `${lines} lines; at most ${MOST_LINES}` }] : [];
  return source.path.startsWith('test/') ? file : [...file, ...longFunctions(source)];
}

function longFunctions(source: Source): Breach[] {
  return walk(syntaxOf(source)).flatMap(({ node, parents }) => {
    if (!/^(FunctionDeclaration|FunctionExpression|ArrowFunctionExpression)$/.test(node.type)) return [];
    const name = String(part(node, 'id')?.name ?? part(parents.at(-1) ?? null, 'id')?.name ?? '');
    const isComponent = source.path.endsWith('.tsx') && /^[A-Z]/.test(name);
    const most = isComponent ? MOST_COMPONENT_LINES : MOST_FUNCTION_LINES;
    const lines = source.text.slice(node.start, node.end).split('\n').length;
    return lines > most ? [breach(source, node, `a function of ${lines} lines; at most ${most}`)] : [];
  });
}

const VAGUE = /(^|\/)(utils?|helpers?|types?|constants?|services?|misc|common)(\/|\.[a-z]+$)/;
const KEBAB =
  /^(\[{0,2}(\.{3})?[a-z0-9-]+\]{0,2}|_[a-z]+|\([a-z-]+\)|openapi\.json|(products|offers|lots|template)\.csv|calendar\.ics)$/;

/** A name says what a file holds; and nothing stands between a file and who imports it. */
export function vagueNames(path: string): Breach[] {
  const say = (message: string) => [{ path, line: 1, message }];
  if (VAGUE.test(path)) return say('a file is named after what it holds, not after what kind of thing that is');
  if (/(^|\/)index\.(ts|tsx|js)$/.test(path)) return say('no barrels: import from the file itself');
  const names = path.replace(/(\.(d|test|spec|config|module))*\.[a-z]+$/, '').split('/');
  // Documents are named in capitals, as everywhere.
  const isNamed = (name: string) => KEBAB.test(name) || (path.endsWith('.md') && /^[A-Z]+$/.test(name));
  return names.every(isNamed) ? [] : say('names are in kebab-case');
}

/** `export *` makes a barrel of any file. */
export function barrels(source: Source): Breach[] {
  return walk(syntaxOf(source))
    .filter(({ node }) => node.type === 'ExportAllDeclaration')
    .map(({ node }) => breach(source, node, 'no barrels: import from the file itself'));
}

const TOP_LEVEL = new Set([
  ...['app', 'lib', 'prisma', 'public', 'shared', 'test', '.ci'],
  ...['README.md', 'DEVELOPERS.md', 'LICENSE', '.gitignore'],
  ...['package.json', 'package-lock.json', 'tsconfig.json', 'biome.json'],
  ...['next.config.js', 'proxy.ts', 'instrumentation.ts', 'instrumentation-client.ts'],
]);
const MADE_BY_TOOLS =
  /^(\.git|node_modules|\.next.*|data|next-env\.d\.ts|.*\.tsbuildinfo|test-results|playwright-report)$/;

/** The top level holds what tools insist on, and nothing more. */
export function strangers(names: string[]): string[] {
  return names.filter((name) => !TOP_LEVEL.has(name) && !MADE_BY_TOOLS.test(name));
}

export const METHODS = /^(GET|HEAD|POST|PUT|PATCH|DELETE|OPTIONS)$/;

/** Nothing reaches the house but through the door: every route is a doorRoute, every server action a doorAction, every page a doorPage. */
export function besideTheDoor(source: Source): Breach[] {
  const tree = syntaxOf(source);
  const isRoute = /^app\/.*\/route\.tsx?$/.test(source.path);
  const isPage = /^app\/(.*\/)?page\.tsx?$/.test(source.path);
  return walk(tree).flatMap(({ node, parents }) => {
    if (node.type === 'ExpressionStatement' && node.directive === 'use server') {
      const isWholeFile = parents.at(-1) === tree && source.path.startsWith('app/');
      return isWholeFile ? exportsWithout(source, tree, 'doorAction', /./) : [breach(source, node, ACTIONS_APART)];
    }
    if (isPage && node === tree) return pageWithout(source, tree);
    return isRoute && node === tree ? exportsWithout(source, tree, 'doorRoute', METHODS) : [];
  });
}

/** The default export of a page is what doorPage makes of it. */
function pageWithout(source: Source, tree: Syntax): Breach[] {
  const made = parts(tree, 'body').find(({ type }) => type === 'ExportDefaultDeclaration') ?? null;
  const callee = part(part(made, 'declaration'), 'callee')?.name;
  return callee === 'doorPage'
    ? []
    : [breach(source, made ?? tree, 'the default export of a page is made by doorPage')];
}

const ACTIONS_APART = 'server actions stand in files of their own under app/, each made by doorAction';

function exportsWithout(source: Source, tree: Syntax, maker: string, named: RegExp): Breach[] {
  const made = new Set(madeBy(tree, maker));
  return parts(tree, 'body').flatMap((node) => {
    if (!node.type.startsWith('Export') || node.exportKind === 'type') return [];
    const declaration = part(node, 'declaration');
    const isMade =
      declaration?.type === 'VariableDeclaration'
        ? parts(declaration, 'declarations').every((each) => !named.test(nameOf(each)) || made.has(nameOf(each)))
        : made.has(handsOnTo(declaration) ?? '');
    return isMade ? [] : [breach(source, node, `every export is made by ${maker}`)];
  });
}

/** The names at the top of a file that hold what a maker made. */
function madeBy(tree: Syntax, maker: string): string[] {
  const declarations = parts(tree, 'body').flatMap((node) => [node, part(node, 'declaration')]);
  return declarations
    .flatMap((node) => parts(node, 'declarations'))
    .filter((each) => part(part(each, 'init'), 'callee')?.name === maker)
    .map(nameOf);
}

/** `async function a(state, form) { return b(state, form); }` hands everything on to b. */
export function handsOnTo(declaration: Syntax | null): string | null {
  const [only, ...more] = parts(part(declaration, 'body'), 'body');
  if (declaration?.type !== 'FunctionDeclaration' || only?.type !== 'ReturnStatement' || more.length > 0) return null;
  return String(part(part(only, 'argument'), 'callee')?.name);
}

export const nameOf = (declarator: Syntax): string => String(part(declarator, 'id')?.name);
