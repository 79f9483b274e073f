import { expect, test } from 'vitest';
import { mixedTooLong } from '@/lib/engine/rules/mixed-too-long';
import { once, planOf } from './small-shop';

const flags = (minutes: number, useWithinHours: number | null) =>
  mixedTooLong(
    planOf({
      recipes: [{ id: 'r1', name: 'Nightly', useWithinHours, ingredients: [{ product: 'p1', dose: '2 mL/L' }] }],
      programs: [once('g1', '2026-03-03', { minutes })],
    }),
  );

test.each([
  { minutes: 480, hours: 8, fires: false },
  { minutes: 481, hours: 8, fires: true },
  // A time that may not be exceeded is rounded down: 0.99 h is 59 minutes.
  { minutes: 59, hours: 0.99, fires: false },
  { minutes: 60, hours: 0.99, fires: true },
  { minutes: 1_000, hours: null, fires: false },
])('a spraying of $minutes minutes of what is to be used within $hours h', ({ minutes, hours, fires }) => {
  expect(flags(minutes, hours)).toMatchObject(
    fires ? [{ severity: 'warn', on: '2026-03-03', program: 'g1', benches: ['b1'], product: null }] : [],
  );
});

test('the message says how long, and how to clear it', () => {
  expect(flags(481, 8)[0]?.message).toBe(
    'This takes 8 h 1 min, and Nightly is to be used within 8 h of mixing. Mix it in two batches, or split the program.',
  );
});
