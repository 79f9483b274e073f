import { posix } from 'node:path';
import { type Breach, breach, literal, part, type Source, type Syntax, syntaxOf, walk } from './source';

/**
 * Who may import whom. `own` are folders and files of ours, `packages` are names from node_modules; whatever is not
 * listed is refused, for types as much as for code; `typesOnly` may be named by `import type` alone. The first entry
 * that holds a file decides.
 */
type Room = { in: RegExp; own: RegExp[]; packages: RegExp[]; typesOnly?: RegExp[] };

const SERVER_ONLY = /^server-only$/;
const NODE = /^node:/;
const SHARED = /^shared\//;
const CLOCK = /^lib\/clock$/;
const CONFIRMATION = /^lib\/confirmation$/;
const ACCESS = /^lib\/access\//;

const ROOMS: Room[] = [
  { in: /^shared\/time\//, own: [SHARED], packages: [/^zod$/, /^temporal-polyfill$/] },
  { in: /^shared\//, own: [SHARED], packages: [/^zod$/] },
  { in: /^lib\/clock\.ts$/, own: [SHARED], packages: [] },
  { in: /^lib\/confirmation\.ts$/, own: [SHARED], packages: [NODE] },
  { in: /^lib\/engine\//, own: [/^lib\/engine\//, SHARED], packages: [] },
  {
    // A backup of a PostgreSQL database is a file that any shop can be restored from.
    in: /^lib\/data\/make-backup\.ts$/,
    own: [/^lib\/data\//, SHARED, /^prisma\/move$/],
    packages: [NODE, /^better-sqlite3$/],
  },
  {
    in: /^lib\/data\//,
    own: [/^lib\/data\//, /^lib\/engine\//, SHARED, CONFIRMATION, /^prisma\/generated\//],
    packages: [SERVER_ONLY, NODE, /^zod$/, /^@prisma\//, /^better-sqlite3$/, /^pg$/],
  },
  { in: /^lib\/demo\//, own: [/^lib\/demo\//, SHARED], packages: [] },
  {
    // The general-purpose solver behind the engine's port: what has to wait, or to run on a thread of its own.
    in: /^lib\/solver\//,
    own: [/^lib\/solver\//, /^lib\/engine\//, SHARED, CLOCK],
    packages: [NODE, /^highs$/],
  },
  {
    // Commands do not call commands.
    in: /^lib\/commands\//,
    own: [/^lib\/data\//, /^lib\/engine\//, SHARED, CLOCK],
    packages: [SERVER_ONLY, NODE],
  },
  {
    // The one view that reads a request: the cookie in which a device remembers its shop.
    in: /^lib\/views\/shown-shop\.ts$/,
    own: [/^lib\/data\//, /^lib\/access\/(asker|who-asks)$/, SHARED],
    packages: [SERVER_ONLY, /^react$/, /^next\/(headers|navigation)$/],
  },
  {
    in: /^lib\/views\//,
    own: [/^lib\/views\//, /^lib\/data\//, /^lib\/engine\//, /^lib\/solver\//, SHARED, CLOCK],
    packages: [SERVER_ONLY, /^react$/, /^zod$/, /^qrcode$/],
  },
  {
    // What would hold up everybody else runs on a thread of its own, with commands and views as any route has them.
    in: /^lib\/threads\//,
    own: [
      ...[/^lib\/threads\//, /^lib\/commands\//, /^lib\/views\//, /^lib\/data\//, /^lib\/engine\//],
      ...[SHARED, CLOCK, CONFIRMATION],
    ],
    packages: [SERVER_ONLY, NODE, /^zod$/],
  },
  {
    // What speaks to the world outside by itself. It reads the books and writes one command, like a page and its form.
    in: /^lib\/alerts\//,
    own: [
      ...[/^lib\/alerts\//, /^lib\/views\/bench-states$/, /^lib\/commands\//, /^lib\/data\//, /^lib\/engine\//],
      ...[SHARED, CLOCK],
    ],
    packages: [SERVER_ONLY, NODE, /^nodemailer$/],
  },
  {
    // Who is at the door and what they may do: people, sessions, roles.
    in: /^lib\/access\//,
    own: [ACCESS, /^lib\/data\//, /^lib\/door\/allowed-hosts$/, SHARED, CLOCK],
    packages: [SERVER_ONLY, NODE, /^react$/, /^next\/headers$/, /^rate-limiter-flexible$/],
  },
  {
    // The door stands between the app and the world, and knows of what is inside only who may come in.
    in: /^lib\/door\//,
    own: [/^lib\/door\//, ACCESS, SHARED, CLOCK, CONFIRMATION],
    packages: [SERVER_ONLY, NODE, /^zod$/, /^react$/, /^next(\/|$)/, /^rate-limiter-flexible$/],
  },
  {
    in: /^lib\/command-line\/serve\.ts$/,
    own: [/^lib\/door\//],
    packages: [NODE, /^next$/],
  },
  {
    // The one verb that asks a database: it reads the file itself, without the client.
    in: /^lib\/command-line\/verify\.ts$/,
    own: [
      /^lib\/data\/(database-(file|address)|records-of-file|whole-check|postgresql\/whole-check)$/,
      /^lib\/engine\//,
      SHARED,
    ],
    packages: [NODE],
  },
  {
    // Making and bringing back a backup works on files, with the server stopped or beside it.
    in: /^lib\/command-line\/(backup|restore|contents-in-words|move)\.ts$/,
    own: [/^lib\/data\//, /^lib\/command-line\//, /^prisma\/(migration-folders|move)$/, SHARED, CLOCK],
    packages: [NODE],
  },
  {
    // The start looks at the mark beside the database, or which database it is, before anything else does.
    in: /^lib\/command-line\/start\/(ready-database|start-up|prepare)\.js$/,
    own: [
      /^lib\/command-line\//,
      /^lib\/data\/(shop-mark|backup-files|postgresql-address)$/,
      /^lib\/door\/missing-by-plain-http$/,
    ],
    packages: [NODE, /^tsx(\/|$)/],
  },
  {
    // Certificates of the shop's own making, and how phones get the authority.
    in: /^lib\/command-line\/certificate\//,
    own: [/^lib\/command-line\//, SHARED, CLOCK],
    packages: [NODE, /^@peculiar\/x509$/, /^reflect-metadata$/, /^qrcode$/],
  },
  {
    in: /^lib\/command-line\//,
    own: [/^lib\/command-line\//, /^lib\/engine\//, /^lib\/solver\//, SHARED, CLOCK],
    packages: [NODE, /^tsx(\/|$)/],
  },
  {
    // A page draws what a view hands it, which has the engine's shapes; it never calls the engine itself.
    in: /^app\//,
    typesOnly: [/^lib\/engine\//],
    own: [
      ...[/^app\//, /^lib\/commands\//, /^lib\/views\//, /^lib\/threads\//, /^lib\/alerts\//, /^lib\/door\//],
      ...[ACCESS, SHARED, CLOCK],
    ],
    packages: [
      SERVER_ONLY,
      /^react(-dom)?(\/|$)/,
      /^next(\/|$)/,
      /^recharts$/,
      /^jsqr$/,
      /^zod$/,
      /^@fontsource-variable\//,
    ],
  },
  {
    in: /^prisma\//,
    own: [/^prisma\//, /^lib\/data\//, /^lib\/commands\//, /^lib\/demo\//, SHARED, CLOCK],
    packages: [NODE, /^@prisma\//, /^prisma\/config$/, /^better-sqlite3$/, /^pg$/],
  },
  { in: /^proxy\.ts$/, own: [/^lib\/door\//], packages: [/^next\/server$/] },
  {
    in: /^instrumentation\.ts$/,
    own: [
      /^lib\/data\/(open-or-stop|read-ahead)$/,
      ...[/^lib\/commands\/watch-(clock|backups)$/, /^lib\/alerts\/watch-alerts$/],
      ...[/^lib\/access\/owner-code$/, CLOCK],
    ],
    packages: [],
  },
  { in: /^instrumentation-client\.ts$/, own: [], packages: [] },
  { in: /^next\.config\.js$/, own: [], packages: [] },
  { in: /^test\//, own: [/./], packages: [/./] },
];

/** Every import of a file that its room does not allow: static, type-only, re-exported, dynamic or required. */
export function wrongImports(source: Source): Breach[] {
  const room = ROOMS.find((each) => each.in.test(source.path));
  return importsOf(source).flatMap(({ node, target }) => {
    if (!room) return [breach(source, node, 'this file is in no room of the house')];
    if (target === null) return [breach(source, node, 'an import must name what it imports')];
    const own = ownPath(source.path, target);
    const types = isTypeOnly(node) ? (room.typesOnly ?? []) : [];
    const isAllowed = (own === null ? room.packages : [...room.own, ...types]).some((each) => each.test(own ?? target));
    return isAllowed ? [] : [breach(source, node, `${source.path} may not import ${own ?? target}`)];
  });
}

/** `import type` of a whole statement; `import { type X }` still runs the module it names. */
function isTypeOnly(node: Syntax): boolean {
  return node.type === 'TSImportType' || node.importKind === 'type' || node.exportKind === 'type';
}

function importsOf(source: Source): { node: Syntax; target: string | null }[] {
  return walk(syntaxOf(source)).flatMap(({ node }) => {
    const target = importTarget(node);
    return target ? [{ node, target: literal(target.name) }] : [];
  });
}

/** The piece of syntax that names what is imported, for every way to import. */
function importTarget(node: Syntax): { name: Syntax | null } | null {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ImportExpression':
    case 'ExportAllDeclaration':
    case 'TSImportType':
      return { name: part(node, 'source') ?? part(node, 'argument') };
    case 'ExportNamedDeclaration':
      return part(node, 'source') ? { name: part(node, 'source') } : null;
    case 'TSExternalModuleReference':
      return { name: part(node, 'expression') };
    case 'CallExpression': {
      const callee = part(node, 'callee');
      const isRequire = callee?.type === 'Identifier' && callee.name === 'require';
      const given = Array.isArray(node.arguments) ? node.arguments[0] : null;
      return isRequire ? { name: given ?? null } : null;
    }
    default:
      return null;
  }
}

/** The path of ours that an import leads to, without its ending; null when it is a package. */
function ownPath(from: string, target: string): string | null {
  if (target.startsWith('@/')) return withoutEnding(target.slice(2));
  if (target.startsWith('.')) return withoutEnding(posix.join(posix.dirname(from), target));
  return null;
}

const withoutEnding = (path: string): string => path.replace(/\.(ts|tsx|js)$/, '');
