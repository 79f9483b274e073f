import { expect, test } from 'vitest';
import { AMOUNT_RULES, amountStop, expiredStop } from '@/shared/mix/amount-stop';
import { finishBodyOf } from '@/shared/mix/finish-body';
import { afterwards } from '@/shared/mix/mix-action';
import { beginMix } from '@/shared/mix/mix-progress';
import { PLAN } from './a-plan';

/* The sheet has 40 mL of oil for a fill; where the label limits it, to 60 mL. */

const limited = (most: number | null) => ({
  ...PLAN,
  pours: PLAN.pours.map((pour) => (pour.product === 'oil' ? { ...pour, most } : pour)),
});
const typed = (amount: string, most: number | null = null) =>
  amountStop(beginMix(limited(most), 'a'.repeat(32), 0), 'oil', [{ bottle: null, amount, heldMore: false }]);

test('ten times the dose is a stop before it is in the tank, and so is what the label does not allow', () => {
  expect(typed('400 mL')).toMatchObject({ rule: AMOUNT_RULES.sheet });
  expect(typed('400 mL')?.messages.join()).toContain('10 times what the sheet has');
  expect(typed('4 mL')).toMatchObject({ rule: AMOUNT_RULES.sheet });
  expect(typed('400 mL', 60_000)).toMatchObject({ rule: AMOUNT_RULES.label });
  expect(typed('61 mL', 60_000)?.messages.join()).toContain('the label allows 60 mL in a fill at most');
});

test('what is measured as the sheet has it, or nearly, or cannot be read yet, is no stop', () => {
  expect([typed('40 mL'), typed('42 mL'), typed('60 mL', 60_000), typed('', 60_000), typed('40 spoons')]).toEqual(
    Array(5).fill(null),
  );
});

test('the reason for it goes into the record', () => {
  const stop = typed('400 mL', 60_000);
  if (!stop) throw new Error('no stop');
  const asked = afterwards(beginMix(limited(60_000), 'a'.repeat(32), 0), { do: 'ask', stops: [stop] });
  const without = finishBodyOf(asked);
  expect(without.ok ? [] : without.faults.map(({ path }) => path)).toContain('passed.dose-outside-label');
});

test('a bottle past its last day is a stop that wants a reason', () => {
  const products = PLAN.products.map((product) => ({
    ...product,
    bottles: product.bottles.map((bottle, at) => ({ ...bottle, expired: at === 0 ? '3 January' : null })),
  }));
  const mix = beginMix({ ...PLAN, products }, 'a'.repeat(32), 0);
  const from = (place: number) => [{ bottle: { lotId: 'o', place }, amount: '40 mL', heldMore: false }];
  expect(expiredStop(mix, 'oil', from(0))?.messages.join()).toContain('is past its last day, 3 January');
  expect(expiredStop(mix, 'oil', from(1))).toBeNull();
});
