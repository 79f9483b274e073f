import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { isLong } from '../runs';
import { figure } from './figure';

const root = join(import.meta.dirname, '../..');

const versionOf = (name: string): string =>
  JSON.parse(readFileSync(join(root, 'node_modules', name, 'package.json'), 'utf8')).version;

const parts = (version: string): number[] => version.split('.').map(Number);

function isAtLeast(version: string, least: string): boolean {
  const [is, wanted] = [parts(version), parts(least)];
  const place = wanted.findIndex((part, index) => part !== is[index]);
  return place === -1 || (is[place] ?? 0) > (wanted[place] ?? 0);
}

/**
 * The versions in which known faults are mended: pages of Next and React that ran a stranger's code, and a write-ahead log
 * of SQLite that two connections could damage.
 * Source  next.js advisories of 2025-12 and 2026-05 and sqlite.org/wal.html, as read on 2026-11-25
 */
const LEAST = { next: '16.4.6', react: '19.3.1', 'react-dom': '19.3.1' };

test('what the program is made of is new enough to have no fault known for long', () => {
  const old = Object.entries(LEAST).filter(([name, least]) => !isAtLeast(versionOf(name), least));
  expect(old).toEqual([]);
  const sqlite = String(new Database(':memory:').prepare('SELECT sqlite_version()').pluck().get());
  expect(isAtLeast(sqlite, '3.51.3')).toBe(true);
  figure(39, `next ${versionOf('next')}, react ${versionOf('react')}, SQLite ${sqlite}`);
});

test('every package that runs with the shop is named with its licence in a bill of materials', () => {
  const text = execFileSync('npm', ['sbom', '--sbom-format=cyclonedx', '--omit=dev', '--package-lock-only'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  const { components } = JSON.parse(text) as { components: { name: string; version: string }[] };
  expect(components.length).toBeGreaterThan(50);
  expect(components.every(({ name, version }) => name !== '' && version !== '')).toBe(true);
  figure(39, `${components.length} packages in the bill of materials`);
});

test.runIf(isLong)('the registry knows of no high or critical fault in it', () => {
  const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], { cwd: root, encoding: 'utf8' });
  const said: { metadata?: { vulnerabilities: { high: number; critical: number } } } = JSON.parse(stdout || '{}');
  if (!said.metadata) return figure(39, 'the registry did not answer about known faults');
  expect(said.metadata.vulnerabilities).toMatchObject({ high: 0, critical: 0 });
  figure(39, 'no high or critical fault known to the registry');
});
