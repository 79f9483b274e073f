import { expect, test } from 'vitest';
import { drawStock } from '@/lib/commands/draw-stock';
import { type FinishMix, finishMix } from '@/lib/commands/finish-mix';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { fingerprint } from '@/lib/data/fingerprint';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { plannedCost } from '@/lib/views/planned-cost';
import { stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { SMALL, smallShop, today } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

/** The small shop with an open bench, and a recipe of a liquid and a powder that is not on the shelf. */
const ready = () =>
  smallShop({
    ...SMALL,
    applications: SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z', sprayed: '2 L' })),
  });

const pour = (lotId: string, amount: string, heldMore = false) => [
  { product: 'p', from: [{ lotId, place: 0, amount, heldMore }], elsewhere: null },
];

/** 2 L by the recipe take 6.34 mL, which the sheet would take out of the bottle that cost 74.00 for 500 mL. */
const MIX: Omit<FinishMix, 'shopId'> = {
  ...{ commandId: 'mix', recipe: 'r', benches: ['b'], plants: null, startedAt: today(7), endedAt: today(8), by: null },
  ...{ sprayed: exact(2000), leftover: null, leftoverWent: null, conditions: null, pH: null },
  ...{ poured: pour('m', '6 mL'), acid: null, passed: [], plannedCost: '0.94', planned: null },
};

async function mixed(shopId: string, change: Partial<FinishMix> = {}): Promise<string> {
  const finished = await finishMix({ ...MIX, ...change, shopId }, CLOCK);
  if (!finished.ok) throw new Error(JSON.stringify(finished.refusal));
  return finished.value.application;
}

async function plannedFor(shopId: string, application: string) {
  const shop = shopOfFile(await shopFileOf(shopId));
  const record = shop.applications.find(({ id }) => id === application);
  if (!record) throw new Error('there is no such record');
  return plannedCost({ id: shopId, shop }, record);
}

const AS_THEN = { lines: [{ product: { id: 'p', name: 'Soap' }, micros: 938_320 }], material: 938_320, isAsSaid: true };

test('what a mix was to cost by line is told from the bottles and the recipe as they were, whatever happened since', async () => {
  const shopId = await ready();
  const application = await mixed(shopId);
  expect(await plannedFor(shopId, application)).toEqual(AS_THEN);

  await drawStock({ commandId: 'd', shopId, lot: 'l', place: 0, amount: stock(499_000), drawnAt: today(9) }, CLOCK);
  const file = await shopFileOf(shopId);
  const recipes = file.recipes.map((recipe) => ({
    ...recipe,
    ingredients: recipe.ingredients.map((one) => ({ ...one, dose: '40 mL/gal' })),
  }));
  const changed = { ...file, recipes };
  const imported = await importShopFile(
    { commandId: 'i', file: changed, into: { shopId, fingerprint: fingerprint(file) } },
    CLOCK,
  );
  expect(imported).toMatchObject({ ok: true });
  expect(await plannedFor(shopId, application)).toEqual(AS_THEN);
});

test('lines that do not add up to what the sheet said are not taken for its lines', async () => {
  const shopId = await ready();
  expect(await plannedFor(shopId, await mixed(shopId, { plannedCost: '0.95' }))).toEqual({
    ...AS_THEN,
    isAsSaid: false,
  });
  const unsaid = await mixed(shopId, {
    ...{ commandId: 'second', plannedCost: null, poured: pour('m', '6 mL') },
    passed: [{ rule: 'bench-closed', reason: 'a test' }],
  });
  expect(await plannedFor(shopId, unsaid)).toMatchObject({ isAsSaid: false });
});

test('a bottle that was counted up because it held more stood there with less', async () => {
  const shopId = await ready();
  await drawStock({ commandId: 'd', shopId, lot: 'l', place: 0, amount: stock(497_000), drawnAt: today(6) }, CLOCK);
  const application = await mixed(shopId, { poured: pour('l', '6.34 mL', true) });
  // 3 mL at 0.148, and 3.34 mL at 33.333334 for 500 mL out of the first of the others.
  expect(await plannedFor(shopId, application)).toMatchObject({ material: 444_000 + 222_667, isAsSaid: false });
});

test('of a record out of a file nobody can tell what was planned', async () => {
  expect(await plannedFor(await ready(), 'a')).toBeNull();
});
