import type { Written } from '@/shared/shop-file/contract';
import { addDays, type Day } from '@/shared/time/day';
import { addMinutes, instantText } from '@/shared/time/instant';
import { atClock, readZone } from '@/shared/time/zone';
import { yardDaysBefore } from './programs';

type Application = Written<'applications'>;

/** One round of spraying: what, where, when it usually starts and ends, and the days on which it was done. */
type Round = {
  recipe: string;
  benches: string[];
  startMinute: number;
  minutes: number;
  days: Day[];
  /** What the product in it was to cost, in cents; null when nobody could tell. */
  cents: number | null;
};

/**
 * What was sprayed in the year before a day: the programs as they fell due, with a few minutes more or less as work
 * goes, and two turns of the mildew round moved because the label or a closed bench asked for it.
 *
 * Takes   the day; nothing in the records is on it or after it
 */
export function historyBefore(today: Day): Application[] {
  const done = roundsBefore(today).flatMap((round) => round.days.map((day) => ({ round, day })));
  done.sort((a, b) => (a.day === b.day ? a.round.startMinute - b.round.startMinute : a.day < b.day ? -1 : 1));
  return done.map(({ round, day }, index) => recordOf(round, day, index));
}

function roundsBefore(today: Day): Round[] {
  const days = (list: number[]): Day[] => list.map((before) => addDays(today, -before));
  const onCitrus = { recipe: 'oil-and-bicarbonate', benches: ['citrus-house', 'front-table'], startMinute: 1110 };
  const onHerbs = { benches: ['herb-trays', 'propagation-tent'], startMinute: 1140, minutes: 45 };
  const mildew = { recipe: 'oil-and-bicarbonate', benches: ['propagation-tent', 'succulent-shelf'], startMinute: 390 };
  return [
    {
      recipe: 'calcium-feed',
      benches: ['fern-wall', 'orchid-bench'],
      startMinute: 1215,
      minutes: 35,
      cents: 93,
      days: days(every(7, 364, 7)),
    },
    // Last year's citrus season, then this one.
    { ...onCitrus, minutes: 50, cents: 463, days: days([...every(12, 356, 296), ...every(10, 150, 10)]) },
    { ...onHerbs, recipe: 'thrips-turn', cents: 216, days: days(every(42, 351, 15)) },
    { ...onHerbs, recipe: 'neem-and-soap', cents: 303, days: days(every(42, 337, 1)) },
    { ...onHerbs, recipe: 'oil-and-bicarbonate', cents: 174, days: days(every(42, 323, 29)) },
    {
      recipe: 'thrips-turn',
      benches: ['orchid-bench'],
      startMinute: 1140,
      minutes: 20,
      cents: 301,
      days: days([24, 10]),
    },
    { ...mildew, minutes: 40, cents: 135, days: days([98, 63, 40, 14]) },
    { recipe: 'yard-wash', benches: ['yard'], startMinute: 420, minutes: 45, cents: null, days: yardDaysBefore(today) },
  ];
}

/** Days before today, from the furthest to the nearest: every(7, 21, 7) is 21, 14, 7. */
const every = (step: number, furthest: number, nearest: number): number[] =>
  Array.from({ length: (furthest - nearest) / step + 1 }, (_, turn) => furthest - step * turn);

/** Minutes by which a start, and a length, differ from the program; nobody sprays to the minute. */
const LATE = [3, 0, 12, 5, -4, 8, 1, 6, -2, 15, 4];
const LONGER = [0, 4, -3, 2, 7, -1, 5];

/** Hundredths by which what went in cost more or less than planned: a spoon is never quite level. */
const DEARER = [0, 3, -2, 0, 6, 1, -4, 2];

function recordOf(round: Round, day: Day, index: number): Application {
  const startMinute = round.startMinute + (LATE[index % LATE.length] ?? 0);
  const startedAt = atClock(ZONE, day, startMinute);
  const endedAt = addMinutes(startedAt, round.minutes + (LONGER[index % LONGER.length] ?? 0));
  return {
    id: `a${String(index + 1).padStart(3, '0')}`,
    recipe: round.recipe,
    benches: round.benches,
    startedAt: instantText(startedAt, ZONE),
    endedAt: instantText(endedAt, ZONE),
    ...costsOf(round, index),
  };
}

function costsOf({ cents }: Round, index: number): Pick<Application, 'plannedCost' | 'cost'> {
  if (cents === null) return {};
  const inHundredths = cents * (100 + (DEARER[index % DEARER.length] ?? 0));
  return { plannedCost: dollars(cents * 100), cost: dollars(inHundredths) };
}

/** Hundredths of a cent as the shop file writes money. */
const dollars = (hundredths: number): string => {
  const digits = String(hundredths).padStart(5, '0');
  return `${digits.slice(0, -4)}.${digits.slice(-4)}`;
};

const zone = readZone('America/New_York');
if (!zone.ok) throw new RangeError(zone.message);
const ZONE = zone.value;
