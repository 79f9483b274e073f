import 'server-only';
import type { Clock } from '@/lib/clock';
import { seeClock } from '@/lib/data/see-clock';
import { shopFromRows } from '@/lib/data/shop-rows';
import { tellUnderWay } from '@/lib/data/under-way';
import { write } from '@/lib/data/writer';
import { longestRei } from '@/lib/engine/keepout/reopening';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';

export type TellSpraying = {
  commandId: string;
  shopId: string;
  actor?: string;
  /** Which spraying; its record will have this id. */
  spraying: string;
  recipe: string;
  benches: string[];
  /** The planned spraying that it is, by the day on which its program has it. */
  planned: { program: string; on: Day } | null;
  startedAt: Instant;
  /** Null while it is going on. Told again, the latest end counts. */
  endedAt: Instant | null;
  by: string | null;
  /** Rules that said stop, each with the reason for spraying all the same. */
  passed: { rule: string; reason: string }[];
};

/**
 * Tell the shop that a spraying was begun, or that its last plant is sprayed. Its benches are closed from then on: without
 * an end until there is one, and then by the longest interval of the recipe. Amounts and all else come with its record.
 * What closes a bench is never refused: a bench or a recipe that is gone is kept as it was sent, and a start that is still
 * to come, by a clock that is ahead, counts from now.
 *
 * Told of an end only after its interval is over, for a bench that is kept out of without a known end, it keeps that bench
 * closed for the interval from now on.
 *
 * Refuses  'not-found' when there is no such shop
 */
export async function tellSpraying(sent: TellSpraying, clock: Clock): Promise<Outcome<{ spraying: string }>> {
  const { commandId, shopId, actor, ...body } = sent;
  const command = { id: commandId, name: 'tellSpraying', shopId, body, spokenAt: sent.startedAt, actor };
  await seeClock(clock.reading());
  const now = clock.now();
  return write(command, now, async (rows, stamp) => {
    const file = await shopFromRows(rows, shopId);
    if (!file) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const shop = shopOfFile(file);
    const { spraying, recipe: id, benches, planned, endedAt } = sent;
    const recipe = shop.recipes.find((one) => one.id === id);
    const rei = recipe ? longestRei(recipe) : null;
    await tellUnderWay(rows, stamp, {
      ...{ spraying, kind: 'going', recipe: id, benches, planned, endedAt, reiMinutes: rei, reason: null },
      ...{ by: sent.by ?? stamp.actor, passed: sent.passed },
      startedAt: instantOf(Math.min(sent.startedAt, now)),
      closedUntil: closedAfterLateEntry(shop, { benches, endedAt, rei }, now),
    });
    return accept({ spraying });
  });
}
