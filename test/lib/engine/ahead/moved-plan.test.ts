import { expect, test } from 'vitest';
import { clearMoves } from '@/lib/engine/ahead/clear-moves';
import { movedPlan, shopWithMoved } from '@/lib/engine/ahead/moved-plan';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { atClock, clockOf } from '@/shared/time/zone';
import { bench, day, type Fields, once, planOf, product, recipe } from '../rules/small-shop';

const HOURS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat'].map((weekday) => [weekday, [['09:00', '18:00']]]);

/** A shop open from 9 to 6 but for Sundays, whose customers' bench is closed for four hours after half an hour's spraying. */
const parts = (program: Fields) => ({
  settings: { openingHours: Object.fromEntries(HOURS) },
  products: [product('p1', { reiHours: 4 })],
  benches: [bench('b1', { customers: true })],
  recipes: [recipe('r1', 'p1')],
  programs: [once('g1', '2026-03-03', program)],
  lots: [{ id: 'l1', product: 'p1', pack: '1 L', paid: '10.00', receivedOn: '2026-01-01' }],
});

const flagged = ({ flags }: ReturnType<typeof planOf>) =>
  flags.filter(({ rule }) => rule === 'closed-in-opening-hours').map(({ on }) => on);

test('a spraying in opening hours can go to the nearest clear starts, and the flag is gone on every one', () => {
  const plan = planOf(parts({ startTime: '16:00' }));
  expect(flagged(plan)).toEqual(['2026-03-03']);
  const [spraying] = plan.sprayings;
  if (!spraying) throw new Error('nothing is planned');
  const moves = clearMoves(plan.shop, spraying, atClock(plan.shop.zone, day('2026-03-02'), 600));
  const words = moves.map(({ why, startsAt }) => {
    const { day: on, minuteOfDay } = clockOf(plan.shop.zone, startsAt);
    return [why, on, minuteOfDay];
  });
  expect(words).toEqual([
    ['before', '2026-03-03', 4 * 60 + 30],
    ['after', '2026-03-03', 18 * 60],
    ['in-time', '2026-03-04', 4 * 60 + 30],
  ]);
  for (const { startsAt } of moves) {
    const { day: on, minuteOfDay: startMinute } = clockOf(plan.shop.zone, startsAt);
    const moved = movedPlan(plan, 'g1', day('2026-03-03'), { day: on, startMinute });
    expect(moved.spraying?.startsAt).toBe(startsAt);
    expect(moved.flags).toEqual([]);
    expect(moved.cleared).toBe(1);
    const shop = shopWithMoved(plan.shop, 'g1', day('2026-03-03'), { day: on, startMinute });
    expect(flagged(planAhead(shop, plan.today, plan.weeks))).toEqual([]);
  }
});

test('nothing is offered before now, on a day with another turn, for a clear spraying or one without an end', () => {
  const noon = (text: string, minute = 720) => atClock(planOf(parts({})).shop.zone, day(text), minute);
  const offers = (program: Fields, now = noon('2026-03-02'), rest: object = {}) => {
    const plan = planOf({ ...parts(program), ...rest });
    return plan.sprayings[0] ? clearMoves(plan.shop, plan.sprayings[0], now).map(({ why }) => why) : [];
  };
  expect(offers({ startTime: '16:00' }, noon('2026-03-03', 900))).toEqual(['after', 'in-time']);
  expect(offers({ startTime: '18:00' })).toEqual([]);
  expect(offers({ startTime: '16:00', repeat: 'FREQ=DAILY' })).toEqual(['before', 'after']);
  expect(offers({ startTime: '16:00' }, undefined, { benches: [bench('b1')] })).toEqual([]);
  expect(offers({ startTime: '16:00' }, undefined, { products: [product('p1', { reiHours: null })] })).toEqual([]);
});

test('moving a spraying beyond what a bottle lasts says what runs out and what it costs', () => {
  const soon = { ...parts({ startTime: '18:30' }), offers: [], lots: [] };
  const plan = planOf({
    ...soon,
    lots: [{ id: 'l1', product: 'p1', pack: '1 L', paid: '10.00', receivedOn: '2026-01-01', expiresOn: '2026-03-04' }],
  });
  const moved = movedPlan(plan, 'g1', day('2026-03-03'), { day: day('2026-03-06'), startMinute: 1110 });
  expect(moved.runsOut).toMatchObject([{ product: { id: 'p1' }, from: null, to: '2026-03-06' }]);
  expect(moved.flags.map(({ rule }) => rule)).toContain('short');
  expect(moved.costMore).toBeNull();
  expect(moved.wasteMore).toMatchObject({ isMore: true });
});
