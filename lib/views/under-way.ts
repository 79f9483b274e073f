import 'server-only';
import { instantOf } from '@/shared/time/instant';
import { localTimeText, nextMinute } from '@/shared/time/local-time';
import { showDayUntil, showInstant } from '@/shared/time/show-day';
import { newCommandId } from '../data/new-id';
import { shopOf } from '../data/snapshot';
import { reopensAfter } from '../engine/keepout/reopening';
import type { HereNow } from './house';

/** A spraying that was begun and is not on record, with what it takes to say what became of it. */
export type UnderWaySeen = {
  id: string;
  shop: string;
  commandId: string;
  recipe: string;
  benches: string;
  by: string | null;
  /** "being sprayed since 13:26", or until when its benches are closed. */
  standing: string;
  isEnded: boolean;
  /** For a field of a day and a time: when it ended, or now. */
  endedAt: string;
};

/** The sprayings that were begun and are not on record, the latest begun first. */
export function underWaySeen({
  id: shop,
  shop: its,
  now,
  today,
}: Pick<HereNow, 'id' | 'shop' | 'now' | 'today'>): UnderWaySeen[] {
  const { zone } = its;
  return [...(its.underWay ?? [])]
    .sort((one, other) => other.startedAt - one.startedAt)
    .map((spraying) => {
      const { id, recipe, benches, by, startedAt, endedAt } = spraying;
      const begun = `begun ${showInstant(startedAt, zone, today)}`;
      const until = reopensAfter(spraying);
      const closed =
        until === null ? 'closed, not known until when' : `closed until ${showDayUntil(until, zone, today)}`;
      const over = until !== null && until <= now ? 'its interval has elapsed' : closed;
      return {
        ...{ id, shop, commandId: newCommandId(), recipe: recipe.name, by, isEnded: endedAt !== null },
        benches: benches.map(({ name }) => name).join(', ') || 'any bench',
        standing:
          endedAt === null ? `${begun}, no end told` : `${begun}, ended ${showDayUntil(endedAt, zone, today)}; ${over}`,
        endedAt: localTimeText(nextMinute(instantOf(endedAt ?? now)), zone),
      };
    });
}

/** What a spraying that was begun is told of with, again; null when nothing is under way by that id. */
export async function underWayHere(shopId: string, spraying: string) {
  const shop = await shopOf(shopId);
  const its = shop.underWay?.find(({ id }) => id === spraying);
  if (!its) return null;
  const { id, recipe, benches, planned, startedAt, by } = its;
  return {
    zone: shop.zone,
    startedAt,
    planned,
    by,
    of: { spraying: id, recipe: recipe.id, benches: benches.map((one) => one.id) },
  };
}
