import { expect, test } from 'vitest';
import { seasonCost, seasonOf } from '@/lib/engine/equivalents/season';
import type { Offer } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { highsSolver } from '@/lib/solver/highs';
import { Day } from '@/shared/time/day';
import { generatedShop } from '../../../bench/generated-shop';
import { parsedOrThrow } from '../../data/any-shop-file';

test('the offers of a shop are gone through once, however many products are compared', async () => {
  const shop = shopOfFile(parsedOrThrow(generatedShop({ products: 12, programs: 1, benches: 3 })));
  let looks = 0;
  const offers = new Proxy(shop.offers, {
    get(list: Offer[], key) {
      if (/^\d+$/.test(String(key))) looks += 1;
      return Reflect.get(list, key);
    },
  });
  const [recipe] = shop.recipes;
  const [ingredient] = recipe?.ingredients ?? [];
  if (!recipe || !ingredient) throw new Error('there is no recipe to compare');
  const season = seasonOf({ ...shop, offers }, recipe, Day.parse('2026-03-02'), 4);
  const solver = await highsSolver({ secondsLeft: () => 60, told: () => {} });
  for (const product of shop.products) {
    const cost = seasonCost(season, { ...ingredient, product }, solver);
    const named = cost?.packs.map(({ offer }) => offer.product);
    expect(named?.length).toBeGreaterThan(0);
    expect(new Set(named)).toEqual(new Set([product]));
  }
  expect(looks).toBe(shop.offers.length);
});
