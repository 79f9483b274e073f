import { dayNumber } from '@/shared/time/day';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { showDayUntil, showInstant } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import type { Plan } from '../ahead/plan';
import type { BenchState } from '../keepout/keep-out';
import { openingsOf, type Span } from '../keepout/opening-hours';
import { type Alert, keyOf } from './alert';

/** So many minutes before its interval ends, a bench is told of; and so many before an opening that it is closed at. */
const BEFORE_REOPENING = 60;
const BEFORE_OPENING = 24 * 60;

/**
 * Benches whose interval ends within the hour. It says KEEP OUT until then, and never that it is over: what is read late
 * must not open a bench.
 *
 * Once      for each end, so that one which is put off is told anew
 */
export function reopeningAlerts(plan: Plan, benches: readonly BenchState[], now: Instant): Alert[] {
  return benches.flatMap(({ bench, state, until }): Alert[] => {
    if (state !== 'closed' || until === null || until > addMinutes(now, BEFORE_REOPENING)) return [];
    const sentence = `KEEP OUT of ${bench.name} until ${moment(plan, until)}, as recorded. Look at the board before anybody goes in.`;
    return [{ key: keyOf('reopening', bench.id, until), kind: 'reopening', severity: 'note', sentence }];
  });
}

/**
 * Benches for customers that are kept out of when the shop opens: by what is on record, by what nobody knows, and by what
 * is planned before then.
 *
 * Looks at  the opening that is now, or else the next within 24 hours
 * Once      for each bench and opening
 */
export function closedAtOpeningAlerts(plan: Plan, benches: readonly BenchState[], now: Instant): Alert[] {
  const opening = nextOpening(plan, now);
  if (opening === null) return [];
  const at = opening.from > now ? opening.from : now;
  return benches.flatMap(({ bench, ...state }): Alert[] => {
    if (!bench.customers) return [];
    const until = closedAt(plan, { bench, ...state }, at);
    if (until === 'open') return [];
    const end = until === null ? 'until when is not known: keep out' : `KEEP OUT until ${moment(plan, until)}`;
    const sentence = `${bench.name} is closed to customers when the shop opens, ${showInstant(opening.from, plan.shop.zone, plan.today)}: ${end}.`;
    const key = keyOf('closed-at-opening', bench.id, opening.from);
    return [{ key, kind: 'closed-at-opening', severity: 'warn', sentence }];
  });
}

const moment = ({ shop, today }: Plan, until: Instant): string => showDayUntil(until, shop.zone, today);

function nextOpening({ shop }: Plan, now: Instant): Span | null {
  const openings = openingsOf(shop);
  const day = dayNumber(dayOf(shop.zone, now));
  const next = [day, day + 1, day + 2].flatMap((one) => openings.on(one)).find(({ to }) => to > now);
  return next && next.from <= addMinutes(now, BEFORE_OPENING) ? next : null;
}

/** Until when a bench is kept out of at a moment; null: nobody knows. */
function closedAt(plan: Plan, { bench, state, until }: BenchState, at: Instant): Instant | null | 'open' {
  if (state === 'unknown' || (state === 'closed' && until === null)) return null;
  let latest: Instant | 'open' = state === 'closed' && until !== null && until > at ? until : 'open';
  for (const { program, startsAt, reopensAt } of plan.sprayings) {
    if (startsAt > at || !program.benches.some(({ id }) => id === bench.id)) continue;
    if (reopensAt === null) return null;
    if (reopensAt > at && (latest === 'open' || reopensAt > latest)) latest = reopensAt;
  }
  return latest;
}
