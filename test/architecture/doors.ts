import { isMay, type May } from '@/lib/access/may';
import { handsOnTo, METHODS, nameOf } from './shape';
import { type Breach, breach, literal, part, parts, type Source, type Syntax, syntaxOf } from './source';

/** One way into the house: an action, a route or a page, and what it asks of whoever comes; null where it says nothing. */
export type Entry = { kind: 'action' | 'route' | 'page'; path: string; name: string; may: May | null };

type Found = Entry & { node: Syntax };

/** Every way in that a file has, as its source says. */
export const entriesIn = (source: Source): Entry[] => found(source).map(({ node: _, ...entry }) => entry);

/** Every door says what it takes, in one of the words of `lib/access/may.ts`. */
export const silentDoors = (source: Source): Breach[] => [
  ...found(source)
    .filter(({ may }) => may === null)
    .map(({ node, kind }) => breach(source, node, `a ${kind} says what it takes: a word of lib/access/may.ts`)),
  ...openTitles(source),
];

/** A title that names something of the shop takes what its page takes. */
function openTitles(source: Source): Breach[] {
  if (!/^app\/.*\.tsx?$/.test(source.path)) return [];
  const page = pageIn(source)[0]?.may ?? null;
  return parts(syntaxOf(source), 'body').flatMap((node) => {
    const declaration = part(node, 'declaration');
    const isFunction = part(declaration, 'id')?.name === 'generateMetadata';
    const named = parts(declaration, 'declarations').find((each) => nameOf(each) === 'generateMetadata');
    const made = part(named ?? null, 'init');
    const [may = null] = parts(made, 'arguments');
    const isMade = part(made, 'callee')?.name === 'doorTitle' && page !== null && mayIn(may) === page;
    const isOpen = isFunction || (named !== undefined && !isMade);
    return isOpen ? [breach(source, node, 'a title is made by doorTitle, and asks what its page asks')] : [];
  });
}

function found(source: Source): Found[] {
  const { path } = source;
  if (/^app\/(.*\/)?page\.tsx?$/.test(path)) return pageIn(source);
  if (/^app\/.*\/route\.tsx?$/.test(path))
    return doorsIn(source, 'route', 'doorRoute').filter(({ name }) => METHODS.test(name));
  return path.startsWith('app/') && isOfActions(syntaxOf(source)) ? actionsIn(source) : [];
}

const isOfActions = (tree: Syntax): boolean => parts(tree, 'body').some(({ directive }) => directive === 'use server');

function pageIn(source: Source): Found[] {
  return parts(syntaxOf(source), 'body').flatMap((node) => {
    if (node.type !== 'ExportDefaultDeclaration') return [];
    const [may] = parts(part(node, 'declaration'), 'arguments');
    return [{ kind: 'page', path: source.path, name: 'default', may: mayIn(may ?? null), node }];
  });
}

/** Exported actions, each with what the door takes that it hands on to. */
function actionsIn(source: Source): Found[] {
  const doors = new Map(doorsIn(source, 'action', 'doorAction').map((door) => [door.name, door]));
  return parts(syntaxOf(source), 'body').flatMap((node) => {
    const declaration = part(node, 'declaration');
    if (declaration?.type !== 'FunctionDeclaration') return [];
    const door = doors.get(handsOnTo(declaration) ?? '');
    const name = String(part(declaration, 'id')?.name);
    return [{ kind: 'action', path: source.path, name, may: door?.may ?? null, node }];
  });
}

/** What a maker made at the top of a file, by its name, with the `may` of its first argument. */
function doorsIn(source: Source, kind: Entry['kind'], maker: string): Found[] {
  const body = parts(syntaxOf(source), 'body');
  const declared = body
    .flatMap((node) => [node, part(node, 'declaration')])
    .flatMap((node) => parts(node, 'declarations'));
  const values = new Map(declared.map((each) => [nameOf(each), part(each, 'init')]));
  return declared.flatMap((node) => {
    const made = part(node, 'init');
    if (part(made, 'callee')?.name !== maker) return [];
    const [first = null] = parts(made, 'arguments');
    const contract = first?.type === 'Identifier' ? plain(values.get(String(first.name)) ?? null) : first;
    const property = parts(contract, 'properties').find((each) => part(each, 'key')?.name === 'may');
    return [{ kind, path: source.path, name: nameOf(node), may: mayIn(part(property ?? null, 'value')), node }];
  });
}

/** An expression without `as const`. */
const plain = (node: Syntax | null): Syntax | null =>
  node?.type === 'TSAsExpression' ? part(node, 'expression') : node;

function mayIn(node: Syntax | null): May | null {
  const said = literal(node);
  return said !== null && isMay(said) ? said : null;
}
