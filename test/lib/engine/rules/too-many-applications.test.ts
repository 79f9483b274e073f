import { expect, test } from 'vitest';
import { tooManyApplications } from '@/lib/engine/rules/too-many-applications';
import { application, bench, once, planOf, product, recipe } from './small-shop';

const twiceAYear = [product('p1', { maxApplicationsPerYear: 2 })];
const sprayedOn = (id: string, day: string, rest = {}) => application(id, `${day}T18:00:00Z`, `${day}T18:30:00Z`, rest);

test.each([
  { first: '2025-03-10', last: 'the last day of the 365', fires: true },
  { first: '2025-03-09', last: 'a day too far back', fires: false },
])('of two applications allowed, an earlier one on $last', ({ first, fires }) => {
  // The 365 days that end with 9 March 2026 begin on 10 March 2025.
  const plan = planOf({
    products: twiceAYear,
    programs: [once('g1', '2026-03-09')],
    applications: [sprayedOn('a1', first), sprayedOn('a2', '2025-12-01')],
  });
  expect(tooManyApplications(plan)).toMatchObject(
    fires
      ? [{ severity: 'stop', rule: 'too-many-applications', on: '2026-03-09', benches: ['b1'], product: 'p1' }]
      : [],
  );
});

test('exactly as many as the label allows are no fault, and each one more is', () => {
  const programs = ['02', '04', '06', '08'].map((date) => once(`g${date}`, `2026-03-${date}`));
  const flags = tooManyApplications(planOf({ products: twiceAYear, programs }));
  expect(flags.map(({ program }) => program)).toEqual(['g06', 'g08']);
});

test('each bench counts by itself, and a mix that names the product twice is one application', () => {
  const plan = planOf({
    products: twiceAYear,
    benches: [bench('b1'), bench('b2')],
    recipes: [recipe('r1', 'p1', 'p1')],
    programs: [
      once('g1', '2026-03-04', { benches: ['b1', 'b2'] }),
      once('g2', '2026-03-06', { benches: ['b1', 'b2'] }),
    ],
    applications: [sprayedOn('a1', '2026-01-05', { benches: ['b2'] })],
  });
  expect(tooManyApplications(plan)).toMatchObject([
    {
      program: 'g2',
      benches: ['b2'],
      message:
        'This would be application number 3 on Bench b2 of Product p1 within 365 days; its label allows 2 applications in a year. Leave it out, use another product, or move it to Tue 5 January 2027 or later, when enough of the earlier ones are a year back.',
    },
  ]);
});

test('a label that allows none stops the first', () => {
  const plan = planOf({
    products: [product('p1', { maxApplicationsPerYear: 0 })],
    programs: [once('g1', '2026-03-04')],
  });
  expect(tooManyApplications(plan)).toMatchObject([{ program: 'g1', message: expect.stringContaining('allows none') }]);
});
