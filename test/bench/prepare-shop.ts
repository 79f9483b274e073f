import { clockPinnedTo } from '@/lib/clock';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { databaseFile } from '@/lib/data/database-file';
import { newId } from '@/lib/data/new-id';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { loadDemo } from '@/prisma/load-demo';
import { explain } from '@/shared/outcome';
import { parseShopFile } from '@/shared/shop-file/parse';
import { shopWithRecords, writeMovements } from './long-history';

const SIZE = { products: 200, programs: 60, benches: 40 };
const [RECORDS, MOVEMENTS] = [5_000, 50_000];

/* Makes a database in DATA_DIR with the shop that is asked for, and prints how long bringing it in took, in ms. */

const [kind = 'demo', moment = ''] = process.argv.slice(2);
const clock = clockPinnedTo(moment);
await migrate(databaseFile());
const started = performance.now();
if (kind === 'demo') await loadDemo(clock);
else await generated(kind === 'long' ? RECORDS : 0);
console.log((performance.now() - started).toFixed(0));
await (await database()).close();

async function generated(records: number): Promise<void> {
  const parsed = parseShopFile(JSON.stringify(shopWithRecords(SIZE, records)));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults.slice(0, 3)));
  const brought = await importShopFile({ commandId: newId(), file: parsed.file, into: { isDemo: false } }, clock);
  if (!brought.ok) throw new Error(explain(brought.refusal));
  if (records === 0) return;
  await (await database()).close();
  writeMovements(databaseFile(), brought.value.shopId, MOVEMENTS, records);
}
