import { showMinutes } from '@/shared/measure/show';
import { dayNumber } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { showClock } from '@/shared/time/show-day';
import { atClock, dayOf } from '@/shared/time/zone';
import type { Spraying } from '../ahead/plan';
import { type ClearStarts, clearStarts, SEARCH_DAYS } from '../keepout/clear-starts';
import { type Openings, openingDuring, openingsOf, type Span } from '../keepout/opening-hours';
import { withoutInterval } from '../keepout/reopening';
import type { Bench } from '../shop';
import type { Flag } from './flag';
import { benchNames, listed, momentNear } from './in-words';
import { flagSpraying } from './raise';
import type { Unflagged } from './unflagged';

/**
 * A bench that customers can reach would be closed while the shop is open.
 *
 * Looks at  the closed time of a planned spraying, from its start until it reopens, and the opening hours on the
 *           shop's clock, across midnight, several days and clock changes
 * Fires     when they share any time at all; a reopening that nobody knows always does. Once for a spraying, with its
 *           customers' benches
 * Severity  warn
 * Cleared   by another start: the message names the nearest before and after, and the latest that reopens in time for the
 *           next opening
 */
export function closedInOpeningHours(plan: Unflagged): Flag[] {
  const openings = openingsOf(plan.shop);
  const flags: Flag[] = [];
  for (const spraying of plan.sprayings) {
    const benches = spraying.program.benches.filter(({ customers }) => customers);
    if (benches.length === 0) continue;
    const about = { rule: 'closed-in-opening-hours', severity: 'warn', benches, product: null } as const;
    const { startsAt, reopensAt, date } = spraying;
    if (reopensAt === null) {
      flags.push(flagSpraying(spraying, about, () => neverReopens(spraying, benches)));
      continue;
    }
    const closed = { from: startsAt, to: reopensAt };
    const opening = openingDuring(openings, closed, dayNumber(date));
    if (opening) flags.push(flagSpraying(spraying, about, () => messageFor(plan, openings, benches, closed, opening)));
  }
  return flags;
}

function neverReopens({ recipe }: Spraying, benches: Bench[]): string {
  const names = listed(withoutInterval(recipe).map(({ name }) => name));
  return `Nobody can say when ${benchNames(benches)} would reopen after this, so it counts as closed to customers in opening hours. Enter the restricted-entry interval of ${names} from its label.`;
}

const MINUTE = 60_000;

function messageFor(plan: Unflagged, openings: Openings, benches: Bench[], closed: Span, opening: Span): string {
  const at: At = (instant) => momentNear(plan, instant);
  const { zone } = plan.shop;
  const clear = clearStarts(openings, zone, closed, atClock(zone, plan.today, 0));
  const length = showMinutes((closed.to - closed.from) / MINUTE);
  const facts = `Customers could not reach ${benchNames(benches)} from ${at(closed.from)} until ${at(closed.to)} (${length}), and the shop is open ${at(opening.from)} to ${showClock(opening.to, zone, dayOf(zone, opening.from))}.`;
  return [facts, clearInWords(clear, at), inTimeInWords(clear, at)].join(' ').trimEnd();
}

type At = (instant: Instant) => string;

function clearInWords({ before, after }: ClearStarts, at: At): string {
  if (before !== null && after !== null) return `The nearest clear starts are ${at(before)} and ${at(after)}.`;
  if (after !== null) return `The nearest clear start is ${at(after)}; there is none before it that is still to come.`;
  const within = `within ${SEARCH_DAYS} days`;
  if (before !== null) return `The nearest clear start is ${at(before)}; there is none after it ${within}.`;
  return `No start ${within} would clear it: use something with a shorter interval, or a bench that customers cannot reach.`;
}

function inTimeInWords({ inTime }: ClearStarts, at: At): string {
  if (inTime === null) return '';
  const next = `the next opening, ${at(inTime.opening)}`;
  return inTime.start === null
    ? `No clear start reopens in time for ${next}.`
    : `To reopen in time for ${next}, start by ${at(inTime.start)}.`;
}
