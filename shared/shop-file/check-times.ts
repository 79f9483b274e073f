import { readClockTime, readClosingTime } from '../time/clock-time';
import { WEEKDAYS } from '../time/day';
import { readInstant } from '../time/instant';
import type { ShopFile } from './contract';
import { type Path, shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

/** Whatever ends before it starts, overlaps itself, or is named twice. */
export function checkTimes({ part }: ReadablePart<ShopFile>, complain: Complain): void {
  for (const weekday of WEEKDAYS) {
    checkOpenings(['shop', 'openingHours', weekday], part?.shop?.openingHours?.[weekday], complain);
  }
  for (const [index, supplier] of eachOf(part?.suppliers)) {
    checkTwice(['suppliers', index, 'workingDays'], supplier.workingDays, complain);
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
  if (startsOn == null || endsOn == null || endsOn >= startsOn) return;
  complain(
    [...path, 'endsOn'],
    `It ends on ${endsOn}, before it starts on ${startsOn}. Put one of the two days right.`,
  );
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
