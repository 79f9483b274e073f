import { expect, test } from 'vitest';
import { account } from '@/lib/engine/ledger/account';
import type { Movement } from '@/lib/engine/ledger/movement';
import { priceOfPacks } from '@/shared/measure/price-break';
import { micros, stock } from '@/shared/quantity/amounts';
import { shareByValue } from '@/shared/quantity/rounding';
import { planOf, productFigures, shopWith, sprayingFigures } from '../worked/plan-of';

/*
 * What is used up carries its part of what was paid, against published examples. `seen` was read in a copy of the source;
 * `memory` was recalled and not looked up again. That a draw is rounded at its two ends, so that all draws add up to what
 * was paid, is this program's own definition.
 */

const MICROS = 1_000_000;

/** What each of several draws from one container costs, in whole money, and what is left of its price. */
function drawn(paid: number, size: number, amounts: number[]): { costs: number[]; left: number } {
  const movements = [
    ['supplier', 'container', size] as const,
    ...amounts.map((each) => ['container', 'spray', each] as const),
  ].map(
    ([from, to, amount], at): Movement =>
      ({
        id: String(at),
        kind: at === 0 ? 'received' : 'drawn',
        from,
        to,
        amount: stock(amount),
        occurredAt: at,
        recordedAt: at,
        reverses: null,
      }) as unknown as Movement,
  );
  const { carried, left } = account(micros(paid * MICROS), stock(size), movements);
  return { costs: carried.slice(1).map(({ cost }) => cost / MICROS), left: left / MICROS };
}

const GRAVEL =
  'unit-of-production depreciation of an airport reconstruction, a textbook of engineering economics, issuhub.com/view/index?id=4775&pageIndex=388';

test(`900 less 70 over 40,000 m³: 4,000, 8,000, 16,000, 8,000 and 4,000 cost 83, 166, 332, 166 and 83 (seen, ${GRAVEL})`, () => {
  expect(drawn(830, 40_000, [4_000, 8_000, 16_000, 8_000, 4_000])).toEqual({ costs: [83, 166, 332, 166, 83], left: 0 });
});

// Each from its per-unit figure: 0.40 a ton (steampot.in), 0.22 a ton and 660,000 for 3,000,000 (supercustomessay.com),
// 0.625 a ton (writeessaysformoney.net), 1.80 a unit (bit1024.com), all seen; scaled down a thousandfold.
test.each([
  { cost: 400, units: 1_000, used: 250, carries: 100 },
  { cost: 4_400, units: 20_000, used: 3_000, carries: 660 },
  { cost: 1_250, units: 2_000, used: 1_000, carries: 625 },
  { cost: 900, units: 500, used: 100, carries: 180 },
])(
  'depletion (seen): $used of $units units that cost $cost carry $carries, and leave the rest',
  ({ cost, units, used, carries }) => {
    expect(drawn(cost, units, [used])).toEqual({ costs: [carries], left: cost - carries });
  },
);

const VIRGINIA = 'the first apportionment by Hamilton, electowiki.org, "Hamilton method" of 2020';

test(`60 seats over 15 states (seen, ${VIRGINIA}): what is left over goes to the largest remainders`, () => {
  const people = [
    630560, 475327, 432879, 353523, 331589, 278514, 236841, 206236, 179570, 141822, 85533, 70835, 68705, 68446, 55540,
  ];
  expect(shareByValue(60, people)).toEqual([11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1]);
});

test('10 seats over six parties by the Hare quota are 5, 2, 1, 1, 1 and 0 (memory, the usual example of largest remainders)', () => {
  expect(shareByValue(10, [47_000, 16_000, 15_900, 12_000, 6_000, 3_100])).toEqual([5, 2, 1, 1, 1, 0]);
});

test('7 seats over 50, 30 and 20 people have quotas of 3.5, 2.1 and 1.4, and are 4, 2 and 1 (seen, infinitelexicon.com/largestremainder, its end derived)', () => {
  expect(shareByValue(7, [50, 30, 20])).toEqual([4, 2, 1]);
});

test('a freight of 48 on materials of 600 adds 8 % to each (seen, a textbook of cost accounting)', () => {
  expect(shareByValue(4_800, [10_000, 20_000, 30_000])).toEqual([800, 1_600, 2_400]);
});

// I08 (seen, nursingexpertshelp.com, a worked solution) and I11 (memory, Nahmias, ch. 4): the price that a quantity has.
const I08 = {
  price: micros(53 * MICROS),
  breaks: [
    [50, 51.5],
    [100, 49.5],
    [200, 48],
    [500, 47],
  ] as const,
};
const I11 = {
  price: micros(0.3 * MICROS),
  breaks: [
    [500, 0.29],
    [1000, 0.28],
  ] as const,
};
test.each([
  { id: 'I08', offer: I08, packs: 49, each: 53 },
  { id: 'I08', offer: I08, packs: 50, each: 51.5 },
  { id: 'I08', offer: I08, packs: 199, each: 49.5 },
  { id: 'I08', offer: I08, packs: 200, each: 48 },
  { id: 'I08', offer: I08, packs: 500, each: 47 },
  { id: 'I11', offer: I11, packs: 499, each: 0.3 },
  { id: 'I11', offer: I11, packs: 500, each: 0.29 },
  { id: 'I11', offer: I11, packs: 1000, each: 0.28 },
])('$id: $packs cost $each each', ({ offer: { price, breaks }, packs, each }) => {
  const priced = {
    price,
    breaks: breaks.map(([atLeast, one]) => ({ atLeast, price: micros(Math.round(one * MICROS)) })),
  };
  expect(priceOfPacks(priced, packs)).toBe(Math.round(packs * each * MICROS));
});

type Lots = { lots: [id: string, expiresOn: string, amount: number][]; need: number };

/** What one spraying takes from which lot: by how much less each costs in the end. */
function takenFrom({ lots, need }: Lots) {
  const plan = planOf(
    shopWith({
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
      lots: lots.map(([id, expiresOn, amount]) => ({
        id,
        product: 'p1',
        pack: `${amount} mL`,
        paid: '1.00',
        receivedOn: '2026-01-01',
        expiresOn,
      })),
      benches: [{ id: 'b', name: 'B', plants: [{ name: 'plant', count: 1, mlPerPlant: 1000 }] }],
      recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p1', dose: `${need} mL/L` }] }],
      programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-02-02', startTime: '10:00', minutes: 1 }],
    }),
    '2026-02-02',
    1,
  );
  return plan.sprayings[0]?.lines[0]?.draws.map(({ container, amount }) => [container.lot, amount / 1000]);
}

test('I35 (memory, WHO Good Storage and Distribution Practices, TRS 1025 Annex 7: first expiry, first out): of A, 100 until June, and B, 80 until March, 120 are B 80 and A 40', () => {
  expect(
    takenFrom({
      lots: [
        ['A', '2026-06-01', 100],
        ['B', '2026-03-01', 80],
      ],
      need: 120,
    }),
  ).toEqual([
    ['B', 80],
    ['A', 40],
  ]);
});

test('of batches that expire in 10, 20 and 15 days, the first, the third and the second are used (seen, a glossary of first expired, first out)', () => {
  const lots: Lots['lots'] = [
    ['A', '2026-02-12', 10],
    ['B', '2026-02-22', 10],
    ['C', '2026-02-17', 10],
  ];
  expect(takenFrom({ lots, need: 30 })?.map(([lot]) => lot)).toEqual(['A', 'C', 'B']);
});

test('what expired unused costs what it carried: 830 over 40 L, of which 28 L were used, is 249 of waste (as GRAVEL)', () => {
  const plan = planOf(
    shopWith({
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
      lots: [
        { id: 'l', product: 'p1', pack: '40 L', paid: '830.00', receivedOn: '2026-01-01', expiresOn: '2026-02-04' },
      ],
      benches: [{ id: 'b', name: 'B', plants: [{ name: 'plant', count: 100, mlPerPlant: 100 }] }],
      recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p1', dose: '400 mL/L' }] }],
      // 4, 8 and 16 L of it: one, two and four batches of 10 L.
      programs: [1, 2, 4].flatMap((times, day) =>
        Array.from({ length: times }, (_, at) => ({
          id: `g${day}-${at}`,
          recipes: ['r'],
          benches: ['b'],
          startsOn: `2026-02-0${day + 2}`,
          startTime: '10:00',
          minutes: 1,
        })),
      ),
    }),
    '2026-02-02',
    1,
  );
  expect(sprayingFigures(plan).map(({ materialCost }) => materialCost)).toEqual(
    Array.from({ length: 7 }, () => '83.000000'),
  );
  expect(productFigures(plan, 'p1')).toMatchObject({
    wasteCost: '249.000000',
    weeks: [[28_000, 28_000, 0, 12_000, 0, 0]],
  });
});
