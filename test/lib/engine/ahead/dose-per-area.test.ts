import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { workingOf } from '@/lib/engine/working/working';
import type { Instant } from '@/shared/time/instant';
import { bench, once, planOf, product, recipe } from '../rules/small-shop';

/** What a plan takes of one product at a dose, on benches with these areas. */
function planned(dose: string, areas: (string | null)[], rest: { plants?: object[]; form?: string } = {}) {
  const benches = areas.map((area, at) => bench(`b${at + 1}`, { area, ...(rest.plants && { plants: rest.plants }) }));
  return planOf({
    products: [product('p1', {}, rest.form ? { form: rest.form } : {})],
    benches,
    recipes: [recipe('r1', { product: 'p1', dose })],
    programs: [once('g1', '2026-03-03', { benches: benches.map(({ id }) => id) })],
  });
}
const printed = (plan: ReturnType<typeof planned>) => planDocument(plan).sprayings[0];
const line = (plan: ReturnType<typeof planned>) => printed(plan)?.ingredients[0];

test('a dose per area takes dose × the ground of all benches, whatever the spray', () => {
  expect(line(planned('2 mL/m2', ['4 m2', '1 m2']))).toMatchObject({ amount: 10, unit: 'mL', cost: '0.002000' });
  // 4 fl oz are 118.294 mL; 130 square feet are 0.13 of a thousand.
  expect(line(planned('4 fl oz/1000 sq ft', ['130 sq ft']))?.amount).toBe(15.378);
  const twice = planned('2 mL/m2', ['4 m2'], { plants: [{ name: 'ferns', count: 10, mlPerPlant: 40 }] });
  expect(printed(twice)).toMatchObject({ sprayMl: 400, ingredients: [{ amount: 8 }] });
});

test('one bench without an area leaves the amount and the cost unknown, never zero, and says which', () => {
  const plan = planned('2 mL/m2', ['4 m2', null]);
  expect(printed(plan)).toMatchObject({ ingredients: [{ amount: null, cost: null }], materialCost: null });
  const flags = plan.flags.filter(({ rule }) => rule === 'unknown-cost');
  expect(flags.map(({ message }) => message)).toEqual([
    'What Product p1 in this spraying costs is unknown, and is not in the totals. Enter the area of Bench b2.',
  ]);
  const shown = workingOf({ plan, benches: [], now: 0 as Instant }, 'spraying/g1/2026-03-03/line/0/amount');
  expect(shown).toMatchObject({
    value: { kind: 'unknown', because: expect.stringContaining('area of a bench') },
    steps: [{ value: { value: 2, unit: 'mL a m²' } }, { value: { value: 4 } }, { value: { kind: 'unknown' } }],
  });
});

test('the amount is known without the spray, what the batch costs is not', () => {
  const plan = planned('2 mL/m2', ['4 m2'], { plants: [{ name: 'ferns', count: 10, mlPerPlant: null }] });
  expect(printed(plan)).toMatchObject({ sprayMl: null, ingredients: [{ amount: 8 }], materialCost: null });
  expect(plan.flags.map(({ message }) => message)).toEqual([
    expect.stringContaining('Enter the mL per plant of ferns'),
  ]);
});

test('where no plants stand nothing is mixed, however large the bench', () => {
  expect(line(planned('2 mL/m2', ['4 m2'], { plants: [] }))).toMatchObject({ amount: 0, cost: '0.000000' });
});

test('the amount grows with the ground and with nothing else', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 300 }), (metres, ml) => {
      const plants = [{ name: 'ferns', count: 3, mlPerPlant: ml }];
      expect(line(planned('3 g/m2', [`${metres} m2`], { plants, form: 'powder' }))?.amount).toBe(3 * metres);
    }),
    { numRuns: 50 },
  );
});
