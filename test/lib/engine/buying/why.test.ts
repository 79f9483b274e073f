import { expect, test } from 'vitest';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { whyOf } from '@/lib/engine/buying/why';
import { whyInWords } from '@/lib/engine/buying/why-in-words';
import { highsSolver } from '@/lib/solver/highs';
import { Day } from '@/shared/time/day';
import { planOf, shopWith, type Written } from '../../../worked/plan-of';

const TODAY = Day.parse('2026-03-02');

type Offered = {
  product?: string;
  pack: string;
  price: string;
  supplier?: string;
  leadDays?: number;
  breaks?: { atLeast: number; price: string }[];
};

/** Ten litres with 1 % of each product on 20 Mondays: 2 L of each in all. */
async function reasonsIn(
  offers: Offered[],
  seller: object = {},
  openedDays = 60,
  lots: Written['lots'] = [],
): Promise<string[]> {
  const products = ['p', 'q'].filter((id) => id === 'p' || offers.some(({ product }) => product === id));
  const { shop } = planOf(
    shopWith({
      shop: { capitalPerYear: 0 },
      suppliers: [{ id: 's', name: 'Seller', freightPerOrder: '0', ...seller }],
      products: products.map((id) => ({
        ...{
          id,
          name: id.toUpperCase(),
          kind: 'nutrient' as const,
          form: 'liquid' as const,
          shelfLife: { openedDays },
        },
      })),
      lots,
      offers: offers.map((one, at) => ({ id: `o${at}`, supplier: 's', product: 'p', leadDays: 2, ...one })),
      benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'plants', count: 100, mlPerPlant: 100 }] }],
      recipes: [{ id: 'r', name: 'R', ingredients: products.map((product) => ({ product, dose: '10 mL/L' })) }],
      programs: [
        {
          ...{
            id: 'g',
            recipes: ['r'],
            benches: ['b'],
            startsOn: '2026-03-09',
            endsOn: '2026-07-20',
            startTime: '08:00',
          },
          ...{ minutes: 10, repeat: 'FREQ=WEEKLY;BYDAY=MO' },
        },
      ],
    }),
    TODAY,
    52,
  );
  const solver = await highsSolver({ secondsLeft: () => 30, told: () => {} });
  const plan = purchasePlanOf(shop, TODAY, 52, solver);
  return whyOf(plan).flatMap((one) =>
    one.reasons.map((reason) => `${one.line.offer.id}: ${whyInWords(one, reason, TODAY, 'USD')}`),
  );
}

test('the larger pack is cheaper per mL, and so much of it would die', async () => {
  const said = await reasonsIn([
    { pack: '500 mL', price: '20.00' },
    { pack: '4 L', price: '140.00' },
  ]);
  // Opened on 9 March it keeps to 8 May: nine sprayings of 100 mL, and 3.1 of 4 L die on the day after.
  expect(said[0]).toBe('o0: The 4 L of Seller is cheaper per mL, but 78 % of it would die on Saturday 9 May.');
});

test('the other pack costs more per mL, or nothing else is offered', async () => {
  const said = await reasonsIn([
    { pack: '500 mL', price: '20.00' },
    { pack: '250 mL', price: '15.00' },
  ]);
  expect(said[0]).toBe('o0: The 250 mL of Seller costs 1.5 times as much per mL.');
  expect((await reasonsIn([{ pack: '500 mL', price: '20.00' }]))[0]).toBe('o0: It is the only pack that is offered.');
});

test('what comes too late, and what is late itself', async () => {
  const said = await reasonsIn([
    { pack: '500 mL', price: '20.00', leadDays: 3 },
    { pack: '500 mL', price: '15.00', leadDays: 15 },
  ]);
  expect(said).toContain('o0: The 500 mL of Seller would not be here in time for Monday 9 March.');
  const late = await reasonsIn([{ pack: '500 mL', price: '20.00', leadDays: 15 }]);
  expect(late).toContain('o0: It is needed on Monday 9 March, which no order reaches any more: order it today.');
});

test('a price by quantity, and an order that is shared', async () => {
  const breaks = [{ atLeast: 4, price: '12.00' }];
  const said = await reasonsIn([{ pack: '500 mL', price: '20.00', breaks }], {}, 365);
  expect(said).toContain('o0: From 4 packs on each costs less.');
  // Of q there is half a litre on the shelf, so that it could wait five weeks; its order would cost 30 by itself.
  const shared = await reasonsIn(
    [
      { pack: '700 mL', price: '20.00' },
      { product: 'q', pack: '500 mL', price: '20.00' },
    ],
    { freightPerOrder: '30.00' },
    365,
    [{ id: 'l', product: 'q', pack: '500 mL', paid: '20.00', receivedOn: '2026-03-01' }],
  );
  expect(shared).toContain('o1: It could wait until Thursday 9 April, but comes in one order with P.');
});

test('what is only bought to make an order large enough could not wait, and is said to stay shut', async () => {
  const said = await reasonsIn(
    [
      { pack: '2 L', price: '50.00' },
      { product: 'q', pack: '2 L', price: '50.00' },
      { pack: '100 mL', price: '6.00' },
    ],
    { freightPerOrder: '30.00', freeFreightOver: '105.00' },
    365,
  );
  expect(said.filter((one) => one.startsWith('o2'))).toEqual([
    'o2: With it the order is worth $105.00, and its freight is free.',
    'o2: 1 pack would still be shut at the end of these weeks.',
  ]);
});
