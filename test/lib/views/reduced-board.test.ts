import { rmSync, truncateSync, writeFileSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { beforeEach, expect, test, vi } from 'vitest';
import { makeSharedLink } from '@/lib/commands/make-shared-link';
import { revokeSharedLink } from '@/lib/commands/revoke-shared-link';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { workingLinks } from '@/lib/data/shared-links';
import { floorBoard } from '@/lib/views/keep-out-board';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

/* A shop that cannot be read as a whole: each of its benches is named all the same, and kept out of. */

beforeEach(() => {
  const silent = vi.spyOn(console, 'error').mockImplementation(() => {});
  return () => silent.mockRestore();
});

const BENCHES = ['b', 'c'].map((id, at) => ({ ...SMALL.benches[0], id, name: ['Bench', 'By the door'][at] ?? '' }));

async function shopWithLink() {
  const applications = SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' }));
  const shopId = await smallShop({ ...SMALL, programs: [], applications, benches: BENCHES as typeof SMALL.benches });
  await makeSharedLink({ commandId: newId(), shopId, kind: 'board' }, CLOCK);
  const [link] = await workingLinks(shopId);
  if (!link) throw new Error('there is no link');
  const { file, close } = await database();
  return { shopId, link, file, close, board: () => floorBoard(CLOCK, link.token) };
}

const KEPT_OUT = {
  doubt: 'unreadable',
  shop: 'A shop',
  benches: ['Bench', 'By the door'].map((name) => ({
    name,
    state: 'unknown',
    word: 'KEEP OUT (not known)',
    when: null,
  })),
};

test.each([
  ['its recipes are gone', 'DROP TABLE "Ingredient"'],
  ['its plants are gone', 'DROP TABLE "PlantGroup"'],
])('a shop of which %s names its benches as their rows do', async (_, sql) => {
  const { file, close, board } = await shopWithLink();
  await close();
  const raw = new Sqlite(file);
  raw.pragma('foreign_keys = OFF');
  raw.pragma('ignore_check_constraints = ON');
  raw.exec(sql);
  raw.close();
  expect(await board()).toMatchObject(KEPT_OUT);
});

test.each([
  ['taken away', (file: string) => rmSync(file)],
  ['cut to nothing', (file: string) => truncateSync(file)],
  ['overwritten', (file: string) => writeFileSync(file, 'x'.repeat(50_000))],
])('a shop whose database is %s names its benches as its last board did', async (_, damage) => {
  const { file, close, board } = await shopWithLink();
  expect(await board()).toMatchObject({ doubt: null, benches: [{ state: 'open' }, { state: 'open' }] });
  damage(file);
  expect(await board()).toMatchObject(KEPT_OUT);
  await close();
  expect(await board()).toMatchObject(KEPT_OUT);
});

test('a link that was revoked names nothing', async () => {
  const { shopId, link, file, board } = await shopWithLink();
  await board();
  await revokeSharedLink({ commandId: newId(), shopId, link: link.id }, CLOCK);
  expect(await board()).toBeNull();
  rmSync(file);
  expect(await board()).toMatchObject({ doubt: 'unreadable', shop: null, benches: [] });
});
