import { join } from 'node:path';
import Database from 'better-sqlite3';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { SMALL } from '../commands/small-shop';
import { parsedOrThrow } from './any-shop-file';
import { CLOCK, freshDatabase } from './fresh-database';

/** Two benches, each with a record long ago of a recipe of its own; both are open. */
export const TWO = parsedOrThrow({
  ...SMALL,
  benches: [...SMALL.benches, { id: 'b2', name: 'Second' }],
  products: SMALL.products.map((one) => ({ ...one, label: { ...one.label, reiHours: 4 } })),
  recipes: [...SMALL.recipes, { id: 'r2', name: 'Sulfur', ingredients: [{ product: 'q', dose: '1 g/L' }] }],
  programs: SMALL.programs.map((one) => ({ ...one, startsOn: '2027-03-03' })),
  applications: [
    { id: 'a', recipe: 'r', benches: ['b'], startedAt: '2026-02-24T22:30:00Z', endedAt: '2026-02-24T23:00:00Z' },
    { id: 'a2', recipe: 'r2', benches: ['b2'], startedAt: '2026-02-24T22:30:00Z', endedAt: '2026-02-24T23:00:00Z' },
  ],
});

/** That shop with rows changed past every guard. Gives its id. */
export async function shopWith(sql: string): Promise<string> {
  const folder = await freshDatabase();
  const outcome = await importShopFile({ commandId: newId(), file: TWO, into: { isDemo: false } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  await database();
  const file = new Database(join(folder, 'shop.db'));
  // A row as an older version, or somebody with a tool for databases, may have written it: past every guard.
  for (const { name } of file
    .prepare<[], { name: string }>("SELECT name FROM sqlite_master WHERE type = 'trigger'")
    .all()) {
    file.exec(`DROP TRIGGER "${name}"`);
  }
  file.pragma('ignore_check_constraints = ON');
  file.pragma('foreign_keys = OFF');
  file.exec(sql);
  file.close();
  return outcome.value.shopId;
}
