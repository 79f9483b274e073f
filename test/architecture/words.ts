import { type Breach, breach, dotted, literal, part, parts, type Source, type Syntax, syntaxOf, walk } from './source';

/** The time is read in lib/clock.ts alone; a test may read its own. */
export function clockReads(source: Source): Breach[] {
  if (source.path === 'lib/clock.ts' || source.path.startsWith('test/')) return [];
  return found(source, 'the time is read in lib/clock.ts only', (node) => {
    const isBare = parts(node, 'arguments').length === 0;
    const name = dotted(part(node, 'callee')) ?? dotted(node);
    if (node.type === 'NewExpression') return name === 'Date' && isBare;
    if (node.type === 'CallExpression') return name === 'Date';
    if (takenApart(node, 'Date')?.includes('now') || takenApart(node, 'performance')?.includes('now')) return true;
    return (
      node.type === 'MemberExpression' &&
      /^(Date\.now|performance\.(now|timeOrigin)|process\.hrtime|Temporal\.Now)$/.test(name ?? '')
    );
  });
}

const ROUNDING = /^Math\.(round|floor|ceil|trunc|fround)$/;
const ROUNDING_METHODS = ['toFixed', 'toPrecision', 'toExponential'];

/** Rounding happens in shared/ alone, where each one has a name that says which way and why. */
export function roundings(source: Source): Breach[] {
  if (source.path.startsWith('shared/') || source.path.startsWith('test/')) return [];
  return found(source, 'rounding happens in shared/ only, under a name', (node) => {
    const name = dotted(node);
    if (takenApart(node, 'Math')?.some((taken) => ROUNDING.test(`Math.${taken}`))) return true;
    if (node.type === 'Identifier') return name === 'parseInt';
    if (node.type === 'MemberExpression') return isRoundingMember(node, name);
    if (node.type === 'UnaryExpression') return node.operator === '~';
    const isBitwise = /^(\||>>|>>>|<<|&|\^)=?$/.test(String(node.operator));
    return isBitwise && (node.type === 'BinaryExpression' || node.type === 'AssignmentExpression');
  });
}

function isRoundingMember(node: Syntax, name: string | null): boolean {
  if (name !== null && (ROUNDING.test(name) || name === 'Number.parseInt' || name === 'Intl.NumberFormat')) return true;
  const property = part(node, 'property');
  const member = node.computed === true ? literal(property) : String(property?.name);
  return ROUNDING_METHODS.includes(member ?? '');
}

const IMPURE =
  /^(Promise|process|console|fetch|setTimeout|setInterval|setImmediate|queueMicrotask|Math\.random|crypto)$/;

/** The engine and shared/ give the same answer to the same question, at once: nothing waits, asks or tells. */
export function impurities(source: Source): Breach[] {
  if (!/^(lib\/engine|shared)\//.test(source.path)) return [];
  return found(source, 'lib/engine and shared are pure and synchronous', (node, parent) => {
    if (node.async === true || node.type === 'AwaitExpression' || node.type === 'ImportExpression') return true;
    if (node.type === 'ForOfStatement' && node.await === true) return true;
    if (node.type === 'MemberExpression') return IMPURE.test(dotted(node) ?? '');
    return node.type === 'Identifier' && IMPURE.test(String(node.name)) && !isOnlyAName(node, parent);
  });
}

/** Whether an identifier is the name of a field rather than of a value: `x.process`, `{ process: 1 }`. */
function isOnlyAName(node: Syntax, parent: Syntax | undefined): boolean {
  if (parent?.computed === true) return false;
  if (parent?.type === 'MemberExpression') return part(parent, 'property') === node;
  const isKeyed = /^(Property|PropertyDefinition|TSPropertySignature|MethodDefinition)$/.test(parent?.type ?? '');
  return isKeyed && parent?.shorthand !== true && part(parent ?? null, 'key') === node;
}

/** The names taken out of an object by `const { now } = Date`. */
function takenApart(node: Syntax, owner: string): string[] | null {
  if (node.type !== 'VariableDeclarator' || dotted(part(node, 'init')) !== owner) return null;
  return parts(part(node, 'id'), 'properties').map((property) => String(part(property, 'key')?.name));
}

function found(source: Source, message: string, isIt: (node: Syntax, parent: Syntax | undefined) => boolean): Breach[] {
  return walk(syntaxOf(source))
    .filter(({ node, parents }) => isIt(node, parents.at(-1)))
    .map(({ node }) => breach(source, node, `${message}: ${source.text.slice(node.start, node.end).slice(0, 60)}`));
}
