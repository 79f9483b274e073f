import { expect, test } from 'vitest';
import { closedInOpeningHours } from '@/lib/engine/rules/closed-in-opening-hours';
import { bench, once, planOf, product } from './small-shop';

type Hours = Record<string, [from: string, to: string][]>;
const daily = (...openings: [string, string][]): Hours =>
  Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map((name) => [name, openings]));

type Case = { start: string; minutes?: number; rei?: number | null; hours?: Hours; on?: string; zone?: string };

function flagged({
  start,
  minutes = 30,
  rei = 12,
  hours = daily(['09:00', '18:00']),
  on = '2026-03-03',
  zone = 'UTC',
}: Case) {
  const plan = planOf({
    settings: { openingHours: hours, timeZone: zone },
    products: [product('p1', { reiHours: rei })],
    benches: [bench('b1', { customers: true, name: 'Fern wall' }), bench('b2')],
    programs: [once('g1', on, { startTime: start, minutes, benches: ['b1', 'b2'] })],
  });
  return closedInOpeningHours(plan);
}

test.each([
  { why: 'reopens as the shop opens', start: '20:30', fires: false },
  { why: 'reopens a minute after the shop opened', start: '20:31', fires: true },
  { why: 'starts as the shop closes', start: '18:00', fires: false },
  { why: 'starts a minute before it closes', start: '17:59', fires: true },
  { why: 'lasts over a whole day', start: '19:00', rei: 48, fires: true },
  { why: 'takes no time at all, in the middle of the day', start: '12:00', minutes: 0, rei: 0, fires: false },
  { why: 'takes a minute in the middle of the day', start: '12:00', minutes: 1, rei: 0, fires: true },
  {
    why: 'lies in the lunch hour',
    start: '12:00',
    minutes: 60,
    rei: 0,
    hours: daily(['09:00', '12:00'], ['13:00', '18:00']),
    fires: false,
  },
  {
    why: 'is a minute too long for the lunch hour',
    start: '12:00',
    minutes: 61,
    rei: 0,
    hours: daily(['09:00', '12:00'], ['13:00', '18:00']),
    fires: true,
  },
  {
    why: 'happens on a day the shop is shut',
    start: '08:00',
    rei: 24,
    hours: { thu: [['09:00', '18:00']] } as Hours,
    fires: false,
  },
  {
    why: 'lasts two days and meets the one opening of the week',
    start: '08:00',
    rei: 26,
    hours: { wed: [['09:00', '18:00']] } as Hours,
    fires: true,
  },
  { why: 'has an unknown interval', start: '20:00', rei: null, fires: true },
  { why: 'has an unknown interval in a shop that never opens', start: '20:00', rei: null, hours: {}, fires: true },
  { why: 'is long, in a shop that never opens', start: '20:00', rei: 500, hours: {}, fires: false },
])('a closed time that $why', ({ fires, why: _, ...rest }) => {
  expect(flagged(rest)).toMatchObject(
    fires
      ? [
          {
            severity: 'warn',
            rule: 'closed-in-opening-hours',
            on: '2026-03-03',
            program: 'g1',
            benches: ['b1'],
            product: null,
          },
        ]
      : [],
  );
});

test('a bench that customers cannot reach raises no flag', () => {
  const settings = { openingHours: daily(['09:00', '18:00']) };
  expect(
    closedInOpeningHours(planOf({ settings, programs: [once('g1', '2026-03-03', { startTime: '12:00' })] })),
  ).toEqual([]);
});

test.each([
  // Summer time begins at 02:00 on 8 March in New York: eight elapsed hours after 00:30 are 09:30 on the clock.
  { night: '2026-03-08', start: '00:00', rei: 8, fires: true },
  { night: '2026-03-08', start: '00:00', rei: 7.5, fires: false },
  // It ends at 02:00 on 1 November: nine elapsed hours after 00:30 are 08:30.
  { night: '2026-11-01', start: '00:00', rei: 9.5, fires: false },
  { night: '2026-11-01', start: '00:00', rei: 9.6, fires: true },
])('$rei hours from 00:30 on $night, when the clocks change: $fires', ({ night, start, rei, fires }) => {
  const plan = planOf(
    {
      settings: { openingHours: daily(['09:00', '18:00']), timeZone: 'America/New_York' },
      products: [product('p1', { reiHours: rei })],
      benches: [bench('b1', { customers: true })],
      programs: [once('g1', night, { startTime: start })],
    },
    night,
  );
  expect(closedInOpeningHours(plan)).toHaveLength(fires ? 1 : 0);
});

test('an opening that the clock repeats in part is open again in that part', () => {
  // Open until 01:30 at night. On 1 November 02:00 becomes 01:00, and the shop is open for half an hour more.
  const from0140 = (minutes: number) =>
    planOf(
      {
        settings: { openingHours: daily(['00:00', '01:30']), timeZone: 'America/New_York' },
        benches: [bench('b1', { customers: true })],
        programs: [once('g1', '2026-11-01', { startTime: '01:40', minutes })],
      },
      '2026-10-31',
    );
  expect(closedInOpeningHours(from0140(20))).toEqual([]);
  expect(closedInOpeningHours(from0140(21))).toHaveLength(1);
});

test('an opening that begins in the skipped hour begins when the clock has jumped', () => {
  // On 8 March 02:00 becomes 03:00, which is 07:00 UTC: open from then on, not from 03:30.
  const at = (minutes: number) =>
    planOf(
      {
        settings: { openingHours: daily(['02:30', '06:00']), timeZone: 'America/New_York' },
        benches: [bench('b1', { customers: true })],
        programs: [once('g1', '2026-03-08', { startTime: '01:30', minutes })],
      },
      '2026-03-07',
    );
  expect(closedInOpeningHours(at(30))).toEqual([]);
  expect(closedInOpeningHours(at(31))).toHaveLength(1);
});

test('the message gives the closed time and the starts that would clear it', () => {
  expect(flagged({ start: '17:30' })[0]?.message).toBe(
    'Customers could not reach Fern wall from Tue 3 March 17:30 until Wed 4 March 06:00 (12 h 30 min), and the shop is open Tue 3 March 09:00 to 18:00. The nearest clear starts are Mon 2 March 20:30 and Tue 3 March 18:00. To reopen in time for the next opening, Wed 4 March 09:00, start by Tue 3 March 20:30.',
  );
  expect(flagged({ start: '21:00' })[0]?.message).toContain(
    'The nearest clear starts are Tue 3 March 20:30 and Wed 4 March 18:00. To reopen in time for the next opening, Wed 4 March 09:00, start by Tue 3 March 20:30.',
  );
});

test('it says so where no start clears it', () => {
  const message = flagged({ start: '19:00', rei: 24 })[0]?.message;
  expect(message).toContain('No start within 14 days would clear it');
  expect(message).toContain('No clear start reopens in time for the next opening, Wed 4 March 09:00.');
});

test('no start is named that is already past today', () => {
  // Today is Monday 2 March, and the start before would have been on Sunday.
  expect(flagged({ start: '10:00', on: '2026-03-02' })[0]?.message).toContain(
    'The nearest clear start is Mon 2 March 18:00; there is none before it that is still to come.',
  );
});

test('an unknown interval asks for it', () => {
  expect(flagged({ start: '20:00', rei: null })[0]?.message).toContain('interval of Product p1 from its label');
});
