import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { IngredientLine } from '@/lib/engine/ahead/plan';
import { type Demand, walkStock } from '@/lib/engine/ahead/stock-walk';
import { costOut } from '@/lib/engine/ledger/draw-cost';
import type { Container, Product } from '@/lib/engine/shop';
import { micros, stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { addDays, Day, dayNumber } from '@/shared/time/day';

const TODAY = Day.parse('2026-03-02');
const start = dayNumber(TODAY);

const oil = (openedDays: number | null): Product => ({
  id: 'oil',
  name: 'Light oil',
  kind: 'insecticide',
  form: 'liquid',
  formulation: 'EC',
  densityGPerMl: 0.9,
  gramsPerTeaspoon: null,
  contents: [],
  label: {
    rates: [],
    rei: null,
    phiDays: null,
    maxApplicationsPerYear: null,
    minDaysBetween: null,
    modes: [],
    signalWord: null,
    protectiveEquipment: [],
    sprayPh: null,
    doNotMixWith: [],
    registration: null,
    hotAboveC: null,
    firstAid: null,
    storage: null,
  },
  shelfLife: { unopenedDays: null, openedDays },
  mixOrder: null,
  alkaliSilicate: false,
  gtins: [],
  madeFrom: [],
  archived: false,
});

const bottle = (lot: string, product: Product, more: Partial<Container> = {}): Container => ({
  lot,
  place: 0,
  product,
  packText: '1 L',
  size: stock(1_000_000),
  remaining: stock(1_000_000),
  paid: micros(40_000_000),
  receivedOn: addDays(TODAY, -30),
  openedOn: null,
  expiresOn: null,
  keptIn: null,
  order: null,
  offer: null,
  ...more,
});

const ask = (product: Product, inDays: number, amount: number): Demand => ({
  day: start + inDays,
  line: newLine(product, amount),
});

const newLine = (product: Product, amount: number): IngredientLine => ({
  ingredient: { product, dose: { text: '5 mL/L', kind: 'volume', mlPerLitre: exact(5) }, use: null, order: null },
  amount: stock(amount),
  draws: [],
  short: stock(0),
  shortCost: null,
  cost: null,
});

const lots = (demand: Demand | undefined) => demand?.line.draws.map(({ container, amount }) => [container.lot, amount]);

test('the bottle that dies first is drawn first, and the next one takes the rest', () => {
  const product = oil(null);
  const late = bottle('late', product, { expiresOn: addDays(TODAY, 90), remaining: stock(500_000) });
  const soon = bottle('soon', product, { expiresOn: addDays(TODAY, 20), remaining: stock(100_000) });
  const demand = ask(product, 7, 150_000);
  walkStock([late, soon], [demand], TODAY, 4);
  expect(lots(demand)).toEqual([
    ['soon', 100_000],
    ['late', 50_000],
  ]);
});

test('a bottle may still be used on its last day, and is waste the day after', () => {
  const product = oil(null);
  const on = bottle('on', product, { expiresOn: addDays(TODAY, 7) });
  const [atLast, dayAfter] = [ask(product, 7, 1_000), ask(product, 8, 1_000)];
  const walk = walkStock([on], [atLast, dayAfter], TODAY, 4);
  expect(lots(atLast)).toEqual([['on', 1_000]]);
  expect(dayAfter.line).toMatchObject({ draws: [], short: 1_000 });
  expect(walk.wastes).toMatchObject([{ on: addDays(TODAY, 8), amount: 999_000 }]);
  expect(walk.runsOutOn).toBe(addDays(TODAY, 8));
});

test('the first draw opens a bottle, and its opened life begins that day', () => {
  const product = oil(10);
  const shut = bottle('shut', product, { expiresOn: addDays(TODAY, 300) });
  const [first, lastDay, tooLate] = [ask(product, 3, 1_000), ask(product, 13, 1_000), ask(product, 14, 1_000)];
  const walk = walkStock([shut], [first, lastDay, tooLate], TODAY, 4);
  expect(lots(lastDay)).toEqual([['shut', 1_000]]);
  expect(tooLate.line.short).toBe(1_000);
  expect(walk.wastes).toMatchObject([{ on: addDays(TODAY, 14), amount: 998_000 }]);
});

test('a bottle past its day today is on hand, not usable, and waste today', () => {
  const product = oil(null);
  const dead = bottle('dead', product, { expiresOn: addDays(TODAY, -1), remaining: stock(250_000) });
  const walk = walkStock([dead], [], TODAY, 1);
  expect(walk).toMatchObject({
    onHand: 250_000,
    usable: 0,
    wastes: [{ on: TODAY, amount: 250_000, cost: 10_000_000 }],
  });
  expect(walk.weeks).toMatchObject([{ opening: 250_000, wasted: 250_000, closing: 0 }]);
});

test('a bottle on its way counts from the day it comes', () => {
  const product = oil(null);
  const coming = bottle('coming', product, { receivedOn: addDays(TODAY, 9) });
  const [before, after] = [ask(product, 8, 1_000), ask(product, 9, 1_000)];
  const walk = walkStock([coming], [before, after], TODAY, 2);
  expect([before.line.short, after.line.short]).toEqual([1_000, 0]);
  expect(walk.weeks).toMatchObject([
    { opening: 0, received: 0, short: 0 },
    { received: 1_000_000, short: 1_000, used: 1_000, closing: 999_000 },
  ]);
});

test('what was paid for a bottle is unknown: so is what its draws cost, and they are not free', () => {
  const product = oil(null);
  const demand = ask(product, 1, 1_000);
  walkStock([bottle('gift', product, { paid: null })], [demand], TODAY, 1);
  expect(demand.line.draws).toMatchObject([{ amount: 1_000, cost: null }]);
});

const shelf = fc.array(
  fc.record({
    size: fc.integer({ min: 1, max: 400_000 }),
    out: fc.nat(400_000),
    paid: fc.nat(300_000_000),
    received: fc.integer({ min: -60, max: 30 }),
    opened: fc.option(fc.integer({ min: -40, max: 0 }), { nil: null }),
    expires: fc.option(fc.integer({ min: -10, max: 80 }), { nil: null }),
  }),
  { maxLength: 7 },
);
const asked = fc.array(fc.record({ inDays: fc.nat(27), amount: fc.nat(150_000) }), { maxLength: 30 });

test('stock is conserved every week, and money to the micro in every bottle, whatever is asked of the shelf', () => {
  fc.assert(
    fc.property(shelf, asked, fc.option(fc.nat(40), { nil: null }), (bottles, wants, openedDays) => {
      const product = oil(openedDays);
      const containers = bottles.map(({ size, out, paid, received, opened, expires }, index) =>
        bottle(`l${index}`, product, {
          size: stock(size),
          remaining: stock(size - Math.min(out, size)),
          paid: micros(paid),
          receivedOn: addDays(TODAY, received),
          openedOn: opened === null ? null : addDays(TODAY, Math.max(opened, received)),
          expiresOn: expires === null ? null : addDays(TODAY, expires),
        }),
      );
      const demands = [...wants]
        .sort((a, b) => a.inDays - b.inDays)
        .map((want) => ask(product, want.inDays, want.amount));
      const walk = walkStock(containers, demands, TODAY, 4);
      for (const [number, week] of walk.weeks.entries()) {
        expect(week.opening + week.received - week.used - week.wasted).toBe(week.closing);
        expect(week.used + week.short).toBe(week.need);
        expect(week.opening).toBe(walk.weeks[number - 1]?.closing ?? walk.onHand);
      }
      const left = containers.map((one) => expectConserved(one, demands, walk.wastes));
      const here = left.filter((_, index) => (bottles[index]?.received ?? 0) < 28);
      expect(walk.weeks.at(-1)?.closing).toBe(here.reduce((sum, one) => sum + one, 0));
    }),
    { numRuns: 1_500 },
  );
});

/** Checks that spent before + drawn + wasted + what is left at its price = paid, and gives what is left. */
function expectConserved(one: Container, demands: Demand[], wastes: ReturnType<typeof walkStock>['wastes']): number {
  const draws = demands.flatMap(({ line }) => line.draws).filter(({ container }) => container === one);
  const thrown = wastes.filter(({ container }) => container === one);
  const gone = [...draws, ...thrown];
  const left = one.remaining - gone.reduce((sum, { amount }) => sum + amount, 0);
  expect(left).toBeGreaterThanOrEqual(0);
  const paid = micros(one.paid ?? 0);
  const before = costOut(paid, one.size, stock(0), stock(one.size - one.remaining));
  const after = costOut(paid, one.size, stock(one.size - left), one.size);
  expect(before + gone.reduce((sum, { cost }) => sum + (cost ?? 0), 0) + after).toBe(paid);
  return left;
}
