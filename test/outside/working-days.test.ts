import { expect, test } from 'vitest';
import { Day, WEEKDAYS, type Weekday } from '@/shared/time/day';
import { arrivalOf, latestOrderDay } from '@/shared/time/working-days';
import { planOf, productFigures, shopWith } from '../worked/plan-of';

/*
 * When to order, against published examples of business days and of reorder points. `seen` was read in a copy of the
 * source; `memory` was recalled and not looked up again.
 */

const WEEKDAYS_WORKED: ReadonlySet<Weekday> = new Set(['mon', 'tue', 'wed', 'thu', 'fri']);
const WEEK = { weekdays: WEEKDAYS_WORKED, closed: new Set<Day>() };

const T3 = 'U.S. Securities and Exchange Commission, About Settling Trades in Three Days';
const T2 =
  'SEC Investor Bulletin: New "T+2" Settlement Cycle, sec.gov/oiea/investor-alerts-and-bulletins/ibsettlementcycle';

// 2 March 2026 is a Monday.
test.each([
  {
    what: 'bought on Friday, due on Wednesday',
    from: '2026-03-06',
    days: 3,
    to: '2026-03-11',
    source: T3,
    basis: 'seen',
  },
  {
    what: 'sold on Monday, settled on Thursday',
    from: '2026-03-02',
    days: 3,
    to: '2026-03-05',
    source: T2,
    basis: 'seen',
  },
  {
    what: 'sold on Monday, settled on Wednesday',
    from: '2026-03-02',
    days: 2,
    to: '2026-03-04',
    source: T2,
    basis: 'seen',
  },
  {
    what: 'sold on Tuesday, settled on Wednesday',
    from: '2026-03-03',
    days: 1,
    to: '2026-03-04',
    source: 'as T2, for T+1',
    basis: 'seen',
  },
  {
    what: 'sold on Friday, settled on Monday',
    from: '2026-03-06',
    days: 1,
    to: '2026-03-09',
    source: 'as T2, for T+1',
    basis: 'memory',
  },
  {
    what: '151 workdays from 1 October 2008',
    from: '2008-10-01',
    days: 151,
    to: '2009-04-30',
    source: 'Microsoft Support, WORKDAY',
    basis: 'memory',
  },
])('$days business days: $what ($basis)', ({ from, days, to }) => {
  expect(arrivalOf(Day.parse(from), days, WEEK)).toBe(to);
  expect(latestOrderDay(Day.parse(to), days, WEEK)).toBe(from);
});

// With holidays: 26 November and 4 December 2008 and 21 January 2009, Microsoft Support, WORKDAY (memory); Memorial Day of
// 2007, quantunet.com/excel2003, The Workday Function, which begins on the Sunday after (seen).
test.each([
  { from: '2008-10-01', days: 151, closed: ['2008-11-26', '2008-12-04', '2009-01-21'], to: '2009-05-05' },
  { from: '2007-05-04', days: 30, closed: ['2007-05-28'], to: '2007-06-18' },
])('$days business days from $from, closed on $closed, are $to', ({ from, days, closed, to }) => {
  const working = { weekdays: WEEKDAYS_WORKED, closed: new Set(closed.map((day) => Day.parse(day))) };
  expect(arrivalOf(Day.parse(from), days, working)).toBe(to);
  expect(latestOrderDay(Day.parse(to), days, working)).toBe(from);
});

test('what would be due on a weekend must be ordered so that it is there on the Friday before (as above, and the calendar)', () => {
  expect(latestOrderDay(Day.parse('2026-03-08'), 2, WEEK)).toBe('2026-03-04');
});

type Stock = { onHand: number; each: number; repeat: string; leadDays: number; safetyDays?: number; weeks: number };

/** What a plan says of one product that is used up steadily, from a supplier who works on every day. */
function reorderOf({ onHand, each, repeat, leadDays, safetyDays = 0, weeks }: Stock) {
  const plan = planOf(
    shopWith({
      shop: { safetyDays },
      suppliers: [{ id: 's', name: 'S', workingDays: [...WEEKDAYS] }],
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
      offers: [{ id: 'o', supplier: 's', product: 'p1', pack: '1 L', price: '10.00', leadDays }],
      lots: [
        { id: 'l', product: 'p1', pack: '5 L', remaining: `${onHand} mL`, paid: '9.00', receivedOn: '2026-01-01' },
      ],
      benches: [{ id: 'b', name: 'B', plants: [{ name: 'plant', count: 1, mlPerPlant: 1000 }] }],
      recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p1', dose: `${each} mL/L` }] }],
      programs: [
        { id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-02', repeat, startTime: '10:00', minutes: 1 },
      ],
    }),
    '2026-03-02',
    weeks,
  );
  return productFigures(plan, 'p1');
}

const daysFromStart = (day: string | null): number =>
  (Date.parse(`${day}T00:00:00Z`) - Date.parse('2026-03-02T00:00:00Z')) / 86_400_000;
const DAILY = 'FREQ=DAILY';

// What is on hand on the morning of the last day to order is the reorder point: demand a day × lead time (+ safety stock).
test.each([
  {
    id: 'I17',
    what: '8,000 a year of 250 days, three days of lead',
    each: 32,
    leadDays: 3,
    safety: 0,
    point: 96,
    source: 'Heizer & Render, Operations Management, ch. 12',
    basis: 'memory',
  },
  {
    id: 'I20',
    what: '5 a day, three days of lead, without safety stock',
    each: 5,
    leadDays: 3,
    safety: 0,
    point: 15,
    source: 'mycoursehelp.com/QA/the-hardware-warehouse-is-evaluating-saf/36573',
    basis: 'seen',
  },
  {
    id: 'I22',
    what: '29 a day, three days of lead, without safety stock',
    each: 29,
    leadDays: 3,
    safety: 0,
    point: 87,
    source: 'brainmass.com, order point and safety stock, 491166',
    basis: 'seen',
  },
  {
    id: 'I26',
    what: '15 a day, two days of lead and one of safety',
    each: 15,
    leadDays: 2,
    safety: 1,
    point: 45,
    source: 'Heizer & Render, ch. 12, with a day of demand for safety stock',
    basis: 'memory',
  },
])('$id ($basis): $what are reordered at $point', ({ each, leadDays, safety, point }) => {
  const days = 10;
  const { orderBy, runsOutOn } = reorderOf({
    onHand: each * days,
    each,
    repeat: DAILY,
    leadDays,
    safetyDays: safety,
    weeks: 3,
  });
  expect(daysFromStart(runsOutOn)).toBe(days);
  expect(each * (days - daysFromStart(orderBy))).toBe(point);
});

// I34 (derived from the definition): 900 on hand, 60 a week and a reorder point of 240 are 11 weeks until then.
test('I34 (derived): 900 at 60 a week, reordered at 240, four weeks ahead: 11 weeks', () => {
  const found = reorderOf({ onHand: 900, each: 60, repeat: 'FREQ=WEEKLY', leadDays: 28, weeks: 20 });
  expect([daysFromStart(found.runsOutOn), daysFromStart(found.orderBy), found.weeksUntilReorder]).toEqual([
    105, 77, 11,
  ]);
  // A day less of lead is still the eleventh week; a day more is the tenth.
  expect(
    [27, 29].map(
      (leadDays) => reorderOf({ onHand: 900, each: 60, repeat: 'FREQ=WEEKLY', leadDays, weeks: 20 }).weeksUntilReorder,
    ),
  ).toEqual([11, 10]);
});

test.each([
  {
    what: '151 workdays from 1 October 2008 with three holidays',
    ...{ from: '2008-10-01', days: 151, to: '2009-05-05', closed: ['2008-11-26', '2008-12-04', '2009-01-21'] },
    source: 'Microsoft Support, WORKDAY, second example',
    basis: 'memory',
  },
  {
    what: 'sold on Wednesday before Independence Day, settled on Friday',
    ...{ from: '2024-07-03', days: 1, to: '2024-07-05', closed: ['2024-07-04'] },
    source: 'T+1 with the holidays of the New York Stock Exchange',
    basis: 'memory',
  },
])('$what ($basis)', ({ from, days, to, closed }) => {
  const working = { ...WEEK, closed: new Set(closed.map((day) => Day.parse(day))) };
  expect(arrivalOf(Day.parse(from), days, working)).toBe(to);
  expect(latestOrderDay(Day.parse(to), days, working)).toBe(from);
});
