import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Zone } from '@/shared/time/zone';
import { planKept } from './plan-kept';
import { shopsHere } from './shops';
import { shopOf } from './snapshot';

/** So many shops are read as the program starts. */
const MOST = 4;

/**
 * Read and plan the oldest shops before anybody asks for them, one after another. What fails is told to whoever asks.
 *
 * Takes   which day it is in a zone
 */
export async function readAhead(today: (zone: Zone) => Day): Promise<void> {
  const shops = await shopsHere().catch(() => []);
  for (const { id } of shops.slice(0, MOST)) {
    await shopOf(id)
      .then((shop) => planKept(shop, today(shop.zone)))
      .catch(() => {});
  }
}
