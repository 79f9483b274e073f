import { readClockTime, readClosingTime } from '../time/clock-time';
import { readDay, WEEKDAYS } from '../time/day';
import { readInstant } from '../time/instant';
import { occurrences, readRepeat } from '../time/recurrence';
import type { ShopFile } from './contract';
import { type Path, shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

/** Whatever ends before it starts, overlaps itself, or is named twice. */
export function checkTimes({ part }: ReadablePart<ShopFile>, complain: Complain): void {
  for (const weekday of WEEKDAYS) {
    checkOpenings(['shop', 'openingHours', weekday], part?.shop?.openingHours?.[weekday], complain);
  }
  checkTwice(
    ['shop', 'specialDays'],
    part?.shop?.specialDays?.map((day) => day?.on),
    complain,
  );
  for (const [index, { hours }] of eachOf(part?.shop?.specialDays)) {
    checkOpenings(['shop', 'specialDays', index, 'hours'], hours, complain);
  }
  for (const [index, supplier] of eachOf(part?.suppliers)) {
    checkTwice(['suppliers', index, 'workingDays'], supplier.workingDays, complain);
    checkTwice(['suppliers', index, 'closedOn'], supplier.closedOn, complain);
  }
  for (const [index, program] of eachOf(part?.programs)) checkProgram(['programs', index], program, complain);
  for (const [index, application] of eachOf(part?.applications)) {
    checkTwice(['applications', index, 'benches'], application.benches, complain);
    checkEnd(['applications', index, 'endedAt'], application.startedAt, application.endedAt, complain);
  }
}

type Openings = Loose<[string, string][]>;

function checkOpenings(path: Path, openings: Openings, complain: Complain): void {
  const intervals: { index: number; from: number; until: number }[] = [];
  for (const [index, opening] of eachOf(openings)) {
    const from = readClockTime(opening[0] ?? '');
    const until = readClosingTime(opening[1] ?? '');
    if (!from.ok || !until.ok) continue;
    if (until.value > from.value) intervals.push({ index, from: from.value, until: until.value });
    else
      complain(
        [...path, index],
        `It closes at ${opening[1]}, not after it opens at ${opening[0]}. Write the later time second.`,
      );
  }
  intervals.sort((a, b) => a.from - b.from);
  for (const [place, interval] of intervals.entries()) {
    const before = intervals[place - 1];
    if (!before || before.until <= interval.from) continue;
    const [first, second] = before.index < interval.index ? [before, interval] : [interval, before];
    complain(
      [...path, second.index],
      `This overlaps the opening before it, number ${first.index + 1} of the day. Write one for both.`,
    );
  }
}

function checkTwice(path: Path, named: Loose<string[]>, complain: Complain): void {
  const seen = new Set<string>();
  for (const [index, each] of eachOf(named)) {
    if (seen.has(each)) complain([...path, index], `${shown(each)} is already in this list. Name it once.`);
    seen.add(each);
  }
}

function checkProgram(path: Path, program: NonNullable<Loose<ShopFile['programs'][number]>>, complain: Complain): void {
  const { startsOn, endsOn } = program;
  checkTwice([...path, 'benches'], program.benches, complain);
  checkChanges(path, program, complain);
  if (startsOn == null || endsOn == null || endsOn >= startsOn) return;
  complain(
    [...path, 'endsOn'],
    `It ends on ${endsOn}, before it starts on ${startsOn}. Put one of the two days right.`,
  );
}

type Program = NonNullable<Loose<ShopFile['programs'][number]>>;

/** What became of a spraying is told once, of a day on which the program has one; what was moved needs a day of its own. */
function checkChanges(path: Path, { changes, startsOn, endsOn, repeat }: Program, complain: Complain): void {
  const days = new Set<string>();
  const read = repeat == null ? null : readRepeat(repeat);
  // Where a rule ends at an instant, which day that is depends on the zone; here it need not be known to the day.
  const rule = read?.ok ? { ...read.value, untilAt: null } : null;
  const from = startsOn == null ? null : readDay(startsOn);
  for (const [index, { on, kind, movedTo }] of eachOf(changes)) {
    const at = [...path, 'changes', index];
    if (kind === 'moved' && movedTo == null) complain([...at, 'movedTo'], 'It was moved: write the day it is on now.');
    const day = on == null ? null : readDay(on);
    if (!day?.ok || on == null) continue;
    if (days.has(on)) complain([...at, 'on'], `What became of the spraying of ${on} is already told. Tell it once.`);
    days.add(on);
    if (!from?.ok || read?.ok === false) continue;
    const isAfter = endsOn != null && endsOn >= from.value && on > endsOn;
    if (isAfter || occurrences(rule, from.value, day.value, day.value).length === 0) {
      complain([...at, 'on'], `The program has no spraying on ${on}. Write a day on which it has one.`, [
        [...path, 'repeat'],
        [...path, 'startsOn'],
      ]);
    }
  }
}

function checkEnd(
  path: Path,
  started: string | null | undefined,
  ended: string | null | undefined,
  complain: Complain,
): void {
  if (started == null || ended == null) return;
  const [start, end] = [readInstant(started), readInstant(ended)];
  if (!start.ok || !end.ok || end.value >= start.value) return;
  complain(path, `It ended at ${ended}, before it started at ${started}. Put one of the two times right.`);
}
