import type { CalendarEvent } from '@/shared/ical/calendar-file';
import { type Day, dayNumber } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { atClock } from '@/shared/time/zone';
import type { Spraying } from '../ahead/plan';
import { ownDay } from '../ahead/program-turns';
import type { Shop } from '../shop';

/** What a calendar needs to know beside the shop: which one it is, how it stands, and the moment that is asked about. */
export type CalendarFacts = {
  shopId: string;
  createdOn: Day;
  /** How many commands the shop has had, and when the last of them came. */
  revision: number;
  changedAt: Instant;
  now: Instant;
  today: Day;
  /** Whether the clock or the records are in doubt, so that nobody knows of any bench. */
  inDoubt: boolean;
};

/** The marks by which a calendar program knows an event again, and knows that it is another one than it was. */
export type Marks = Pick<CalendarEvent, 'sequence' | 'changedAt'>;

/**
 * How often an event may have been changed, and when last. Both only grow.
 *
 *   sequence = 2 × (commands of the shop + days since it was made), and 1 more once a spraying is due and not recorded
 *
 * Whatever a person changes is a command, and what time alone changes is the day, and that a spraying is due. The exact
 * count of one event's changes is kept nowhere; a number that grows too often harms nothing, one that stays does.
 *
 * Takes   the spraying when it is due and not on record
 */
export function marksOf({ zone }: Shop, facts: CalendarFacts, due: Spraying | null): Marks {
  const days = Math.max(0, dayNumber(facts.today) - dayNumber(facts.createdOn));
  const began = due ? due.startsAt : atClock(zone, facts.today, 0);
  const changedAt = instantOf(Math.max(began, facts.changedAt));
  return { sequence: 2 * (facts.revision + days) + (due ? 1 : 0), changedAt };
}

/**
 * The name under which a calendar knows a turn of a program: by the day on which the program itself has it, so that it is
 * the same wherever it was moved to.
 */
export const turnName = (program: string, on: Day): string => `${encodeURIComponent(program)}/${on}`;

export const nameOfSpraying = ({ program, date, occurrence }: Spraying): string =>
  turnName(program.id, ownDay(program, date, occurrence));

/** True for a turn that has a record, even where it was done on some of its benches alone. */
export const isDone = ({ program, date, occurrence }: Spraying): boolean => {
  const own = ownDay(program, date, occurrence);
  return program.changes.some(({ kind, on }) => kind === 'done' && on === own);
};

/** A UID: the kind of the event, the name of what it is about, and the shop. */
export const uidOf = (kind: 'spraying' | 'keep-out', name: string, { shopId }: CalendarFacts): string =>
  `${kind}/${name}@${encodeURIComponent(shopId)}`;
