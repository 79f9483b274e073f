import { expect, test } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { newId } from '@/lib/data/new-id';
import { shopsHere } from '@/lib/data/shops';
import { SMALL } from '../commands/small-shop';
import { freshDatabase } from './fresh-database';

test('shops made on one day are listed in the order in which they were made', async () => {
  await freshDatabase();
  const made: string[] = [];
  for (const minute of ['01', '02', '03', '04', '05', '06']) {
    const clock = clockPinnedTo(`2026-03-31T09:${minute}:00Z`);
    const outcome = await importShopFile({ commandId: newId(), file: SMALL, into: { isDemo: false } }, clock);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
    made.push(outcome.value.shopId);
  }
  expect((await shopsHere()).map(({ id }) => id)).toEqual(made);
});
