import { expect, test } from 'vitest';
import { silentDoors } from './architecture/doors';
import { wrongImports } from './architecture/imports';
import { barrels, besideTheDoor, strangers, tooLong, vagueNames } from './architecture/shape';
import { type Breach, pathsUnder, readSources, type Source, topLevel } from './architecture/source';
import { clockReads, impurities, roundings } from './architecture/words';

const sources = readSources();
const paths = ['app', 'lib', 'shared', 'prisma', 'test']
  .flatMap(pathsUnder)
  .filter((path) => !path.startsWith('prisma/generated/') && !path.startsWith('prisma/migrations/'));

const holds = (rule: (source: Source) => Breach[]) => () => {
  expect(sources.length).toBeGreaterThan(100);
  expect(sources.flatMap(rule).map(({ path, line, message }) => `${path}:${line} ${message}`)).toEqual([]);
};

test('imports run one way through the house', holds(wrongImports));
test('the time is read in one file', holds(clockReads));
test('rounding happens in shared only', holds(roundings));
test('the engine and shared are pure and synchronous', holds(impurities));
test('no file stands between another and who imports it', holds(barrels));
test('every route, action and page goes through the door', holds(besideTheDoor));
test('every door says what it takes to pass', holds(silentDoors));
test('files and functions are short', holds(tooLong));

test('files are named after what they hold', () => {
  expect(paths.flatMap(vagueNames)).toEqual([]);
});

test('the top level holds what tools insist on, and nothing more', () => {
  expect(strangers(topLevel())).toEqual([]);
});

type Planted = { rule: (source: Source) => Breach[]; path: string; text: string };

const caught = (rule: Planted['rule'], path: string, ...texts: string[]): Planted[] =>
  texts.map((text) => ({ rule, path, text }));

const manyLines = (count: number) => Array.from({ length: count }, (_, line) => `a(${line});`).join('\n');

/** Every rule is seen to fail: each of these breaches must be caught. */
const PLANTED: Planted[] = [
  ...caught(
    wrongImports,
    'lib/engine/ahead/plan.ts',
    "import { x } from '../../data/x';",
    "import { x } from '@/lib/data/x';",
    "import type { X } from '@/lib/data/x';",
    "import { type X } from '@/lib/clock';",
    "export { x } from '@/lib/views/x';",
    "export type { X } from '@/lib/commands/x';",
    "const x = require('../../data/x');",
    "import x = require('../../data/x');",
    "type X = import('@/lib/data/x').X;",
    "const x = import('@/app/x');",
    'const x = import(`@/app/x`);',
    "import { z } from 'zod';",
    "import fs from 'node:fs';",
    "import '../../data/x';",
  ),
  ...caught(wrongImports, 'shared/time/day.ts', "import '@/lib/engine/shop';", "import 'next';", "import 'luxon';"),
  ...caught(wrongImports, 'shared/measure/dose.ts', "import { Temporal } from 'temporal-polyfill';"),
  ...caught(wrongImports, 'lib/views/week.ts', "import '@/lib/commands/x';", "import '@prisma/client';"),
  ...caught(wrongImports, 'lib/views/week.ts', "import '@/app/x';", "import '@/prisma/generated/client';"),
  ...caught(wrongImports, 'lib/commands/draw-stock.ts', "import './open-container';", "import '@/lib/views/week';"),
  ...caught(wrongImports, 'lib/commands/draw-stock.ts', "import 'better-sqlite3';", "import '@/lib/door/visitor';"),
  ...caught(wrongImports, 'lib/data/snapshot.ts', "import '@/lib/commands/x';", "import { clock } from '../clock';"),
  ...caught(wrongImports, 'app/week/page.tsx', "import '@/lib/data/snapshot';", "import '@/lib/engine/shop';"),
  ...caught(wrongImports, 'app/week/page.tsx', "import { type Shop } from '@/lib/engine/shop';"),
  ...caught(wrongImports, 'app/week/page.tsx', "import type { Rows } from '@/lib/data/database';"),
  ...caught(wrongImports, 'lib/views/today.ts', "import '@/lib/alerts/send-mail';", "import 'nodemailer';"),
  ...caught(wrongImports, 'lib/commands/draw-stock.ts', "import '@/lib/alerts/send-mail';"),
  ...caught(wrongImports, 'lib/alerts/send-mail.ts', "import '@/app/x';", "import '@prisma/client';", "import 'next';"),
  ...caught(wrongImports, 'lib/door/front.ts', "import '@/lib/data/snapshot';", "import '@/lib/commands/x';"),
  ...caught(wrongImports, 'lib/clock.ts', "import 'temporal-polyfill';", "import './engine/shop';"),
  ...caught(wrongImports, 'proxy.ts', "import '@/lib/data/database';"),
  ...caught(wrongImports, 'lib/elsewhere/thing.ts', "import 'zod';"),
  ...caught(
    clockReads,
    'lib/views/week.ts',
    'const a = Date.now();',
    'const a = new Date();',
    'const a = Date();',
    'const a = new globalThis.Date();',
    "const a = Date['now']();",
    'const { now } = Date;',
    'const a = list.map(Date.now);',
    'const a = performance.now();',
    'const a = process.hrtime();',
    'const a = Temporal.Now.instant();',
  ),
  ...caught(
    roundings,
    'lib/engine/ahead/plan.ts',
    'const a = Math.round(b);',
    'const a = Math.floor(b);',
    'const a = Math.ceil(b);',
    'const a = Math.trunc(b);',
    'const { floor } = Math;',
    'const a = list.map(Math.round);',
    'const a = b.toFixed(2);',
    'const a = b?.toFixed(2);',
    "const a = b['toFixed'](2);",
    'const a = b.toPrecision(2);',
    'const a = parseInt(b, 10);',
    'const a = Number.parseInt(b, 10);',
    'const a = b | 0;',
    'let a = b; a |= 0;',
    'const a = ~~b;',
    'const a = b >> 0;',
    'const a = b >>> 0;',
    "const a = new Intl.NumberFormat('en');",
  ),
  ...caught(
    impurities,
    'lib/engine/ahead/plan.ts',
    'async function a() {}',
    'const a = async () => 1;',
    'const a: Promise<number> = b;',
    'const a = Promise.resolve(1);',
    "const a = import('./b');",
    'const a = process.env.X;',
    "console.log('a');",
    'const a = Math.random();',
    "const a = fetch('b');",
  ),
  ...caught(impurities, 'shared/outcome.ts', 'export async function a() {}', 'setTimeout(a, 1);'),
  ...caught(barrels, 'shared/outcome.ts', "export * from './a';", "export * as a from './a';"),
  ...caught(
    besideTheDoor,
    'app/api/v1/plan/route.ts',
    'export async function GET() { return new Response(); }',
    'export const GET = () => new Response();',
    'export const GET = otherRoute({}, b);',
    'const GET = () => 1; export { GET };',
    'export default doorRoute({}, b);',
  ),
  ...caught(
    besideTheDoor,
    'app/setup/actions.ts',
    "'use server'; export async function a() {}",
    "'use server'; export const a = async () => 1;",
    "'use server'; export const a = doorAction(b, c), d = async () => 1;",
    "'use server'; export default async function a() {}",
    "'use server'; const b = doorAction(c, d); export async function a(s, f) { await e(); return b(s, f); }",
    "'use server'; const b = other(c, d); export async function a(s, f) { return b(s, f); }",
    "export function A() { async function a() { 'use server'; } return a; }",
  ),
  ...caught(
    besideTheDoor,
    'app/a/page.tsx',
    'export default function Page() {}',
    'export default async function Page() {}',
    "export default otherDoor('own', Page);",
    "export const metadata = { title: 'A' };",
  ),
  ...caught(silentDoors, 'app/a/page.tsx', 'export default doorPage(Page);', "export default doorPage('fly', Page);"),
  ...caught(
    silentDoors,
    'app/a/page.tsx',
    "export default doorPage('own', Page); export async function generateMetadata() {}",
    "export default doorPage('own', Page); export const generateMetadata = doorTitle('grow', a);",
    "export default doorPage('own', Page); export const generateMetadata = async () => a;",
  ),
  ...caught(
    silentDoors,
    'app/a/route.ts',
    'export const GET = doorRoute({ query: b }, c);',
    "export const GET = doorRoute({ may: 'fly', query: b }, c);",
    'export const GET = doorRoute({ may, query: b }, c);',
    'const x = { query: b }; export const GET = doorRoute(x, c);',
  ),
  ...caught(
    silentDoors,
    'app/a/actions.ts',
    "'use server'; const b = doorAction({ form: c }, d); export async function a(s, f) { return b(s, f); }",
    "'use server'; const b = doorAction({ may: 'fly', form: c }, d); export async function a(s, f) { return b(s, f); }",
  ),
  ...caught(besideTheDoor, 'lib/commands/draw-stock.ts', "'use server'; export const a = doorAction(b, c);"),
  ...caught(tooLong, 'lib/engine/ahead/plan.ts', `${manyLines(301)}\n`, `function a() {\n${manyLines(40)}\n}\n`),
  ...caught(tooLong, 'app/page.tsx', `const a = () => {\n${manyLines(40)}\n};\n`),
  ...caught(tooLong, 'app/page.tsx', `export function Page() {\n${manyLines(70)}\n}\n`),
];

test.each(PLANTED)('a breach planted in $path is caught: $text', ({ rule, path, text }) => {
  expect(rule({ path, text }).length).toBeGreaterThan(0);
});

test('what the rules allow is not taken for a breach', () => {
  const fine: Planted[] = [
    ...caught(wrongImports, 'lib/views/week.ts', "import { planAhead } from '../engine/ahead/plan-ahead';"),
    ...caught(wrongImports, 'app/week/page.tsx', "import { weekPlan } from '@/lib/views/week';"),
    ...caught(clockReads, 'lib/views/week.ts', 'const a = new Date(b); const c = { Date: 1 };'),
    ...caught(clockReads, 'lib/clock.ts', 'const a = new Date();'),
    ...caught(roundings, 'shared/quantity/rounding.ts', 'const a = Math.round(b);'),
    ...caught(roundings, 'lib/engine/ahead/plan.ts', 'const a = b || 0, c = Math.max(1, 2); type D = 1 | 2;'),
    ...caught(impurities, 'lib/engine/ahead/plan.ts', 'const a = { process: 1 }; const b = a.process;'),
    ...caught(besideTheDoor, 'app/a/route.ts', "export const dynamic = 'x'; export const GET = doorRoute({}, b);"),
    ...caught(besideTheDoor, 'app/a/actions.ts', "'use server'; export const a = doorAction(b, c);"),
    ...caught(besideTheDoor, 'app/a/page.tsx', "export default doorPage('own', Page);"),
    ...caught(
      silentDoors,
      'app/a/page.tsx',
      "export default doorPage('own', Page); export const generateMetadata = doorTitle('own', a);",
    ),
    ...caught(silentDoors, 'app/a/route.ts', "export const GET = doorRoute({ may: 'own' }, b);"),
    ...caught(silentDoors, 'app/a/route.ts', "const x = { may: 'own' } as const; export const GET = doorRoute(x, b);"),
    ...caught(
      besideTheDoor,
      'app/a/actions.ts',
      "'use server'; const b = doorAction(c, d); export async function a(s, f) { return b(s, f); }",
    ),
    ...caught(wrongImports, 'app/week/page.tsx', "import type { Shop } from '@/lib/engine/shop';"),
  ];
  for (const { rule, path, text } of fine) expect({ text, found: rule({ path, text }) }).toEqual({ text, found: [] });
});

test('vague and crooked names are caught, and so is what does not belong at the top', () => {
  for (const path of [
    'lib/utils/a.ts',
    'lib/helpers.ts',
    'shared/types.ts',
    'app/_parts/index.ts',
    'lib/data/constants.ts',
    'lib/services/a.ts',
    'lib/data/saveShop.ts',
    'lib/data/save_shop.ts',
  ]) {
    expect({ path, caught: vagueNames(path).length }).toEqual({ path, caught: 1 });
  }
  expect(strangers(['app', 'notes.txt', '.next-test', 'src', 'middleware.ts'])).toEqual([
    'notes.txt',
    'src',
    'middleware.ts',
  ]);
});
