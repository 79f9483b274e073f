import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { sprayingsBetween } from '@/lib/engine/ahead/sprayings';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { keepoutDocument } from '@/lib/engine/keepout/keepout-document';
import type { Shop } from '@/lib/engine/shop';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { showUntil } from '@/shared/time/show-day';
import { figure } from '@/test/promises/figure';
import { isLong } from '@/test/runs';
import { once, product, recipe, smallShop } from '../rules/small-shop';

/*
 * Every change of the clocks in six zones from 2024 to 2035, minute by minute, beside another calendar. The zones change
 * by an hour and by half an hour, by night and at midnight, forward in spring and back for a month of fasting.
 */

const ZONES = [
  'America/New_York',
  'America/Santiago',
  'Europe/London',
  'Africa/Casablanca',
  'Australia/Lord_Howe',
  'Pacific/Auckland',
];
const [FROM, TO] = [Date.UTC(2024, 0, 1), Date.UTC(2036, 0, 1)];
const [MINUTE, HOUR, DAY] = [60_000, 3_600_000, 86_400_000];
/** Planned starts of one year in three are swept in an ordinary run, of all years in a long one. */
const isSwept = (year: number): boolean => isLong || year % 3 === 0;

const offset = (zone: string, at: number): number => DateTime.fromMillis(at, { zone }).offset;

/** The moment before which a day's clock differs from the next one's, to the minute. */
function changesIn(zone: string): number[] {
  const changes: number[] = [];
  for (let day = FROM; day < TO; day += DAY) {
    if (offset(zone, day) === offset(zone, day + DAY)) continue;
    let at = day;
    while (offset(zone, at) === offset(zone, at + MINUTE)) at += MINUTE;
    changes.push(at + MINUTE);
  }
  return changes;
}

const changes = ZONES.flatMap((zone) => changesIn(zone).map((at) => ({ zone, at })));
const swept = changes.filter(({ at }) => isSwept(new Date(at).getUTCFullYear()));

test('the zones change their clocks twice a year, and where a month of fasting comes twice in one, four times', () => {
  const found = ZONES.map((zone) => changes.filter((one) => one.zone === zone).length);
  expect(found).toEqual([24, 24, 24, 26, 24, 24]);
});

const shops = new Map<string, Shop>();
/** A shop with a recipe of four hours, in a zone. */
function shopIn(zone: string): Shop {
  const known = shops.get(zone);
  if (known) return known;
  const shop = smallShop({
    settings: { timeZone: zone },
    products: [product('p1', { reiHours: 4 })],
    recipes: [recipe('r1', 'p1')],
    programs: [once('g1', '2024-01-01')],
  });
  shops.set(zone, shop);
  return shop;
}

function sprayedUntil(shop: Shop, startedAt: number, endedAt: number): Shop {
  const [mix] = shop.recipes;
  if (!mix) throw new Error('there is a recipe');
  const nothingMore = { recordedRei: null, amounts: [], by: null, sprayed: null, pH: null, acid: null };
  const record = {
    ...{ id: 'a1', recipe: mix, benches: shop.benches, startedAt: instantOf(startedAt), endedAt: instantOf(endedAt) },
    ...{ ...nothingMore, plannedCost: null, cost: null, mixedAt: null, temperatureC: null },
    ...{ closedUntil: null, withdrawn: false, isExtra: false },
  };
  return { ...shop, applications: [record] };
}

test('four hours are four hours as time passes: no minute too few, none too many, and told on the clock of the wall', () => {
  const wrong: string[] = [];
  for (const { zone, at } of changes) {
    const shop = shopIn(zone);
    // The interval begins before the change, spans it, and ends on it or after it.
    for (let end = at - 5 * HOUR; end <= at + HOUR; end += 30 * MINUTE + 1_000) {
      const sprayed = sprayedUntil(shop, end - 20 * MINUTE, end);
      const reopens = end + 4 * HOUR;
      for (let now = end - 21 * MINUTE; now <= reopens + 2 * MINUTE; now += MINUTE) {
        const [bench] = keepOut(sprayed, instantOf(now));
        const wanted = now < end - 20 * MINUTE || now >= reopens ? 'open' : 'closed';
        if (bench?.state !== wanted) wrong.push(`${zone} ${new Date(now).toISOString()} ${bench?.state}`);
      }
      const states = keepOut(sprayed, instantOf(reopens - 1));
      const told = keepoutDocument(instantOf(reopens - 1), states, shop.zone).benches[0]?.until ?? '';
      const theirs = DateTime.fromMillis(reopens, { zone });
      if (told !== theirs.toISO({ suppressMilliseconds: true })?.replace('Z', '+00:00'))
        wrong.push(`${zone} told ${told}`);
      const shown = showUntil(instantOf(reopens), shop.zone);
      const next = theirs.plus({ minutes: theirs.second + theirs.millisecond > 0 ? 1 : 0 });
      if (!shown.startsWith(next.toFormat('HH:mm'))) wrong.push(`${zone} shown ${shown} for ${theirs.toISO()}`);
    }
  }
  expect(wrong).toEqual([]);
  figure(33, `${changes.length} clock changes of ${ZONES.length} zones: 0 minutes wrong`);
});

/** Which moment a clock reads each minute of a day first, read off the wall minute by minute. */
function wallOf(zone: string, date: string): { first: Map<number, number>; jumps: { from: number; by: number }[] } {
  const start = DateTime.fromISO(date, { zone }).toMillis();
  const first = new Map<number, number>();
  const jumps: { from: number; by: number }[] = [];
  let before = { minute: -1, offset: offset(zone, start - MINUTE) };
  for (let at = start; ; at += MINUTE) {
    const wall = DateTime.fromMillis(at, { zone });
    if (wall.toISODate() !== date) return { first, jumps };
    const minute = wall.hour * 60 + wall.minute;
    if (!first.has(minute)) first.set(minute, at);
    if (wall.offset > before.offset) jumps.push({ from: before.minute + 1, by: wall.offset - before.offset });
    before = { minute, offset: wall.offset };
  }
}

test('a planned start that the clock skips moves on by what is skipped, one that comes twice is the first, and it reopens as time passes', () => {
  const wrong: string[] = [];
  for (const { zone, at } of swept) {
    const date = DateTime.fromMillis(at - MINUTE, { zone }).toISODate() ?? '';
    for (const on of [date, DateTime.fromISO(date, { zone }).plus({ days: 1 }).toISODate() ?? '']) {
      const { first, jumps } = wallOf(zone, on);
      const shop = shopIn(zone);
      for (let minute = 0; minute < 1_440; minute += 1) {
        const programs = shop.programs.map((one) => ({ ...one, startsOn: Day.parse(on), startMinute: minute }));
        const [spraying] = sprayingsBetween({ ...shop, programs }, Day.parse(on), Day.parse(on));
        const jump = jumps.find(({ from, by }) => minute >= from && minute < from + by);
        const wanted = first.get(jump ? minute + jump.by : minute);
        if (spraying?.startsAt !== wanted) wrong.push(`${zone} ${on} ${minute}: ${spraying?.startsAt} not ${wanted}`);
        if (spraying?.reopensAt !== (wanted ?? 0) + 30 * MINUTE + 4 * HOUR)
          wrong.push(`${zone} ${on} ${minute} reopens`);
      }
    }
  }
  expect(wrong).toEqual([]);
});
