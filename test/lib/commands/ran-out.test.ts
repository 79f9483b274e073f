import { expect, test } from 'vitest';
import { type FinishMix, finishMix } from '@/lib/commands/finish-mix';
import { shopFileOf } from '@/lib/data/snapshot';
import { exact } from '@/shared/quantity/exact';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop, today } from './small-shop';

const READY = {
  ...SMALL,
  applications: [],
  programs: SMALL.programs.map((one) => ({ ...one, startsOn: '2026-03-31' })),
} as typeof SMALL;

const MIX: Omit<FinishMix, 'shopId'> = {
  ...{ commandId: '1', recipe: 'r', benches: ['b'], plants: null, startedAt: today(7), endedAt: today(8), by: null },
  ...{ sprayed: exact(2000), leftover: null, leftoverWent: null, conditions: null, pH: null },
  poured: [
    {
      product: 'p',
      from: [
        { lotId: 'l', place: 0, amount: '2 mL', heldMore: false, ranOut: true },
        { lotId: 'm', place: 0, amount: '4 mL', heldMore: false },
      ],
      elsewhere: null,
    },
  ],
  ...{ acid: null, passed: [], plannedCost: null, planned: null },
};

test('a bottle that ran out is empty in the books, the difference is a count, and the parts add up', async () => {
  const shopId = await smallShop(READY);
  const done = await finishMix({ ...MIX, shopId }, CLOCK);
  // 2 of 500 mL for 74.00, and 4 of a bottle of 500 mL for 33.33: what was counted away costs the mix nothing.
  expect(done).toMatchObject({ ok: true, value: { cost: 296_000 + 266_667 } });
  const { lots, applications } = await shopFileOf(shopId);
  expect(lots.find(({ id }) => id === 'l')).toMatchObject({ remaining: '0 mL' });
  expect(applications[0]?.products).toMatchObject([{ product: 'p', amount: '6 mL' }]);
});
