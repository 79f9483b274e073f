import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import type { Flag } from '@/lib/engine/rules/flag';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { sprayingFlags } from '@/lib/views/spraying-flags';
import { Day } from '@/shared/time/day';
import { generatedShop } from '../../bench/generated-shop';
import { parsedOrThrow } from '../data/any-shop-file';

/** A list that counts how often something of it is looked at. */
function counted(list: Flag[]): { flags: Flag[]; looks: () => number } {
  let looks = 0;
  const get = (target: Flag[], key: string | symbol) => {
    if (/^\d+$/.test(String(key))) looks += 1;
    return Reflect.get(target, key);
  };
  return { flags: new Proxy(list, { get }), looks: () => looks };
}

test('the flags of all sprayings are found in one look at each flag', () => {
  const shop = shopOfFile(parsedOrThrow(generatedShop({ products: 12, programs: 6, benches: 4 })));
  const plan = planAhead(shop, Day.parse('2026-03-02'), 8);
  const { flags, looks } = counted(plan.flags);
  let found = 0;
  for (const spraying of plan.sprayings) {
    const its = sprayingFlags({ flags }, spraying);
    expect(its).toEqual(
      plan.flags.filter(({ program, on }) => program === spraying.program.id && on === spraying.date),
    );
    found += its.length;
  }
  expect(found).toBeGreaterThan(plan.sprayings.length);
  expect(looks()).toBe(plan.flags.length);
});
