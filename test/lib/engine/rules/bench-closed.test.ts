import { expect, test } from 'vitest';
import { benchClosed } from '@/lib/engine/rules/bench-closed';
import { application, bench, type Fields, once, planOf, product, recipe } from './small-shop';

const products = [product('p1', { reiHours: 12 }), product('p2', { reiHours: null }), product('p3', { reiHours: 0 })];
const recipes = [recipe('r1', 'p1'), recipe('r2', 'p2'), recipe('r3', 'p3')];
const evening = (then: Fields) =>
  // 18:00 to 18:30 on 2 March, so closed until 06:30 on 3 March.
  planOf({ products, recipes, programs: [once('g1', '2026-03-02'), once('g2', '2026-03-03', then)] });

test.each([
  { at: '06:29', fires: true },
  { at: '06:30', fires: false },
])('twelve hours after 18:30, a spraying at $at', ({ at, fires }) => {
  expect(benchClosed(evening({ startTime: at }))).toMatchObject(
    fires ? [{ severity: 'stop', rule: 'bench-closed', on: '2026-03-03', program: 'g2', benches: ['b1'] }] : [],
  );
});

test('the message says after what, until when, and what to do', () => {
  expect(benchClosed(evening({ startTime: '05:00' }))[0]?.message).toBe(
    'After Recipe r1, planned there Mon 2 March 18:00, nobody enters Bench b1 until Tue 3 March 06:30, and this starts Tue 3 March 05:00. Start this Tue 3 March 06:30 or later, or move the other one.',
  );
});

test('an end within a minute is said as the minute after it, at which the bench is open', () => {
  const on = (startTime: string) =>
    planOf({
      ...{ products, recipes },
      programs: [once('g1', '2026-03-03', { startTime })],
      applications: [application('a1', '2026-03-02T18:00:00Z', '2026-03-02T18:30:20.5Z')],
    });
  expect(benchClosed(on('06:30'))[0]?.message).toContain('until Tue 3 March 06:31, and this starts Tue 3 March 06:30.');
  expect(benchClosed(on('06:30'))[0]?.message).toContain('Start this Tue 3 March 06:31 or later');
  expect(benchClosed(on('06:31'))).toEqual([]);
});

test('of two sprayings that start together, the second in the plan is stopped', () => {
  const programs = [once('g1', '2026-03-02'), once('g2', '2026-03-02')];
  expect(benchClosed(planOf({ products, recipes, programs })).map(({ program }) => program)).toEqual(['g2']);
});

test('no minutes and no interval close nothing, not even at the same moment', () => {
  const programs = ['g1', 'g2'].map((id) => once(id, '2026-03-02', { recipes: ['r3'], minutes: 0 }));
  expect(benchClosed(planOf({ products, recipes, programs }))).toEqual([]);
});

test('the latest reopening counts, whichever application it came from', () => {
  const plan = planOf({
    products: [product('p1', { reiHours: 48 }), product('p2', { reiHours: 1 })],
    recipes: [recipe('r1', 'p1'), recipe('r2', 'p2')],
    programs: [once('g1', '2026-03-03')],
    applications: [
      application('a1', '2026-03-01T18:00:00Z', '2026-03-01T18:30:00Z'),
      application('a2', '2026-03-02T18:00:00Z', '2026-03-02T18:30:00Z', { recipe: 'r2' }),
    ],
  });
  expect(benchClosed(plan)).toMatchObject([{ program: 'g1', message: expect.stringContaining('Recipe r1, sprayed') }]);
});

test.each([
  { why: 'an unknown interval', recipe: 'r2', endedAt: '2026-01-01T19:00:00Z', enter: 'interval of Product p2' },
  { why: 'an end that nobody noted', recipe: 'r1', endedAt: null, enter: 'Note when that application ended' },
])('$why keeps a bench closed months later', ({ recipe: sprayed, endedAt, enter }) => {
  const plan = planOf({
    products,
    recipes,
    benches: [bench('b1'), bench('b2')],
    programs: [once('g1', '2026-03-02', { benches: ['b1', 'b2'] })],
    applications: [application('a1', '2026-01-01T18:00:00Z', endedAt, { recipe: sprayed })],
  });
  expect(benchClosed(plan)).toMatchObject([{ benches: ['b1'], message: expect.stringContaining(enter) }]);
});

test('what starts later closes nothing that was before it', () => {
  const programs = [once('g1', '2026-03-02', { startTime: '08:00' }), once('g2', '2026-03-05')];
  expect(benchClosed(planOf({ products, recipes, programs }))).toEqual([]);
});
