import 'server-only';
import { type Reading, unreadable } from '@/shared/outcome';
import { addDays, Day, readDay } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { atClock } from '@/shared/time/zone';
import type { Clock } from '../clock';
import { ownDay } from '../engine/ahead/program-turns';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import { sprayedIn } from '../engine/keepout/counting';
import { type BenchStrip, type DayStrips, dayStrips } from '../engine/keepout/planned-closures';
import { recordsBegun } from '../engine/keepout/record-index';
import { reopensAfter } from '../engine/keepout/reopening';
import type { Application, Bench, Shop } from '../engine/shop';
import { type DayClock, dayClock } from './day-clock';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { type LeftOutSeen, leftOutSeen } from './left-out';
import { type JustMoved, justMoved, type MovedAsked, type SprayingMove, sprayingMove } from './spraying-move';
import { type SprayingTicket, sprayingTicket, ticketId } from './spraying-ticket';
import { type UnderWaySeen, underWaySeen } from './under-way';

export type WeekScreen = Pick<House, 'today' | 'ways'> & {
  days: WeekDay[];
  benches: WeekBench[];
  /** What was begun on any device and is not on record. */
  underWay: UnderWaySeen[];
  previous: Day;
  next: Day;
  /** The last day that the plan reaches. */
  reach: Day;
  /** What was wrong with the day that was asked for. */
  fault: string | null;
  /** What was moved by whoever comes here from there. */
  moved: JustMoved | null;
};

export type WeekDay = {
  day: Day;
  /** What is planned, from today on. */
  tickets: (SprayingTicket & { move: SprayingMove })[];
  /** What was really sprayed. */
  recorded: Recorded[];
  /** What was planned and left out, with its reason. */
  leftOut: LeftOutSeen[];
  materialCost: Fig | null;
  labourCost: Fig | null;
  /** How many of its sprayings have a cost that is not known, and so are not in the sum. */
  unknown: number;
  unknownLabour: number;
  clock: DayClock;
};

export type Recorded = {
  key: string;
  recipe: string;
  benches: string[];
  startsAt: Instant;
  endsAt: Instant | null;
  reopensAt: Instant | null;
};

export type WeekBench = { id: string; name: string; days: BenchDay[] };
export type BenchDay = {
  day: Day;
  strip: BenchStrip | null;
  sprayings: {
    id: string;
    recipe: string;
    startsAt: Instant;
    program: string /** Its program's own day. */;
    on: Day;
  }[];
};

/**
 * Seven days by benches.
 *
 * Takes   what stands in the address: the first day, without which it is today; and what was just moved
 */
export async function weekScreen(
  clock: Clock,
  { from: asked, ...moved }: MovedAsked & { from?: string | undefined },
): Promise<WeekScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { shop, toSpray, today, ways } = house;
  const reading = asked === undefined ? null : readFirstDay(asked);
  const from = reading?.ok ? reading.value : today;
  const days = [0, 1, 2, 3, 4, 5, 6].map((number) => addDays(from, number));
  const strips = days.map((day) => dayStrips(shop, toSpray, day));
  return {
    today,
    ways,
    underWay: underWaySeen(house),
    days: strips.map((strip) => weekDay(house, strip)),
    benches: shop.benches.map((bench) => ({
      id: bench.id,
      name: bench.name,
      days: strips.map((strip) => benchDay(house, strip, bench)),
    })),
    previous: addDays(from, -7),
    next: addDays(from, 7),
    reach: addDays(today, 7 * WEEKS_AHEAD - 1),
    fault: reading && !reading.ok ? reading.message : null,
    moved: justMoved(house, moved),
  };
}

const [EARLIEST, LATEST] = [Day.parse('1971-01-01'), Day.parse('2999-12-31')];

/** A first day that has a week before and after it. */
function readFirstDay(asked: string): Reading<Day> {
  const reading = readDay(asked);
  if (!reading.ok || (reading.value >= EARLIEST && reading.value <= LATEST)) return reading;
  return unreadable(`Give a day from ${EARLIEST} to ${LATEST}.`);
}

function weekDay(house: House, strips: DayStrips): WeekDay {
  const { shop, toSpray, figure } = house;
  const { day } = strips;
  const sprayings = toSpray.filter(({ date }) => date === day);
  const sum = (what: string) => (sprayings.length > 0 ? figure('day', day, what) : null);
  return {
    day,
    tickets: sprayings.map((spraying) => ({
      ...sprayingTicket(house, spraying),
      move: sprayingMove(house, spraying),
    })),
    recorded: recordsBegunOn(shop, day).map(recordedOf),
    leftOut: leftOutSeen(shop, day, day, house.today),
    materialCost: sum('materialCost'),
    labourCost: sum('labourCost'),
    unknown: sprayings.filter(({ materialCost }) => materialCost === null).length,
    unknownLabour: sprayings.filter(({ labourCost }) => labourCost === null).length,
    clock: dayClock(house, strips),
  };
}

const recordsBegunOn = (shop: Shop, day: Day): Application[] =>
  recordsBegun(sprayedIn(shop), atClock(shop.zone, day, 0), atClock(shop.zone, addDays(day, 1), 0));

const recordedOf = (record: Application, place: number): Recorded => ({
  key: `${record.recipe.id} ${record.startedAt} ${place}`,
  recipe: record.recipe.name,
  benches: record.benches.map(({ name }) => name),
  startsAt: record.startedAt,
  endsAt: record.endedAt,
  reopensAt: reopensAfter(record),
});

function benchDay({ toSpray }: House, { day, benches }: DayStrips, bench: Bench): BenchDay {
  return {
    day,
    strip: benches.find((strip) => strip.bench === bench) ?? null,
    sprayings: toSpray
      .filter(({ date, program }) => date === day && program.benches.includes(bench))
      .map((spraying) => ({
        ...{ id: ticketId(spraying), recipe: spraying.recipe.name, startsAt: spraying.startsAt },
        program: spraying.program.id,
        on: ownDay(spraying.program, spraying.date, spraying.occurrence),
      })),
  };
}
