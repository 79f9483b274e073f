import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { fieldsOfOffer, OfferForm, offerOfForm } from '@/shared/forms/offer';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { CLOCK } from '../data/fresh-database';
import { smallShop } from './small-shop';

async function offerIn(shopId: string): Promise<ShopFile['offers'][number]> {
  const offer = (await shopFileOf(shopId)).offers.find(({ id }) => id === 'o');
  if (!offer) throw new Error('the offer is gone');
  return offer;
}

/** Send the form of the offer as it is opened, with something typed over it, on a day. */
async function send(shopId: string, typed: Record<string, string>, on: string, opened?: ShopFile['offers'][number]) {
  const was = opened ?? (await offerIn(shopId));
  const { breaks, ...fields } = fieldsOfOffer(was, 'p');
  const lines = breaks.flatMap(({ atLeast, price }, row) => [
    [`breaks[${row}].atLeast`, atLeast],
    [`breaks[${row}].price`, price],
  ]);
  const about = { commandId: newId(), shop: shopId, id: 'o', expecting: fingerprint(was) };
  const form = OfferForm.parse({ ...about, ...fields, ...Object.fromEntries(lines), ...typed });
  const { offer } = offerOfForm(form, Day.parse(on));
  const expecting = [{ list: 'offers' as const, id: 'o', fingerprint: form.expecting }];
  return changeShop({ commandId: form.commandId, shopId, actor: 'Ada', part: { offers: [offer] }, expecting }, CLOCK);
}

test('two new prices keep all three, in order, each with the day from which it holds', async () => {
  const shopId = await smallShop();
  const done = { ok: true, value: { added: 0, changed: 1 } };
  expect(await send(shopId, { price: '42.50' }, '2026-02-10')).toMatchObject(done);
  const typed = { price: '39', 'breaks[0].atLeast': '4', 'breaks[0].price': '36.10', since: '2026-03-01' };
  expect(await send(shopId, typed, '2026-03-31')).toMatchObject(done);
  expect(await send(shopId, { leadDays: '9' }, '2026-03-31')).toMatchObject(done);
  expect(await offerIn(shopId)).toEqual({
    ...{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', leadDays: 9, archived: false },
    ...{ since: '2026-03-01', price: '39.00', breaks: [{ atLeast: 4, price: '36.10' }] },
    earlier: [
      { since: null, price: '40.00', breaks: [] },
      { since: '2026-02-10', price: '42.50', breaks: [] },
    ],
  });
});

test('no price that was written can be changed or taken away, not even beside the program', async () => {
  const shopId = await smallShop();
  await send(shopId, { price: '42.50', 'breaks[0].atLeast': '4', 'breaks[0].price': '36' }, '2026-02-10');
  const { writer } = await database();
  const prices = await writer.price.findMany({ where: { shopId }, orderBy: { number: 'asc' } });
  expect(prices.map(({ price, actor }) => [price, actor])).toEqual([
    [40_000_000n, expect.any(String)],
    [42_500_000n, 'Ada'],
  ]);
  await expect(writer.$executeRaw`UPDATE "Price" SET price = 1`).rejects.toThrow('Price only grows');
  await expect(writer.$executeRaw`DELETE FROM "Price"`).rejects.toThrow('Price only grows');
  await expect(writer.$executeRaw`UPDATE "PriceBreak" SET price = 1`).rejects.toThrow('PriceBreak only grows');
  expect(await writer.price.findMany({ where: { shopId }, orderBy: { number: 'asc' } })).toEqual(prices);
});

test('of two who change one offer, the second is told and the price of the first stands', async () => {
  const shopId = await smallShop();
  const opened = await offerIn(shopId);
  expect((await send(shopId, { price: '41' }, '2026-03-31', opened)).ok).toBe(true);
  expect(await send(shopId, { price: '99' }, '2026-03-31', opened)).toMatchObject({
    ok: false,
    refusal: { code: 'changed-meanwhile', id: 'o' },
  });
  expect((await offerIn(shopId)).price).toBe('41.00');
});
