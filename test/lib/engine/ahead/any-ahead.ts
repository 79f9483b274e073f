import fc from 'fast-check';
import type { Plan } from '@/lib/engine/ahead/plan';
import { Day } from '@/shared/time/day';
import { planOf, shopWith, type Written } from '../../../worked/plan-of';

/** A Tuesday. */
export const TODAY = Day.parse('2026-03-03');
export const WEEKS = 8;

const PRODUCTS = ['a', 'b', 'c'];
const BENCHES = ['north', 'south'];

const day = (from: number, to: number) =>
  fc.integer({ min: from, max: to }).map((days) => {
    const time = Date.UTC(2026, 2, 3) + days * 86_400_000;
    return new Date(time).toISOString().slice(0, 10);
  });

const money = fc.integer({ min: 100, max: 30_000 }).map((cents) => (cents / 100).toFixed(2));

const lot = fc.record({
  product: fc.constantFrom(...PRODUCTS),
  pack: fc.constantFrom('250 mL', '500 mL', '1 L'),
  count: fc.integer({ min: 1, max: 3 }),
  paid: fc.option(money, { nil: null }),
  receivedOn: day(-90, 0),
});

/** The same, with a last day, and perhaps not there yet. */
const dyingLot = fc.tuple(lot, day(-90, 25), day(-5, 70)).map(([one, receivedOn, expiresOn]) => ({
  ...one,
  receivedOn,
  expiresOn: expiresOn > receivedOn ? expiresOn : null,
}));

const offer = fc.record({
  product: fc.constantFrom(...PRODUCTS),
  pack: fc.constantFrom('500 mL', '1 L', '1 gal'),
  price: money,
  leadDays: fc.option(fc.integer({ min: 0, max: 12 }), { nil: null }),
});

const program = fc.record({
  recipes: fc.uniqueArray(fc.constantFrom('r1', 'r2'), { minLength: 1 }),
  benches: fc.uniqueArray(fc.constantFrom(...BENCHES), { minLength: 1 }),
  startsOn: day(-40, 20),
  repeat: fc.constantFrom('FREQ=WEEKLY;BYDAY=TU', 'FREQ=DAILY;INTERVAL=3', 'FREQ=WEEKLY;BYDAY=MO,TH', null),
});

const ingredients = fc
  .uniqueArray(fc.constantFrom(...PRODUCTS), { minLength: 1 })
  .chain((products) =>
    fc.tuple(
      ...products.map((product) => fc.constantFrom('2 mL/L', '5 mL/L', '0.7 mL/L').map((dose) => ({ product, dose }))),
    ),
  );

/** Whether bottles of a shop die, be it by a printed day or once opened; then some arrive in the weeks ahead, too. */
type Lives = { dying: boolean };

/** A small shop of three liquids in bottles, sprayed by up to three programs on two benches, as somebody may write it. */
const anyShop = ({ dying }: Lives): fc.Arbitrary<Written> =>
  fc
    .record({
      lots: fc.array(dying ? dyingLot : lot, { maxLength: 6 }),
      offers: fc.array(offer, { maxLength: 5 }),
      programs: fc.array(program, { minLength: 1, maxLength: 3 }),
      recipes: fc.tuple(ingredients, ingredients),
      openedDays: dying ? fc.option(fc.integer({ min: 1, max: 30 }), { nil: null }) : fc.constant(null),
    })
    .map(({ lots, offers, programs, recipes, openedDays }) =>
      shopWith({
        shop: { wagePerHour: '18.00', safetyDays: 3 },
        suppliers: [{ id: 's', name: 'Mill' }],
        products: PRODUCTS.map((id) => ({
          ...{ id, name: id, kind: 'other' as const, form: 'liquid' as const },
          shelfLife: { unopenedDays: null, openedDays },
        })),
        lots: lots.map((one, at) => ({ id: `l${at}`, ...one })),
        offers: offers.map((one, at) => ({ id: `o${at}`, supplier: 's', ...one })),
        benches: BENCHES.map((id, at) => ({
          id,
          name: id,
          plants: [{ name: 'fern', count: 30 + 50 * at, mlPerPlant: 25 }],
        })),
        recipes: recipes.map((of, at) => ({ id: `r${at + 1}`, name: `Mix ${at + 1}`, ingredients: of })),
        programs: programs.map((one, at) => ({ id: `g${at}`, startTime: '17:30', minutes: 30, ...one })),
      }),
    );

/** The weeks ahead of any such shop. */
export const anyPlan = (lives: Lives): fc.Arbitrary<Plan> => anyShop(lives).map((file) => planOf(file, TODAY, WEEKS));
