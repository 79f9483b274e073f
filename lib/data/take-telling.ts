import 'server-only';
import type { ZodType } from 'zod';
import { longestRei } from '@/lib/engine/keepout/reopening';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { PIECES } from '@/shared/shop-file/held-to';
import { type Day, readDay } from '@/shared/time/day';
import { type Instant, instantOf, isAcceptedInstant } from '@/shared/time/instant';
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
    const { spraying, recipe: id, benches, planned, startedAt, endedAt, by, passed } = keepable(sent, now);
    const recipe = shop.recipes.find((one) => one.id === id);
    const rei = recipe ? longestRei(recipe) : null;
    await tellUnderWay(rows, stamp, {
      ...{ spraying, kind: 'going', recipe: id, benches, planned, endedAt, reiMinutes: rei, reason: null },
      ...{ startedAt, by: by ?? stamp.actor, passed },
      closedUntil: closedAfterLateEntry(shop, { benches, endedAt, rei }, now),
    });
    return accept({ spraying });
  });
}

/**
 * What a shop file can hold of it. What closes a bench is never refused, so the rest is left out: an end that cannot be
 * leaves the bench closed, and a start that cannot be is now.
 */
function keepable({ commandId, spraying, planned, startedAt, endedAt, by, passed, ...rest }: Telling, now: Instant) {
  const holds = (piece: ZodType, value: unknown): boolean => piece.safeParse(value).success;
  const isPlanned = planned !== null && holds(PIECES.id, planned.program) && readDay(planned.on).ok;
  return {
    ...rest,
    spraying: holds(PIECES.id, spraying) ? spraying : commandId,
    planned: isPlanned ? planned : null,
    startedAt: isAcceptedInstant(startedAt) ? instantOf(Math.min(startedAt, now)) : now,
    endedAt: endedAt !== null && isAcceptedInstant(endedAt) ? endedAt : null,
    by: by !== null && holds(PIECES.record.by, by) ? by : null,
    passed: passed.filter(({ rule, reason }) => holds(PIECES.passed.rule, rule) && holds(PIECES.passed.reason, reason)),
  };
}
