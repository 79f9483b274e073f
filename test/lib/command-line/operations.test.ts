import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openApi } from '@/shared/api/open-api';

const root = join(import.meta.dirname, '../../..');
const read = (path: string) => readFileSync(join(root, path), 'utf8');
const PAGES = ['README.md', 'lib/command-line/OPERATIONS.md'];
const SERVICE = 'lib/command-line/unattended';
const scripts = Object.keys(JSON.parse(read('package.json')).scripts);

/** What npm understands by itself, beside the scripts of the project. */
const NPM_OWN = ['ci', 'install'];

test.each(PAGES)('%s names only commands that exist', (page) => {
  const named = [...read(page).matchAll(/\bnpm (?:run (?:-s )?)?([a-z][a-z:]*)/g)].map(([, name]) => name ?? '');
  expect(named.length).toBeGreaterThan(3);
  expect(named.filter((name) => !scripts.includes(name) && !NPM_OWN.includes(name))).toEqual([]);
});

test('Operations names only files, variables and addresses that exist', () => {
  const text = read('lib/command-line/OPERATIONS.md');
  const files = [...text.matchAll(/(?<![\w/])lib\/[\w./-]+\w/g)].map(([path]) => path);
  expect(files.filter((path) => !existsSync(join(root, path)))).toEqual([]);

  const sources = ['lib', 'prisma'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(ts|js)$/.test(name) && !name.startsWith('generated'))
      .map((name) => read(join(folder, name))),
  );
  const variables = [...text.matchAll(/`([A-Z]+(?:_[A-Z]+)*)`(?=[,| ])/g)].map(([, name]) => name ?? '');
  expect(variables).toContain('BACKUP_DIR');
  const isRead = (name: string) => sources.some((source) => new RegExp(`env\\.${name}\\b`).test(source));
  expect(variables.filter((name) => !isRead(name))).toEqual([]);

  const addresses = [...text.matchAll(/`\/api\/v1(\/[a-z]+)`/g)].map(([, path]) => path ?? '');
  expect(addresses).toHaveLength(3);
  expect(addresses.filter((path) => !(path in openApi().paths))).toEqual([]);
});

test('the service files name commands, files and variables that exist', () => {
  const [unit, container, compose] = ['bench-and-bottle.service', 'containerfile', 'compose.yaml'].map((name) =>
    read(join(SERVICE, name)),
  );
  expect(unit).toMatch(/^ExecStart=\/usr\/bin\/npm start$/m);
  const commands = [...(container ?? '').matchAll(/npm run (\w+)/g)].map(([, name]) => name);
  expect(commands.every((name) => scripts.includes(name ?? ''))).toBe(true);
  expect(container).toContain('lib/command-line/start.js');
  expect(container).toContain('/api/v1/ready');
  const [, dockerfile = ''] = /dockerfile: (\S+)/.exec(compose ?? '') ?? [];
  expect(existsSync(join(root, dockerfile))).toBe(true);
  const [, context = ''] = /context: (\S+)/.exec(compose ?? '') ?? [];
  expect(join(root, SERVICE, context)).toBe(root.endsWith('/') ? root : `${root}/`.slice(0, -1));
});
