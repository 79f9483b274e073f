import fc from 'fast-check';
import { expect, test } from 'vitest';
import { showClockTime } from '@/shared/time/clock-time';
import { plainDays, plainHours, plainOpening, plainShelfLife, plainTime } from '@/shared/time/time-written';

test.each([
  ['9am', '09:00'],
  ['9:30 pm', '21:30'],
  ['9.30pm', '21:30'],
  ['12am', '00:00'],
  ['12 p.m.', '12:00'],
  ['noon', '12:00'],
  ['midnight', '00:00'],
  ['17:30', '17:30'],
  ['9:00', '09:00'],
  // May be two times.
  ['9', '9'],
  ['13pm', '13pm'],
  ['25:00', '25:00'],
  ['9:75', '9:75'],
])('the time %s is %s', (text, plain) => {
  expect(plainTime(text)).toBe(plain);
});

test.each([
  ['9am-6pm', '09:00', '18:00'],
  ['9 am to 6 pm', '09:00', '18:00'],
  ['9-18', '09:00', '18:00'],
  ['9–6pm', '09:00', '18:00'],
  ['9:00-12:00', '09:00', '12:00'],
  ['noon - midnight', '12:00', '24:00'],
  ['1pm-5', '13:00', '17:00'],
])('the opening %s is %s to %s', (text, from, until) => {
  expect(plainOpening(text)).toEqual([from, until]);
});

test.each(['1-5', '9-12', '1-5pm', '9am', 'by appointment', '9am-6pm-8pm'])(
  'the opening %s can be two, or none',
  (text) => {
    expect(plainOpening(text)).toBeNull();
  },
);

test('every opening on a clock of 24 hours is what it says', () => {
  const minute = fc.integer({ min: 0, max: 1_440 });
  fc.assert(
    fc.property(minute, minute, (one, other) => {
      fc.pre(one !== other);
      const [from, until] = [showClockTime(Math.min(one, other)), showClockTime(Math.max(one, other))];
      expect(plainOpening(`${from}-${until}`)).toEqual([from, until]);
    }),
  );
});

test.each([
  ['2 years', '730'],
  ['18 months', '547'],
  ['6 weeks', '42'],
  ['1.5 yrs', '547'],
  ['90 days', '90'],
  ['730', '730'],
  ['a while', 'a while'],
])('a bottle that keeps %s keeps %s days', (text, days) => {
  expect(plainShelfLife(text)).toBe(days);
});

test.each([
  ['2 weeks', '14'],
  ['10 days', '10'],
  ['7', '7'],
  ['2 months', '2 months'],
])('%s on a label are %s days', (text, days) => {
  expect(plainDays(text)).toBe(days);
});

test.each([
  ['12 h', '12'],
  ['12 hours', '12'],
  ['2 days', '48'],
  ['30 min', '0.5'],
  // Never shorter than what the label says.
  ['20 minutes', '0.3334'],
  ['4', '4'],
  ['none', 'none'],
  ['until dry', 'until dry'],
])('an interval of %s is %s hours', (text, hours) => {
  expect(plainHours(text)).toBe(hours);
});
