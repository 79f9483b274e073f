import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { amountStored, storedAddress, storedNow } from '@/lib/engine/working/store-figures';
import { workingOf } from '@/lib/engine/working/working';
import { Day } from '@/shared/time/day';
import { parsedOrThrow } from '../../data/any-shop-file';

test('what stands at each place opens to the containers there, and all places hold what the shelf holds', () => {
  const today = Day.parse('2026-03-31');
  const plan = planAhead(shopOfFile(parsedOrThrow(demoShop(today))), today, 4);
  const stored = storedNow(plan);
  expect(stored.length).toBeGreaterThan(10);
  for (const one of stored) {
    const working = workingOf({ plan, benches: [], now: 0 as never }, storedAddress(one));
    expect(working?.value).toEqual({ kind: 'stock', amount: amountStored(one), form: one.product.form });
    expect(working?.steps).toHaveLength(one.containers.length);
  }
  const all = plan.shop.containers.filter(({ remaining, receivedOn }) => remaining > 0 && receivedOn <= today);
  const sum = (amounts: number[]) => amounts.reduce((total, amount) => total + amount, 0);
  expect(sum(stored.map(amountStored))).toBe(sum(all.map(({ remaining }) => remaining)));
});
