import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { type MakeStockSolution, makeStockSolution } from '@/lib/commands/make-stock-solution';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { mixStrength } from '@/lib/engine/mix/mix-strength';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { readDose } from '@/shared/measure/dose';
import { readVolume } from '@/shared/measure/size';
import { milligrams } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK } from '../data/fresh-database';
import { lotOf, SMALL, smallShop } from './small-shop';

/** The small shop with a bag of chelate, which a soap must not meet, at a price that no round number of grams divides. */
const WITH_POWDER = parsedOrThrow({
  ...SMALL,
  products: [
    ...SMALL.products.map((product) => ({ ...product, label: { ...product.label, doNotMixWith: ['fe'] } })),
    {
      ...{ id: 'fe', name: 'Iron chelate', kind: 'nutrient', form: 'powder', formulation: 'SP', gramsPerTeaspoon: 3.6 },
      contents: [{ substance: 'Fe', amount: 6, basis: '% w/w' }],
      label: {
        ...{ reiHours: 4, protectiveEquipment: ['gloves'], modes: ['X1'] },
        rates: [{ use: 'foliar', min: '1/16 tsp/gal', max: '1/3 tsp/gal' }],
      },
    },
  ],
  lots: [
    ...SMALL.lots,
    { id: 'bag', product: 'fe', pack: '453 g', paid: '31.77', receivedOn: '2026-02-02' },
    { id: 'new', product: 'fe', pack: '453 g', paid: '40.00', receivedOn: '2026-02-02' },
  ],
});

const FROM_BAG = [{ lotId: 'bag', place: 0, amount: milligrams(3_600) }];

/** Makes a solution of the chelate, 72 g/L unless it is asked otherwise. */
function make(shopId: string, asked: Partial<MakeStockSolution> & { makes?: string } = {}) {
  const { makes: text = '50 mL', ...rest } = asked;
  const ml = readVolume(text);
  if (!ml.ok) throw new Error(ml.message);
  const what = { product: 'fe', from: FROM_BAG, makeUpTo: { text, ml: ml.value }, useByDays: 14, keptIn: 'fridge' };
  return makeStockSolution({ commandId: newId(), shopId, ...what, ...rest }, CLOCK);
}

const productOf = (file: ShopFile, id: string) => file.products.find((one) => one.id === id);

test('what was drawn from the bottles is what the solution cost, to the micro, and it keeps its last day', async () => {
  const shopId = await smallShop(WITH_POWDER);
  const from = [...FROM_BAG, { lotId: 'new', place: 0, amount: milligrams(1_234) }];
  const made = await make(shopId, { from });
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  const lot = await lotOf(shopId, made.value.lot);
  // 31.77 × 3.6 ÷ 453 and 40.00 × 1.234 ÷ 453, each rounded once.
  expect(lot).toMatchObject({ pack: '50 mL', count: 1, paid: '0.361439', receivedOn: '2026-03-31', keptIn: 'fridge' });
  expect(lot.expiresOn).toBe('2026-04-14');
  expect((await lotOf(shopId, 'bag')).remaining).toBe('449.4 g');
  expect((await lotOf(shopId, 'new')).remaining).toBe('451.766 g');
});

test('a mL of the solution brings what the powder in it would', async () => {
  const shopId = await smallShop(WITH_POWDER);
  const made = await make(shopId);
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  const file = await shopFileOf(shopId);
  expect(productOf(file, made.value.product)).toMatchObject({
    ...{ id: 'iron-chelate-stock-solution-72-g-l', name: 'Iron chelate stock solution, 72 g/L', form: 'liquid' },
    ...{ kind: 'nutrient', formulation: 'SP', contents: [{ substance: 'Fe', amount: 4.32, basis: 'g/L' }] },
    label: { reiHours: 4, protectiveEquipment: ['gloves'], modes: ['X1'], doNotMixWith: ['p', 'q'] },
  });
  const shop = shopOfFile(file);
  const strength = (id: string, text: string) => {
    const product = shop.products.find((one) => one.id === id);
    const dose = product && readDose(text, product.form);
    return product && dose?.ok ? mixStrength([{ product, dose: dose.value }]).strength[0]?.mgPerL : null;
  };
  expect(strength(made.value.product, '5 mL/L')).toBe(strength('fe', '0.36 g/L'));
});

test('the rates of its label are those of the source at the same strength, and never above', async () => {
  const shopId = await smallShop(WITH_POWDER);
  const made = await make(shopId);
  const rate = made.ok ? productOf(await shopFileOf(shopId), made.value.product)?.label.rates[0] : null;
  // A sixteenth and a third of 3.6 g in a gallon, at 72 g/L: 0.225 ÷ 0.072 and 1.2 ÷ 0.072.
  expect(rate).toMatchObject({ min: '3.125 mL/gal', max: '16.666666666 mL/gal' });
});

test('it says what it is made from, never less than there is, and one from before says so once it is made again', async () => {
  const shopId = await smallShop(WITH_POWDER);
  const [plain, third] = [await make(shopId), await make(shopId, { makes: '70 mL' })];
  if (!plain.ok || !third.ok) throw new Error('refused');
  const source = async (id: string) => productOf(await shopFileOf(shopId), id)?.madeFrom;
  const exactly = [{ product: 'fe', dose: '72 g/L' }];
  expect(await source(plain.value.product)).toEqual(exactly);
  // 3600 mg in 70 mL is 51.428571428571… g/L.
  expect(await source(third.value.product)).toEqual([{ product: 'fe', dose: '51.428571429 g/L' }]);

  const known = productOf(await shopFileOf(shopId), plain.value.product);
  const older = known && { ...known, madeFrom: [] };
  const forgotten = await changeShop({ commandId: newId(), shopId, part: { products: older ? [older] : [] } }, CLOCK);
  expect(forgotten).toMatchObject({ ok: true });
  expect(await source(plain.value.product)).toEqual([]);
  expect(await make(shopId)).toMatchObject({ value: { product: plain.value.product, isNew: false } });
  expect(await source(plain.value.product)).toEqual(exactly);
});

test('made again at the same strength it is another bottle of the same product', async () => {
  const shopId = await smallShop(WITH_POWDER);
  const [first, second] = [await make(shopId), await make(shopId)];
  const other = await make(shopId, { makes: '100 mL' });
  if (!first.ok || !second.ok || !other.ok) throw new Error('refused');
  expect(second.value).toMatchObject({ product: first.value.product, isNew: false });
  expect(second.value.lot).not.toBe(first.value.lot);
  expect(other.value.product).toBe('iron-chelate-stock-solution-36-g-l');
});

test('without enough in a bottle nothing is drawn from any, and nothing is made', async () => {
  const shopId = await smallShop(WITH_POWDER);
  const before = await shopFileOf(shopId);
  const from = [...FROM_BAG, { lotId: 'new', place: 0, amount: milligrams(454_000) }];
  expect(await make(shopId, { from, makes: '5 L' })).toMatchObject({ refusal: { code: 'not-enough-stock' } });
  expect(await make(shopId, { makes: '3 mL' })).toMatchObject({ refusal: { faults: [{ path: 'makeUpTo' }] } });
  const soap = [{ lotId: 'l', place: 0, amount: milligrams(1_000) }];
  expect(await make(shopId, { from: soap })).toMatchObject({ refusal: { code: 'not-found' } });
  expect(await shopFileOf(shopId)).toEqual(before);
});

test('sent twice it is made once', async () => {
  const shopId = await smallShop(WITH_POWDER);
  const commandId = newId();
  const [first, second] = [await make(shopId, { commandId }), await make(shopId, { commandId })];
  expect(second).toEqual(first);
  expect((await lotOf(shopId, 'bag')).remaining).toBe('449.4 g');
});

test('what a spoon of the powder weighs must be known before its label can be said in mL', async () => {
  const products = WITH_POWDER.products.map((one) => (one.id === 'fe' ? { ...one, gramsPerTeaspoon: null } : one));
  const shopId = await smallShop({ ...WITH_POWDER, products });
  expect(await make(shopId)).toMatchObject({
    refusal: { faults: [{ path: 'makeUpTo', message: expect.stringContaining('Weigh a level teaspoon') }] },
  });
});
