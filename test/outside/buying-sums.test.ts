import { describe, expect, test } from 'vitest';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { equivalentsOf } from '@/lib/engine/equivalents/equivalents';
import { equivalentsDocument } from '@/lib/engine/equivalents/equivalents-document';
import { AT_ONCE } from '@/lib/solver/at-once';
import { highsSolver } from '@/lib/solver/highs';
import { Day } from '@/shared/time/day';
import { planOf, shopWith, type Written } from '../worked/plan-of';
import { printedAs } from './published';

/*
 * What a purchase comes to, against published figures. `seen` was read in a copy of the source; `memory` was recalled and
 * not looked up again; `computed` was worked out apart from this program, from its contract.
 */

/** 2 March 2026, a Monday. */
const TODAY = Day.parse('2026-03-02');

type Asked = {
  offers: Written['offers'];
  repeat: string | null;
  startsOn: string;
  dose: string;
  openedDays?: number | null;
};
type Terms = { shop?: object; supplier?: object; weeks?: number };

/** What is bought from an empty shelf for sprayings of 10 L. */
function bought(
  { offers = [], repeat, startsOn, dose, openedDays = null }: Asked,
  { shop = {}, supplier = {}, weeks = 52 }: Terms = {},
) {
  const plan = planOf(
    shopWith({
      shop: { capitalPerYear: 0, ...shop },
      suppliers: [{ id: 's', name: 'S', freightPerOrder: '0', ...supplier }],
      products: [{ id: 'p', name: 'P', kind: 'nutrient', form: 'liquid', shelfLife: { openedDays } }],
      offers,
      benches: [{ id: 'b', name: 'B', plants: [{ name: 'plants', count: 100, mlPerPlant: 100 }] }],
      recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p', dose }] }],
      programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn, repeat, startTime: '08:00', minutes: 10 }],
    }),
    TODAY,
    weeks,
  );
  return buyDocument(purchasePlanOf(plan.shop, TODAY, weeks, AT_ONCE)).cost;
}

const pack = (id: string, size: string, price: string) => ({
  id,
  supplier: 's',
  product: 'p',
  pack: size,
  price,
  leadDays: 0,
});
const SMALL = pack('small', '500 mL', '40.00');
const LARGE = pack('large', '2 L', '110.00');
const EACH_MONDAY = { repeat: 'FREQ=WEEKLY;BYDAY=MO', startsOn: '2026-03-09', dose: '12 mL/L', openedDays: 30 };

// 120 mL on 51 Mondays, opened life 30 days, no freight, no capital cost.
test.each([
  { offers: [SMALL], total: '489.600000', waste: '0.000000' },
  { offers: [LARGE], total: '1187.806593', waste: '770.000000' },
  { offers: [SMALL, LARGE], total: '489.600000', waste: '0.000000' },
])('a year of a product of 30 days costs $total (computed)', ({ offers, total, waste }) => {
  expect(bought({ ...EACH_MONDAY, offers })).toMatchObject({ total, ofWhichWaste: waste });
});

describe('money tied up: principal × rate × days ÷ 365', () => {
  /** A pack that is ordered today and used up so many days later, from somebody who takes orders on Mondays alone. */
  const interest = (price: string, rate: number, weeksAhead: number, safetyDays: number) => {
    const mondays = { supplier: { workingDays: ['mon'] }, shop: { capitalPerYear: rate, safetyDays }, weeks: 12 };
    const startsOn = new Date(Date.parse('2026-03-02') + (7 * weeksAhead + safetyDays) * 86_400_000)
      .toISOString()
      .slice(0, 10);
    const offers = [{ ...pack('o', '100 mL', price), leadDays: weeksAhead }];
    return Number(bought({ offers, repeat: null, startsOn, dose: '10 mL/L' }, mondays).capital);
  };

  test('1,800 at 8 % for 51 days are 20.12 of exact interest (seen, ipracticemath.com/learn/consumermath/simple-interest-example)', () => {
    printedAs(interest('1800.00', 0.08, 7, 2), '20.12');
  });
  test('15,000 at 6 % for 72 days are 180.00 by a year of 360 days (seen, as above), so 177.53 by one of 365', () => {
    const ours = interest('15000.00', 0.06, 10, 2);
    printedAs((ours * 365) / 360, '180.00');
    printedAs(ours, '177.53');
  });
});

test('freight is paid with each order: 12 orders at 4.95 are 59.40 (common practice, no source)', () => {
  const monthly = {
    offers: [pack('o', '100 mL', '10.00')],
    repeat: 'FREQ=WEEKLY;INTERVAL=4',
    startsOn: '2026-03-02',
    dose: '10 mL/L',
    openedDays: 0,
  };
  const cost = bought(monthly, { supplier: { freightPerOrder: '4.95' }, shop: { capitalPerYear: 10 }, weeks: 48 });
  expect(cost).toMatchObject({ packs: '120.000000', freight: '59.400000', total: '179.400000' });
});

const active = (amount: number) => [{ substance: 'active', amount, basis: 'g/L' as const }];
const allowed = { rates: [{ use: 'foliar', min: null, max: '900 mL/L' }], reiHours: 4 };

/** Two products with one active, side by side in a recipe that is sprayed each Monday. */
function compared(
  first: { strength: number; dose: string },
  second: { strength: number },
  offers: Written['offers'],
  weeks: number,
  times: number,
) {
  const liquid = {
    kind: 'insecticide' as const,
    form: 'liquid' as const,
    label: allowed,
    shelfLife: { openedDays: 7 * weeks - 1 },
  };
  const { shop } = planOf(
    shopWith({
      shop: { capitalPerYear: 0 },
      suppliers: [{ id: 's', name: 'S', freightPerOrder: '0' }],
      products: [
        { ...liquid, id: 'a', name: 'A', contents: active(first.strength) },
        { ...liquid, id: 'b', name: 'B', contents: active(second.strength) },
      ],
      offers,
      benches: [{ id: 'b1', name: 'B', plants: [{ name: 'plants', count: 100, mlPerPlant: 10 }] }],
      recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'a', dose: first.dose, use: 'foliar' }] }],
      programs: [
        {
          id: 'g',
          recipes: ['r'],
          benches: ['b1'],
          startsOn: TODAY,
          repeat: `FREQ=WEEKLY;COUNT=${times}`,
          startTime: '08:00',
          minutes: 10,
        },
      ],
    }),
    TODAY,
    weeks,
  );
  const [recipe] = shop.recipes;
  const [product] = shop.products;
  if (!recipe || !product) throw new Error('there is a recipe');
  const solver = highsSolver({ secondsLeft: () => 60, told: () => {} });
  return solver.then((one) => {
    const found = equivalentsOf(shop, { recipe, product }, { today: TODAY, weeks }, one);
    if (!found) throw new Error('there is something to compare');
    return equivalentsDocument(found);
  });
}

const offer = (id: string, product: string, size: string, price: string) => ({
  id,
  supplier: 's',
  product,
  pack: size,
  price,
  leadDays: 0,
});

test('skis that cost ten days of rent are the cheaper after ten days (memory, the ski-rental problem, Karp 1992)', async () => {
  // Rent is a pack for each spraying, the skis are a pack for the season; five days are planned.
  const offers = [offer('rent', 'a', '10 mL', '1.00'), offer('skis', 'b', '1 L', '10.00')];
  const { candidates, best, breakEven } = await compared(
    { strength: 10, dose: '10 mL/L' },
    { strength: 10 },
    offers,
    6,
    5,
  );
  expect(candidates.map(({ seasonCost }) => seasonCost)).toEqual(['5.000000', '10.000000']);
  expect(best).toBe('a');
  const [flip] = breakEven;
  // A litre a day: on the tenth day both cost ten, and with a little more an eleventh pack is begun.
  expect(breakEven).toHaveLength(1);
  expect((flip?.seasonMl ?? 0) / 1000).toBeGreaterThan(10);
  expect((flip?.seasonMl ?? 0) / 1000).toBeLessThan(10.1);
});

test('a unit price is price ÷ quantity (memory, NIST Handbook 130, Uniform Unit Pricing Regulation), per gram and per litre, too', async () => {
  // 25.00 for a litre of 100 g/L is 0.25 a gram; 40 mL/L of it are 1.00 in a litre of spray. Of 50 g/L it takes twice as much.
  const offers = [offer('oa', 'a', '1 L', '25.00'), offer('ob', 'b', '500 mL', '10.00')];
  const { mgPerL, candidates } = await compared({ strength: 100, dose: '40 mL/L' }, { strength: 50 }, offers, 6, 5);
  expect(mgPerL).toBe(4000);
  expect(candidates.map(({ dose, costPerGram, costPerLitre }) => [dose, costPerGram, costPerLitre])).toEqual([
    [40, '0.250000', '1.000000'],
    [80, '0.400000', '1.600000'],
  ]);
});
