import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { batchFor } from '@/lib/engine/mix/batch';
import { mixSheet } from '@/lib/engine/mix/mix-sheet';
import { offerCostOf } from '@/lib/engine/mix/offer-cost';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { exact } from '@/shared/quantity/exact';
import { Day } from '@/shared/time/day';

const today = Day.parse('2026-03-03');
const demo = shopOfFile(demoShop(today));

function sheetOf(shop: Shop, id: string, ml = 10_000n) {
  const recipe = shop.recipes.find((one) => one.id === id);
  const batch = batchFor({ kind: 'volume', ml: exact(ml), area: null }, null);
  if (!recipe || !batch.ok) throw new Error('the demo has no such recipe');
  return mixSheet(shop, recipe, batch.value, today);
}

test('a batch at the cheapest offers is what it would cost a shop with nothing on the shelf', () => {
  const bare = { ...demo, containers: [] };
  for (const { id } of demo.recipes) {
    const [full, none] = [sheetOf(demo, id), sheetOf(bare, id)];
    const { lines, material, perLitre, perPlant } = offerCostOf(demo, full);
    expect(lines.map(({ cost }) => cost)).toEqual(none.steps.map(({ line }) => line.shortCost));
    expect({ material, perLitre, perPlant }).toEqual({
      ...{ material: none.cost.material, perLitre: none.cost.perLitre, perPlant: none.cost.perPlant },
    });
  }
});

test('each line takes the price per unit of the offer that is cheapest today, and never that of the bottle', () => {
  const citric = demo.products.find(({ id }) => id === 'citric-acid');
  const sheet = sheetOf(demo, 'thrips-turn');
  const at = sheet.steps.findIndex(({ ingredient }) => ingredient.product === citric);
  const { lines } = offerCostOf(demo, sheet);
  // 2 g, of 5 lb (2267.96185 g) at $29.00; the bottle is of 1 lb at $8.95.
  expect(lines[at]).toMatchObject({
    price: { offer: { packText: '5 lb' } },
    cost: Math.round((2 / 2267.96185) * 29e6),
  });
  expect(sheet.steps[at]?.line.cost).toBe(Math.round((2 / 453.592) * 8.95e6));
});

test('without an offer for one of its products the whole is not known, and the other lines are', () => {
  const offers = demo.offers.filter(({ product }) => product.id !== 'citric-acid');
  const { lines, material, perLitre } = offerCostOf({ offers }, sheetOf(demo, 'thrips-turn'));
  expect({ material, perLitre }).toEqual({ material: null, perLitre: null });
  expect(lines.filter(({ cost }) => cost === null)).toMatchObject([{ price: { unit: null, offer: null }, cost: null }]);
});
