import 'server-only';
import { longestRei } from '@/lib/engine/keepout/reopening';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { shopFromRows } from './shop-rows';
import { tellUnderWay } from './under-way';
import { write } from './writer';

/** What is told of a spraying while it goes on, or when its last plant is sprayed. */
export type Telling = {
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

/** Takes in what is told of a spraying, as a command of its own. Refuses 'not-found' when there is no such shop. */
export function takeTelling(sent: Telling, now: Instant): Promise<Outcome<{ spraying: string }>> {
  const { commandId, shopId, actor, ...body } = sent;
  const command = { id: commandId, name: 'tellSpraying', shopId, body, spokenAt: sent.startedAt, actor };
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
