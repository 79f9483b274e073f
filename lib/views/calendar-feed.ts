import 'server-only';
import { calendarFile } from '@/shared/ical/calendar-file';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Clock } from '../clock';
import { shopOfLink } from '../data/shared-links';
import { shopMarks } from '../data/shop-marks';
import { shopHere } from '../data/shops';
import { shopOf } from '../data/snapshot';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import { shopCalendar } from '../engine/calendar/shop-calendar';
import { heldBack } from '../engine/keepout/held-back';
import { certaintyNow } from './bench-states';

/**
 * The calendar of a shop as a file that calendar programs subscribe to.
 *
 * Takes    the token of its secret link
 * Refuses  'no-such-route', the answer of every address that never was, when no link has that token or it was revoked
 */
export async function calendarFeed(token: string, clock: Clock): Promise<Outcome<string>> {
  const shopId = await shopOfLink(token, 'calendar');
  const listed = shopId && (await shopHere(shopId));
  if (!listed) return refuse({ code: 'no-such-route' });
  const marks = await shopMarks(listed.id);
  const { doubt, lag } = await certaintyNow(clock, listed.id);
  const shop = heldBack(await shopOf(listed.id), lag);
  const facts = {
    ...{ shopId: listed.id, createdOn: listed.createdOn, ...marks },
    ...{ now: clock.now(), today: clock.today(shop.zone), inDoubt: doubt !== null },
  };
  return accept(calendarFile(`${shop.name}: sprayings`, shopCalendar(shop, facts, WEEKS_AHEAD)));
}
