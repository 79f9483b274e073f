import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Plan } from '@/lib/engine/ahead/plan';
import { type Fig, figuresOf } from '@/lib/views/figures';
import { type RampSteps, rampSteps } from '@/lib/views/ramp-steps';
import { stockRamp } from '@/lib/views/stock-ramp';
import { dayNumber } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { planOf, shopWith } from '../../worked/plan-of';
import { anyPlan, TODAY } from '../engine/ahead/any-ahead';

const NOW = instantOf(Date.UTC(2026, 2, 3, 12));
const seen = (plan: Plan) => ({ plan, figure: figuresOf({ plan, benches: [], now: NOW }) });

const amount = (figure: Fig | null): number => {
  if (figure === null) return 0;
  if (figure.value.kind !== 'stock') throw new Error(`${figure.at} is no amount`);
  return figure.value.amount;
};
const total = (amounts: readonly number[]) => amounts.reduce((sum, each) => sum + each, 0);

/*
 * By hand. 40 plants at 25 mL are one litre of spray a week, and at 60 mL/L that takes 60 mL of soap. On the shelf are
 * 100 mL, and 250 mL arrive on Thu 12 March. Tue 3 March takes 60; on the 10th 40 are left and 20 missing; from the 17th
 * on the new one gives 60 each time, until it dies, opened for twenty days, with 70 in it.
 */
const BY_HAND = shopWith({
  shop: { safetyDays: 3 },
  suppliers: [{ id: 'mill', name: 'Mill' }],
  products: [{ id: 'soap', name: 'Soap', kind: 'insecticide', form: 'liquid', shelfLife: { openedDays: 20 } }],
  offers: [{ id: 'o', supplier: 'mill', product: 'soap', pack: '1 L', price: '20', leadDays: 2 }],
  lots: [
    { id: 'old', product: 'soap', pack: '100 mL', paid: '5', receivedOn: '2026-01-05', expiresOn: '2026-03-16' },
    { id: 'new', product: 'soap', pack: '250 mL', paid: '10', receivedOn: '2026-03-12' },
  ],
  benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 40, mlPerPlant: 25 }] }],
  recipes: [{ id: 'r', name: 'Soap round', ingredients: [{ product: 'soap', dose: '60 mL/L' }] }],
  programs: [
    {
      ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: TODAY, repeat: 'FREQ=WEEKLY;BYDAY=TU' },
      ...{ startTime: '17:30', minutes: 30 },
    },
  ],
});

const inMl = (figure: Fig | null) => (figure === null ? null : amount(figure) / 1000);

const eventText = (event: RampSteps['steps'][number]['events'][number]) =>
  event.kind === 'sprayed'
    ? `${event.recipe} ${inMl(event.amount)}${event.short ? ` missing ${inMl(event.short)}` : ''}`
    : `${event.container} ${event.kind} ${inMl(event.amount)}`;

test('every spraying, arrival and last day is a step, with what each container holds after it', () => {
  const plan = planOf(BY_HAND, TODAY, 7);
  const [soap] = plan.products;
  if (!soap) throw new Error('there is no soap');
  const { containers, opening, steps, orderBy, lead, weeks } = rampSteps(seen(plan), soap);
  expect(containers.map(({ name }) => name)).toEqual(['100 mL, lot old', '250 mL, lot new']);
  expect([inMl(opening.left), ...opening.inEach.map(inMl)]).toEqual([100, 100, null]);
  expect(
    steps.map(({ day, events, left, inEach }) => [day, events.map(eventText), inMl(left), inEach.map(inMl)]),
  ).toEqual([
    ['2026-03-03', ['Soap round 60'], 40, [40, 0]],
    ['2026-03-10', ['Soap round 60 missing 20'], 0, [0, 0]],
    ['2026-03-12', ['250 mL, lot new arrives 250'], 250, [0, 250]],
    ['2026-03-17', ['Soap round 60'], 190, [0, 190]],
    ['2026-03-24', ['Soap round 60'], 130, [0, 130]],
    ['2026-03-31', ['Soap round 60'], 70, [0, 70]],
    // Opened on the 17th, it may be used for twenty days: until 6 April.
    ['2026-04-07', ['250 mL, lot new wasted 70', 'Soap round 60 missing 60'], 0, [0, 0]],
    ['2026-04-14', ['Soap round 60 missing 60'], 0, [0, 0]],
  ]);
  // Runs out on the 10th, so it must be there by Sat 7 March: ordered on Wed 4, it comes on Fri 6.
  expect(lead).toMatchObject({ days: 2, supplier: 'Mill', pack: '1 L' });
  expect(lead?.neededOn.value).toEqual({ kind: 'day', day: '2026-03-07' });
  expect(orderBy.value).toEqual({ kind: 'day', day: '2026-03-04' });
  expect(weeks).toBe(0);
});

test('the steps of any product keep the balance, and say what the ramp draws', () => {
  fc.assert(
    fc.property(anyPlan({ dying: true }), (plan) => {
      for (const ahead of plan.products) {
        const house = seen(plan);
        const { opening, steps } = rampSteps(house, ahead);
        let before = opening.inEach.map(amount);
        for (const { events, left, inEach } of steps) {
          const now = inEach.map(amount);
          expect(amount(left)).toBe(total(now));
          const moved = events.map((event) => {
            if (event.kind !== 'sprayed') return event.kind === 'wasted' ? -amount(event.amount) : amount(event.amount);
            return amount(event.short) - amount(event.amount);
          });
          expect(total(now)).toBe(total(before) + total(moved));
          before = now;
        }
        const { points } = stockRamp(house, ahead);
        expect(points[0]?.left).toEqual(opening.inEach.map(amount));
        expect(points.at(-1)?.left).toEqual(before);
        for (const { day, inEach } of steps) {
          const drawn = points.findLast((point) => point.number <= dayNumber(day));
          // The first point is today before anything happens; a spraying of today is the next one.
          expect(drawn?.left, day).toEqual(inEach.map(amount));
        }
      }
    }),
    { numRuns: 40 },
  );
});

test('what will be wasted is a part of what is there, as much in each container as is wasted of it in the end', () => {
  fc.assert(
    fc.property(anyPlan({ dying: true }), (plan) => {
      for (const ahead of plan.products) {
        const { points, containers } = stockRamp({ plan }, ahead);
        for (const { left, used, doomed } of points) {
          expect(left.map((_, place) => (used[place] ?? 0) + (doomed[place] ?? 0))).toEqual(left);
          expect(Math.min(0, ...used, ...doomed)).toBe(0);
        }
        const most = containers.map((_, place) => Math.max(0, ...points.map(({ doomed }) => doomed[place] ?? 0)));
        expect(total(most)).toBe(total(ahead.wastes.map((waste) => waste.amount)));
        expect(containers.map(({ isDoomed }) => isDoomed)).toEqual(most.map((each) => each > 0));
      }
    }),
    { numRuns: 40 },
  );
});
