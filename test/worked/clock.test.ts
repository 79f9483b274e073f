import { expect, test } from 'vitest';
import { flagRows, planOf, shopWith, sprayingFigures } from './plan-of';

/*
 * Times across the changes of the clock, and intervals that nobody knows. Source of every figure here: worked by hand
 * from the definitions of the shop file, and the published changes of New York (8 March and 1 November 2026) and
 * Berlin (29 March and 25 October 2026).
 */

type Timed = {
  zone: string;
  startsOn: string;
  startTime: string;
  minutes: number;
  rei: (number | null)[];
  count?: number;
};

/** When the sprayings of one daily program start, end and reopen the bench. */
function timesOf({ zone, startsOn, startTime, minutes, rei, count = 1 }: Timed) {
  const products = rei.map((reiHours, index) => ({
    id: `p${index}`,
    name: `P${index}`,
    kind: 'nutrient' as const,
    form: 'liquid' as const,
    label: { reiHours },
  }));
  const plan = planOf(
    shopWith({
      shop: { timeZone: zone },
      products,
      benches: [{ id: 'b1', name: 'Bench', customers: false, plants: [{ name: 'plant', count: 10, mlPerPlant: 10 }] }],
      recipes: [{ id: 'r1', name: 'Recipe', ingredients: products.map(({ id }) => ({ product: id, dose: '1 mL/L' })) }],
      programs: [
        {
          id: 'g1',
          recipes: ['r1'],
          benches: ['b1'],
          startsOn,
          repeat: `FREQ=DAILY;COUNT=${count}`,
          startTime,
          minutes,
        },
      ],
    }),
    startsOn,
    1,
  );
  return { plan, times: sprayingFigures(plan).map(({ startsAt, endsAt, reopensAt }) => [startsAt, endsAt, reopensAt]) };
}

test('a start that the spring change skips moves forward by the skipped hour, and its neighbours stay', () => {
  /*
   * 7 March  02:30 −05:00; 45 minutes; 4 h more is 07:15 −05:00.
   * 8 March  02:30 does not exist (02:00 became 03:00), so 03:30 −04:00; ends 04:15; reopens 08:15.
   * 9 March  02:30 −04:00; ends 03:15; reopens 07:15.
   */
  const { times } = timesOf({
    zone: 'America/New_York',
    startsOn: '2026-03-07',
    startTime: '02:30',
    minutes: 45,
    rei: [4],
    count: 3,
  });
  expect(times).toEqual([
    ['2026-03-07T02:30:00-05:00', '2026-03-07T03:15:00-05:00', '2026-03-07T07:15:00-05:00'],
    ['2026-03-08T03:30:00-04:00', '2026-03-08T04:15:00-04:00', '2026-03-08T08:15:00-04:00'],
    ['2026-03-09T02:30:00-04:00', '2026-03-09T03:15:00-04:00', '2026-03-09T07:15:00-04:00'],
  ]);
});

test('an interval across the spring change is elapsed hours: the clock shows one more', () => {
  // 22:00 −05:00 and an hour is 23:00 −05:00 = 04:00 UTC; 12 h more is 16:00 UTC = 12:00 −04:00, not 11:00.
  const { times } = timesOf({
    zone: 'America/New_York',
    startsOn: '2026-03-07',
    startTime: '22:00',
    minutes: 60,
    rei: [4, 12],
  });
  expect(times).toEqual([['2026-03-07T22:00:00-05:00', '2026-03-07T23:00:00-05:00', '2026-03-08T12:00:00-04:00']]);
});

test('a start that the autumn change repeats means the first, and spraying may end earlier on the clock', () => {
  /*
   * 31 October  01:30 −04:00; 45 minutes; 4 h more is 06:15 −04:00.
   * 1 November  01:30 comes at −04:00 and again at −05:00; the first is 05:30 UTC. 45 minutes later it is 06:15 UTC,
   *             and the clock went back at 06:00 UTC, so 01:15 −05:00. 4 h more is 10:15 UTC = 05:15 −05:00.
   */
  const { times } = timesOf({
    zone: 'America/New_York',
    startsOn: '2026-10-31',
    startTime: '01:30',
    minutes: 45,
    rei: [4],
    count: 2,
  });
  expect(times).toEqual([
    ['2026-10-31T01:30:00-04:00', '2026-10-31T02:15:00-04:00', '2026-10-31T06:15:00-04:00'],
    ['2026-11-01T01:30:00-04:00', '2026-11-01T01:15:00-05:00', '2026-11-01T05:15:00-05:00'],
  ]);
});

test('an interval across the autumn change is elapsed hours: the clock shows one less', () => {
  // 22:00 −04:00 and an hour is 23:00 −04:00 = 03:00 UTC; 12 h more is 15:00 UTC = 10:00 −05:00, not 11:00.
  const { times } = timesOf({
    zone: 'America/New_York',
    startsOn: '2026-10-31',
    startTime: '22:00',
    minutes: 60,
    rei: [12],
  });
  expect(times).toEqual([['2026-10-31T22:00:00-04:00', '2026-10-31T23:00:00-04:00', '2026-11-01T10:00:00-05:00']]);
});

test('Berlin changes on other days and at other hours', () => {
  // 29 March: 02:00 became 03:00, so 02:10 is 03:10 +02:00. 25 October: 03:00 became 02:00, so the first 02:10 is
  // +02:00 and 70 minutes later it is 00:10 + 01:10 = 01:20 UTC = 02:20 +01:00; 1.5 h more is 03:50 +01:00.
  const berlin = { zone: 'Europe/Berlin', startTime: '02:10', minutes: 70, rei: [1.5] };
  expect(timesOf({ ...berlin, startsOn: '2026-03-29' }).times).toEqual([
    ['2026-03-29T03:10:00+02:00', '2026-03-29T04:20:00+02:00', '2026-03-29T05:50:00+02:00'],
  ]);
  expect(timesOf({ ...berlin, startsOn: '2026-10-25' }).times).toEqual([
    ['2026-10-25T02:10:00+02:00', '2026-10-25T02:20:00+01:00', '2026-10-25T03:50:00+01:00'],
  ]);
});

const SUMMER = { zone: 'America/New_York', startsOn: '2026-07-06', startTime: '18:00', minutes: 30 };

test('the longest interval in the mix counts, in whole minutes rounded up', () => {
  // 12.51 h is 750.6 minutes, kept as 751 = 12 h 31 min. 18:30 and 12 h 31 min is 07:01.
  expect(timesOf({ ...SUMMER, rei: [0, 12.51, 4] }).times).toEqual([
    ['2026-07-06T18:00:00-04:00', '2026-07-06T18:30:00-04:00', '2026-07-07T07:01:00-04:00'],
  ]);
});

test('one unknown interval among known ones leaves the reopening unknown, and stops the spraying', () => {
  const { plan, times } = timesOf({ ...SUMMER, rei: [12, null] });
  expect(times).toEqual([['2026-07-06T18:00:00-04:00', '2026-07-06T18:30:00-04:00', null]]);
  expect(flagRows(plan)).toContain('stop rei-unknown 2026-07-06');
});
