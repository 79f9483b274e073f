import 'server-only';
import type { LogQuery } from '@/shared/forms/log-query';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { IN_ANY_YEAR, showDayUntil } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import { type OpeningConfirmed, openingsConfirmed } from '../data/openings-confirmed';
import { nameIn } from '../engine/name-in';
import type { Shop } from '../engine/shop';
import { openingsFound } from './openings-found';
import { inAnyYear } from './record-facts';

/** A bench that somebody let open earlier, in words. */
export type OpeningSeen = {
  key: string;
  bench: string;
  was: string;
  is: string;
  who: string;
  when: string;
  why: string;
};

/** The earlier openings of a shop that are looked for, in words. */
export const openingsSeen = async (shopId: string, shop: Shop, query: LogQuery): Promise<OpeningSeen[]> =>
  (await openingsFound(shopId, shop, query)).map((one) => openingSeen(one, shop));

function openingSeen(one: OpeningConfirmed, { benches, zone }: Shop): OpeningSeen {
  const { bench, wasUntil, opensAt, recordedAt, actor, reason, command } = one;
  return {
    key: `${command} ${bench}`,
    bench: nameIn(benches, bench),
    was:
      wasUntil === null
        ? 'KEEP OUT, not known until when'
        : `KEEP OUT until ${showDayUntil(wasUntil, zone, IN_ANY_YEAR)}`,
    is: opensAt <= recordedAt ? 'open at once' : `KEEP OUT until ${showDayUntil(opensAt, zone, IN_ANY_YEAR)}`,
    ...{ who: actor, when: inAnyYear(recordedAt, zone), why: reason },
  };
}

const A_DAY = 24 * 60;

/** Of each bench what the board says of its openings of the last day, by the id of the bench. */
export async function openingsOfToday(
  shopId: string,
  { zone }: Shop,
  now: Instant,
): Promise<ReadonlyMap<string, string[]>> {
  const recent = await openingsConfirmed(shopId, addMinutes(now, -A_DAY));
  const said = new Map<string, string[]>();
  for (const { bench, actor, recordedAt, reason } of recent) {
    const line = `Opened earlier by ${actor}, ${showDayUntil(recordedAt, zone, dayOf(zone, now))}: ${reason}`;
    said.set(bench, [...(said.get(bench) ?? []), line]);
  }
  return said;
}
