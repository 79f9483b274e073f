import { parentPort } from 'node:worker_threads';
import { unrecordedSprayings } from '@/lib/engine/ahead/overdue';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { ShopFile } from '@/shared/shop-file/contract';
import { isTooMuchAhead } from '@/shared/shop-file/limits';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { dailyShop } from './daily-shop';

/* Runs on a thread with little memory: what the pages ask of a shop that was kept before there were limits. */

const parsed = parseShopFile(JSON.stringify(dailyShop({ programs: 1, plants: 10 })));
if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
const [program] = parsed.file.programs;
const programs = Array.from({ length: 2_000 }, (_, id) => ({ ...program, id: `g${id}` })) as ShopFile['programs'];
const shop = shopOfFile({ ...parsed.file, programs });
const now = instantOf(Date.parse('2026-03-04T15:00:00Z'));
const states = keepOut(shop, now, unrecordedSprayings(shop, now));
parentPort?.postMessage({ board: states.map(({ state }) => state), plan: planned() });

function planned(): string {
  try {
    planAhead(shop, Day.parse('2026-03-04'), 26);
    return 'planned';
  } catch (error) {
    return isTooMuchAhead(error) ? error.message : `thrown: ${error}`;
  }
}
