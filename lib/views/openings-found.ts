import 'server-only';
import { isLookedFor, type LogQuery } from '@/shared/forms/log-query';
import { dayOf, type Zone } from '@/shared/time/zone';
import { type OpeningConfirmed, openingsConfirmed } from '../data/openings-confirmed';
import type { Shop } from '../engine/shop';

/** The earlier openings of a shop that are looked for, the newest first. One is of no product, so asking for one finds none. */
export async function openingsFound(shopId: string, { zone }: Shop, query: LogQuery): Promise<OpeningConfirmed[]> {
  const all = await openingsConfirmed(shopId);
  return all.filter((one) => isLookedFor(query, loggedAs(one, zone)));
}

const loggedAs = ({ bench, actor, recordedAt }: OpeningConfirmed, zone: Zone) => ({
  ...{ benches: [bench], products: [], on: dayOf(zone, recordedAt), people: [actor] },
});
