import { expect, test } from 'vitest';
import { importCsv } from '@/lib/commands/import-csv';
import { fingerprint } from '@/lib/data/fingerprint';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import type { CsvList } from '@/lib/engine/exchange/csv/column';
import { csvPreviewOf } from '@/lib/views/csv-preview';
import { CLOCK } from '../data/fresh-database';
import { smallShop } from './small-shop';

const asked = (list: CsvList, text: string, said = {}) => {
  return { list, text, columns: null, decimals: null, dayOrder: null, createSuppliers: false, ...said };
};

async function bring(shopId: string, list: CsvList, text: string, said = {}, commandId = newId()) {
  const seen = fingerprint(await shopFileOf(shopId));
  return importCsv({ commandId, shopId, asked: asked(list, text, said), fingerprint: seen }, CLOCK);
}

test('products, offers with a new supplier, and lots come in one after another, and changes are counted', async () => {
  const shopId = await smallShop();
  const products = 'name,kind,form\nFeed,nutrient,liquid\nSalts,nutrient,powder\n';
  expect(await bring(shopId, 'products', products)).toEqual({
    ok: true,
    value: { added: 2, changed: 0, suppliers: 0 },
  });
  const offers = 'supplier,product,pack,price\nNew Hands,Feed,1 qt,10\nNew Hands,Salts,1 lb,12\n';
  expect(await bring(shopId, 'offers', offers)).toMatchObject({
    ok: false,
    refusal: { code: 'faults', faults: [{ path: 'line 2, supplier' }, { path: 'line 3, supplier' }] },
  });
  expect(await bring(shopId, 'offers', offers, { createSuppliers: true })).toMatchObject({
    value: { added: 2, suppliers: 1 },
  });
  const lots = 'id,product,pack,count,received,left,where\nl9,Feed,1 qt,1,2026-02-02,500 mL,cabinet\nl,,,,,\n';
  const [before] = (await shopFileOf(shopId)).lots;
  expect(
    await bring(shopId, 'lots', `${lots.split('\n').slice(0, 2).join('\n')}\nl,Soap,500 mL,1,2026-02-02,120 mL,shed\n`),
  ).toMatchObject({ value: { added: 1, changed: 1 } });
  const after = (await shopFileOf(shopId)).lots;
  expect(after[0]).toEqual({ ...before, remaining: '120 mL', keptIn: 'shed' });
  expect(after.at(-1)).toMatchObject({ id: 'l9', product: 'feed', remaining: '500 mL', keptIn: 'cabinet' });
});

test('a list with one bad line leaves nothing of itself', async () => {
  const shopId = await smallShop();
  const before = await shopFileOf(shopId);
  expect((await bring(shopId, 'products', 'name,kind,form\nFeed,nutrient,liquid\nSalts,salt,powder\n')).ok).toBe(false);
  expect(await shopFileOf(shopId)).toEqual(before);
});

test('what is brought in is what was looked at: a shop that changed meanwhile, or a command sent twice, changes nothing', async () => {
  const shopId = await smallShop();
  const text = 'name,kind,form\nFeed,nutrient,liquid\n';
  const looked = await csvPreviewOf({ id: shopId, name: 'Shop' }, asked('products', text), async () => undefined);
  if (!looked.ok) throw new Error('the preview was refused');
  const commandId = newId();
  const send = () =>
    importCsv({ commandId, shopId, asked: asked('products', text), fingerprint: looked.value.fingerprint }, CLOCK);
  expect(looked.value.added).toEqual([{ line: 2, id: 'feed', name: 'Feed' }]);
  expect(await send()).toEqual({ ok: true, value: { added: 1, changed: 0, suppliers: 0 } });
  expect(await send()).toEqual({ ok: true, value: { added: 1, changed: 0, suppliers: 0 } });
  const late = { commandId: newId(), shopId, asked: asked('products', text), fingerprint: looked.value.fingerprint };
  expect(await importCsv(late, CLOCK)).toMatchObject({ ok: false, refusal: { code: 'shop-changed-since-preview' } });
  expect((await shopFileOf(shopId)).products.filter(({ name }) => name === 'Feed')).toHaveLength(1);
});

test('a preview tells what changes as the cells say it, and changes nothing', async () => {
  const shopId = await smallShop();
  const before = await shopFileOf(shopId);
  const list = asked('products', 'id,contents,density\np,fat 5 % w/w,\nq,,\n');
  const told: object[] = [];
  const looked = await csvPreviewOf({ id: shopId, name: 'Shop' }, list, async (step) => void told.push(step));
  expect(looked).toMatchObject({
    value: {
      changed: [{ line: 2, id: 'p', name: 'Soap', fields: [{ field: 'contents', from: null, to: 'fat 5 % w/w' }] }],
      ...{ added: [], unchanged: 1, faults: [] },
    },
  });
  expect(told).toEqual([
    { step: 'read', lines: 2 },
    { step: 'together', lines: 2 },
  ]);
  expect(await shopFileOf(shopId)).toEqual(before);
});
