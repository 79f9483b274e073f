import { expect, test } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { type RemoveFromShop, removeFromShop } from '@/lib/commands/remove-from-shop';
import { fingerprint } from '@/lib/data/fingerprint';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { explain } from '@/shared/outcome';
import { Day } from '@/shared/time/day';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop } from './small-shop';

const remove = (shopId: string, what: RemoveFromShop['what'], id: string, commandId: string = newId()) =>
  removeFromShop({ commandId, shopId, what, id }, CLOCK);

async function whereUsed(shopId: string, what: RemoveFromShop['what'], id: string): Promise<string[]> {
  const outcome = await remove(shopId, what, id);
  if (outcome.ok || outcome.refusal.code !== 'in-use') throw new Error(JSON.stringify(outcome));
  return outcome.refusal.where;
}

test('what was entered by mistake and never used is removed, once, and the others keep their order', async () => {
  const shopId = await smallShop();
  const plain = (id: string) => ({ id, name: id, kind: 'other', form: 'powder' }) as const;
  const part = { products: ['x', 'y', 'z'].map(plain) };
  await changeShop({ commandId: newId(), shopId, part }, CLOCK);
  const first = await remove(shopId, 'product', 'x', 'twice');
  expect(first).toEqual({ ok: true, value: { name: 'x' } });
  expect(await remove(shopId, 'product', 'x', 'twice')).toEqual(first);
  expect(await remove(shopId, 'product', 'x')).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
  await changeShop({ commandId: newId(), shopId, part: { products: [plain('w')] } }, CLOCK);
  expect((await shopFileOf(shopId)).products.map(({ id }) => id)).toEqual(['p', 'q', 'y', 'z', 'w']);
});

test('a product with contents and rates leaves nothing of them behind', async () => {
  const shopId = await smallShop();
  const oil = {
    ...({ id: 'x', name: 'Oil', kind: 'insecticide', form: 'liquid' } as const),
    contents: [{ substance: 'oil', amount: 98, basis: '% v/v' as const }],
    label: { rates: [{ use: 'ferns', min: '5 mL/L' }] },
  };
  const before = await shopFileOf(shopId);
  await changeShop({ commandId: newId(), shopId, part: { products: [oil] } }, CLOCK);
  expect((await remove(shopId, 'product', 'x')).ok).toBe(true);
  expect(await shopFileOf(shopId)).toEqual(before);
  await changeShop({ commandId: newId(), shopId, part: { products: [{ ...oil, contents: [], label: {} }] } }, CLOCK);
  expect((await shopFileOf(shopId)).products.at(-1)).toMatchObject({ contents: [], label: { rates: [] } });
});

test('a product in use stays, and where it is used is said', async () => {
  const shopId = await smallShop();
  const doNotMixWith = ['SOAP'];
  const sulfur = { ...SMALL.products[1], id: 'q', name: 'Sulfur', kind: 'fungicide', form: 'powder' } as const;
  await changeShop({ commandId: newId(), shopId, part: { products: [{ ...sulfur, label: { doNotMixWith } }] } }, CLOCK);
  expect(await whereUsed(shopId, 'product', 'p')).toEqual([
    'recipe Recipe',
    'lots l (500 mL), m (500 mL)',
    'offer 500 mL of Soap from Supplier',
    'record of spraying on 2026-02-24',
    'must-not-mix of Sulfur',
  ]);
  const refused = await remove(shopId, 'product', 'p');
  expect(refused.ok ? '' : explain(refused.refusal)).toMatch(/^This product is in use and stays: recipe Recipe; /);
  expect((await shopFileOf(shopId)).products).toHaveLength(2);
});

test('a supplier of an offer stays, and an offer always does: its prices are history', async () => {
  const shopId = await smallShop();
  expect(await whereUsed(shopId, 'supplier', 's')).toEqual(['offer 500 mL of Soap from Supplier']);
  expect(await whereUsed(shopId, 'offer', 'o')).toEqual(['its prices, which are history and stay']);
  await changeShop({ commandId: newId(), shopId, part: { suppliers: [{ id: 't', name: 'Twice' }] } }, CLOCK);
  expect(await remove(shopId, 'supplier', 't')).toEqual({ ok: true, value: { name: 'Twice' } });
  expect(await remove(shopId, 'supplier', 't')).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
});

test('a product that only an earlier version of a recipe had stays', async () => {
  // Without a missed spraying, whose bench a mix with an unknown interval would close.
  const shopId = await smallShop({ ...SMALL, programs: [] });
  const recipe = { id: 'r', name: 'Recipe' };
  const lines = (product: string) => ({ recipes: [{ ...recipe, ingredients: [{ product, dose: '2 g/L' }] }] });
  await changeShop({ commandId: newId(), shopId, part: lines('q') }, CLOCK);
  const back = { recipes: [{ ...recipe, ingredients: [{ product: 'p', dose: '12 mL/gal' }] }] };
  await changeShop({ commandId: newId(), shopId, part: back }, CLOCK);
  expect(await whereUsed(shopId, 'product', 'q')).toEqual(['an earlier version of a recipe']);
});

test('a product that is put away can be taken out again, and recipes with it are planned all the same', async () => {
  const shopId = await smallShop();
  const before = await shopFileOf(shopId);
  const [soap] = before.products;
  if (!soap) throw new Error('there is no soap');
  const put = (archived: boolean, fingerprint: string) => {
    const expecting = [{ list: 'products' as const, id: soap.id, fingerprint }];
    return changeShop({ commandId: newId(), shopId, part: { products: [{ ...soap, archived }] }, expecting }, CLOCK);
  };
  expect((await put(true, fingerprint(soap))).ok).toBe(true);
  const away = await shopFileOf(shopId);
  const costs = (file: typeof away) =>
    planAhead(shopOfFile(file), Day.parse('2026-03-01'), 8).sprayings.map(({ materialCost }) => materialCost);
  expect(costs(away)).toEqual(costs(before));
  expect(await put(false, fingerprint(soap))).toMatchObject({ ok: false, refusal: { code: 'changed-meanwhile' } });
  expect((await put(false, fingerprint({ ...soap, archived: true }))).ok).toBe(true);
  expect(await shopFileOf(shopId)).toEqual(before);
  expect(parsedOrThrow(before)).toEqual(before);
});

test('a record is refused to go, on the day before it may, naming that day; and stays sealed after it', async () => {
  const applications = SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-25T03:30:00Z' }));
  const shopId = await smallShop({ ...SMALL, applications });
  // 24 February, half past ten in the evening, on the shop's own clock; its interval had passed on the 25th.
  const removeAt = (moment: string) =>
    removeFromShop({ commandId: moment, shopId, what: 'application', id: 'a' }, clockPinnedTo(moment));
  expect(await removeAt('2028-02-24T12:00:00Z')).toEqual({
    ok: false,
    refusal: { code: 'must-be-kept', until: '2028-02-25', isPast: false },
  });
  expect(await removeAt('2028-02-25T12:00:00Z')).toMatchObject({ refusal: { until: '2028-02-25', isPast: true } });
  expect((await shopFileOf(shopId)).applications).toHaveLength(1);
});
