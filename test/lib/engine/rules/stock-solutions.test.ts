import { describe, expect, test } from 'vitest';
import { longestRei } from '@/lib/engine/keepout/reopening';
import { doseOutsideLabel } from '@/lib/engine/rules/dose-outside-label';
import { modeRepeated } from '@/lib/engine/rules/mode-repeated';
import { mustNotMix } from '@/lib/engine/rules/must-not-mix';
import { phOutsideRange } from '@/lib/engine/rules/ph-outside-range';
import { reiUnknown } from '@/lib/engine/rules/rei-unknown';
import { tooManyApplications } from '@/lib/engine/rules/too-many-applications';
import { tooSoon } from '@/lib/engine/rules/too-soon';
import { application, type Fields, once, planOf, product, recipe, smallShop } from './small-shop';

/*
 * A powder, and a stock solution of 100 g of it in each litre. A mL of the solution brings 0.1 g of the powder. What the
 * label of the powder limits, the solution is counted towards, whatever its own label says.
 */

const powder = (label: Fields = {}) => product('powder', label, { name: 'Powder', form: 'powder' });
const solution = (label: Fields = {}, rest: Fields = {}) =>
  product('solution', label, {
    name: 'Solution',
    madeFrom: [{ product: 'powder', dose: '100 g/L' }],
    ...rest,
  });
const OF_POWDER = recipe('of powder', { product: 'powder', dose: '0.2 g/L' });
const OF_SOLUTION = recipe('of solution', 'solution');
const shopOf = (ofPowder: Fields, ofSolution: Fields = {}) => ({
  products: [powder(ofPowder), solution(ofSolution)],
  recipes: [OF_POWDER, OF_SOLUTION],
});
const solutionOn = (on: string) => once('g1', on, { recipes: ['of solution'] });
const sprayed = (id: string, on: string, what = 'of powder') =>
  application(id, `${on}T10:00:00Z`, `${on}T10:30:00Z`, { recipe: what });

describe('too many applications', () => {
  // The 365 days ending with 3 March 2026 begin on 4 March 2025.
  test.each([
    {
      name: 'the powder and its solution together are one too many',
      before: ['2025-03-04', '2026-02-01'],
      fires: true,
    },
    { name: 'a year ago to the day no longer counts', before: ['2025-03-03', '2026-02-01'], fires: false },
  ])('$name', ({ before, fires }) => {
    const [first = '', second = ''] = before;
    const plan = planOf({
      ...shopOf({ maxApplicationsPerYear: 2 }),
      programs: [solutionOn('2026-03-03')],
      applications: [sprayed('a1', first), sprayed('a2', second, 'of solution')],
    });
    const flag = { severity: 'stop', rule: 'too-many-applications', product: 'powder', benches: ['b1'] };
    expect(tooManyApplications(plan)).toMatchObject(fires ? [flag] : []);
    if (fires)
      expect(plan.flags[0]?.message).toMatch(/^Solution is made from Powder\. This would be application number 3/);
  });

  test('a record of the solution counts for a planned spraying of the powder', () => {
    const parts = {
      ...shopOf({ maxApplicationsPerYear: 1 }),
      programs: [once('g1', '2026-03-03', { recipes: ['of powder'] })],
    };
    expect(tooManyApplications(planOf(parts))).toEqual([]);
    const applications = [sprayed('a1', '2026-02-01', 'of solution')];
    expect(tooManyApplications(planOf({ ...parts, applications }))).toMatchObject([{ product: 'powder' }]);
  });

  test('the limit of the solution itself is said where it is stricter, and not said again where it is not', () => {
    const parts = { programs: [solutionOn('2026-03-03')], applications: [sprayed('a1', '2026-02-01', 'of solution')] };
    const flagged = (ofPowder: number, ofSolution: number) =>
      tooManyApplications(
        planOf({ ...shopOf({ maxApplicationsPerYear: ofPowder }, { maxApplicationsPerYear: ofSolution }), ...parts }),
      ).map((flag) => flag.product);
    expect(flagged(1, 1)).toEqual(['powder']);
    expect(flagged(2, 1)).toEqual(['solution']);
    expect(flagged(2, 2)).toEqual([]);
  });

  test('the powder and its solution in one tank are one application', () => {
    const both = recipe('both', { product: 'powder', dose: '0.1 g/L' }, { product: 'solution', dose: '1 mL/L' });
    const plan = planOf({
      ...shopOf({ maxApplicationsPerYear: 1 }),
      recipes: [both],
      programs: [once('g1', '2026-03-03', { recipes: ['both'] })],
    });
    expect(tooManyApplications(plan)).toEqual([]);
  });

  test('a solution that is made of a solution counts for the powder, too, and two made of each other end', () => {
    const weaker = product('weaker', {}, { madeFrom: [{ product: 'solution', dose: '10 mL/L' }] });
    const parts = {
      products: [powder({ maxApplicationsPerYear: 0 }), solution(), weaker],
      recipes: [recipe('r1', 'weaker')],
      programs: [once('g1', '2026-03-03')],
    };
    expect(tooManyApplications(planOf(parts))).toMatchObject([{ product: 'powder' }]);
    const rings = ['one', 'two'].map((id, at) =>
      product(id, { maxApplicationsPerYear: 0 }, { madeFrom: [{ product: ['two', 'one'][at], dose: '1 mL/L' }] }),
    );
    const ring = planOf({ products: rings, recipes: [recipe('r1', 'one')], programs: [once('g1', '2026-03-03')] });
    expect(tooManyApplications(ring).length).toBeGreaterThan(0);
  });
});

describe('too soon', () => {
  test.each([
    { gap: 'six days', on: '2026-03-08', fires: true },
    { gap: 'seven days', on: '2026-03-09', fires: false },
  ])('the solution $gap after the powder, whose label asks for seven', ({ on, fires }) => {
    const plan = planOf({
      ...shopOf({ minDaysBetween: 7 }),
      programs: [once('g0', '2026-03-02', { recipes: ['of powder'] }), solutionOn(on)],
    });
    expect(tooSoon(plan)).toMatchObject(fires ? [{ severity: 'stop', program: 'g1', product: 'powder' }] : []);
  });

  test('the powder after a record of the solution', () => {
    const parts = {
      ...shopOf({ minDaysBetween: 7 }),
      programs: [once('g1', '2026-03-03', { recipes: ['of powder'] })],
    };
    const flagged = (on: string) => tooSoon(planOf({ ...parts, applications: [sprayed('a1', on, 'of solution')] }));
    expect(flagged('2026-02-24')).toEqual([]);
    expect(flagged('2026-02-25')).toMatchObject([{ product: 'powder' }]);
  });
});

test('a mode group of the source counts, though the label of the solution names none', () => {
  const parts = { ...shopOf({ modes: ['IRAC 3A'] }), programs: [solutionOn('2026-03-03')] };
  const records = [sprayed('a1', '2026-02-01'), sprayed('a2', '2026-02-08', 'of solution')];
  expect(modeRepeated(planOf({ ...parts, applications: records.slice(0, 1) }))).toEqual([]);
  expect(modeRepeated(planOf({ ...parts, applications: records }))).toMatchObject([{ product: 'solution' }]);
});

describe('must not mix', () => {
  const mixed = (ofPowder: Fields, third: Fields, ...more: Fields[]) =>
    mustNotMix(
      planOf({
        products: [powder(ofPowder), solution(), product('third', third), ...more],
        recipes: [recipe('r1', 'solution', 'third')],
        programs: [once('g1', '2026-03-03')],
      }),
    );

  test('what the label of the source keeps apart, and what keeps itself apart from the source', () => {
    expect(mixed({ doNotMixWith: ['Product third'] }, {})).toMatchObject([{ severity: 'stop', product: 'powder' }]);
    expect(mixed({}, { doNotMixWith: ['powder'] })).toMatchObject([{ severity: 'stop', product: 'third' }]);
    expect(mixed({ doNotMixWith: ['something else'] }, {})).toEqual([]);
  });

  test('a solution is never kept apart from what it is made from', () => {
    const both = recipe('r1', 'solution', { product: 'powder', dose: '0.1 g/L' });
    const parts = { recipes: [both], programs: [once('g1', '2026-03-03')] };
    const apart = shopOf({ doNotMixWith: ['insecticide'] }, { doNotMixWith: ['powder'] });
    expect(mustNotMix(planOf({ ...apart, ...parts }))).toEqual([]);
  });

  test('two sources of one solution are kept apart as in any tank', () => {
    const two = [
      { product: 'powder', dose: '100 g/L' },
      { product: 'other', dose: '10 mL/L' },
    ];
    const plan = (entry: string) =>
      planOf({
        products: [powder({ doNotMixWith: [entry] }), solution({}, { madeFrom: two }), product('other')],
        recipes: [recipe('r1', 'solution')],
        programs: [once('g1', '2026-03-03')],
      });
    expect(mustNotMix(plan('Product other'))).toMatchObject([{ product: 'powder' }]);
    expect(mustNotMix(plan('Product another'))).toEqual([]);
  });
});

describe('the restricted-entry interval', () => {
  const longest = (ofPowder: number | null, ofSolution: number | null) => {
    const shop = smallShop(shopOf({ reiHours: ofPowder }, { reiHours: ofSolution }));
    const [, ofSolutionOnly] = shop.recipes;
    return ofSolutionOnly && longestRei(ofSolutionOnly);
  };

  test('the longer of the source and the solution counts, and unknown in either is unknown', () => {
    expect(longest(12, 4)).toBe(720);
    expect(longest(4, 12)).toBe(720);
    expect(longest(null, 12)).toBeNull();
    expect(longest(12, null)).toBeNull();
  });

  test('it is the source whose interval has to be entered', () => {
    const plan = planOf({ ...shopOf({ reiHours: null }), programs: [solutionOn('2026-03-03')] });
    expect(reiUnknown(plan)).toMatchObject([{ severity: 'stop', product: 'powder' }]);
    expect(reiUnknown(planOf({ ...shopOf({ reiHours: 0 }), programs: [solutionOn('2026-03-03')] }))).toEqual([]);
  });
});

describe('the dose', () => {
  const rate = (min: string, max: string) => [{ use: 'foliar', min, max }];
  const found = (ingredients: Fields[], ofPowder: Fields, ofSolution: Fields = {}, made = '100 g/L') =>
    doseOutsideLabel(
      planOf({
        products: [powder(ofPowder), solution(ofSolution, { madeFrom: [{ product: 'powder', dose: made }] })],
        recipes: [recipe('r1', ...ingredients)],
        programs: [once('g1', '2026-03-03')],
      }),
    ).map(({ severity, product }) => `${severity} ${product}`);
  const solutionAt = (dose: string) => ({ product: 'solution', dose });
  const rates = rate('0.1 g/L', '0.2 g/L');

  test('what it brings of its source is held against the label of the source', () => {
    expect(found([solutionAt('2 mL/L')], { rates })).toEqual([]);
    expect(found([solutionAt('2.001 mL/L')], { rates })).toEqual(['stop powder']);
    expect(found([solutionAt('1 mL/L')], { rates })).toEqual([]);
    expect(found([solutionAt('0.999 mL/L')], { rates })).toEqual(['warn powder']);
  });

  test('together with what is poured of the source itself', () => {
    const withPowder = (dose: string) => [solutionAt('1 mL/L'), { product: 'powder', dose }];
    expect(found(withPowder('0.1 g/L'), { rates })).toEqual([]);
    expect(found(withPowder('0.101 g/L'), { rates })).toEqual(['stop powder']);
  });

  test('where the label of the solution says so already, it is said once', () => {
    const own = { rates: rate('1 mL/L', '2 mL/L') };
    expect(found([solutionAt('3 mL/L')], { rates }, own)).toEqual(['stop solution']);
    expect(found([solutionAt('3 mL/L')], { rates: rate('0.1 g/L', '0.4 g/L') }, own)).toEqual(['stop solution']);
    expect(found([solutionAt('2 mL/L')], { rates: rate('0.05 g/L', '0.1 g/L') }, own)).toEqual(['stop powder']);
  });

  test('what it brings that nobody can say is a warning', () => {
    expect(found([solutionAt('1 mL/L')], { rates }, {}, '20 tsp/L')).toEqual(['warn powder']);
  });

  test('by area it is held against a rate by area', () => {
    // 2 mL/m² of the solution brings 0.2 g/m².
    const byArea = { rates: rate('0.1 g/m2', '0.2 g/m2') };
    expect(found([solutionAt('2 mL/m2')], byArea)).toEqual([]);
    expect(found([solutionAt('2.001 mL/m2')], byArea)).toEqual(['stop powder']);
  });
});

test('the range of pH of the source is held, once', () => {
  const parts = { programs: [solutionOn('2026-03-03')], settings: { water: { alkalinityMgPerLCaCO3: 100, pH: 7.5 } } };
  const flagged = (ofPowder: Fields, ofSolution: Fields = {}) =>
    phOutsideRange(planOf({ ...shopOf(ofPowder, ofSolution), ...parts })).map((flag) => flag.product);
  const sprayPh = { min: 5, max: 7 };
  expect(flagged({ sprayPh })).toEqual(['powder']);
  expect(flagged({ sprayPh }, { sprayPh })).toEqual(['solution']);
  expect(flagged({ sprayPh: { min: 5, max: 7.5 } })).toEqual([]);
});
