import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { type CameIn, receiveOrder } from '@/lib/commands/receive-order';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { micros } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { CLOCK } from '../data/fresh-database';
import { smallShop } from './small-shop';

const ORDER = { id: 'x', supplier: 's', placedOn: '2026-03-24', lines: [{ offer: 'o', count: 5, price: '40.00' }] };

/** The small shop with five packs on order. */
async function ordered(): Promise<string> {
  const shopId = await smallShop();
  const outcome = await changeShop({ commandId: newId(), shopId, part: { orders: [ORDER] } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return shopId;
}

const came = (count: number, more: Partial<CameIn> = {}): CameIn => ({
  ...{ offer: 'o', count, paid: micros(41_000_000 * count), expiresOn: null, keptIn: null },
  ...more,
});

const receive = (shopId: string, lines: CameIn[], more: { id?: string; restIsOff?: boolean; on?: string } = {}) => {
  const { id = newId(), restIsOff = false, on = '2026-03-30' } = more;
  const input = { commandId: id, shopId, order: 'x', receivedOn: Day.parse(on), came: lines, restIsOff };
  return receiveOrder(input, CLOCK);
};

const lotsOf = async (shopId: string) => (await shopFileOf(shopId)).lots.filter(({ order }) => order === 'x');
const closedOn = async (shopId: string) => (await shopFileOf(shopId)).orders[0]?.closedOn;

test('a part leaves the rest expected, and the last of it closes the order on that day', async () => {
  const shopId = await ordered();
  expect(await receive(shopId, [came(2)])).toMatchObject({ ok: true, value: { expected: 3 } });
  expect(await closedOn(shopId)).toBeNull();
  expect(await receive(shopId, [came(3)], { on: '2026-03-31' })).toMatchObject({ ok: true, value: { expected: 0 } });
  expect(await closedOn(shopId)).toBe('2026-03-31');
  expect(await lotsOf(shopId)).toMatchObject([
    { product: 'p', pack: '500 mL', count: 2, paid: '82.00', receivedOn: '2026-03-30', order: 'x', offer: 'o' },
    { count: 3, paid: '123.00', receivedOn: '2026-03-31' },
  ]);
});

test('the same delivery sent twice stands on the shelf once', async () => {
  const shopId = await ordered();
  const [first, again] = [
    await receive(shopId, [came(2)], { id: 'one' }),
    await receive(shopId, [came(2)], { id: 'one' }),
  ];
  expect(again).toEqual(first);
  expect(await lotsOf(shopId)).toHaveLength(1);
});

test('what will not come closes the order with the part that came', async () => {
  const shopId = await ordered();
  expect(await receive(shopId, [came(1)], { restIsOff: true })).toMatchObject({ ok: true, value: { expected: 0 } });
  expect(await closedOn(shopId)).toBe('2026-03-30');
});

test('a delivery with one fault puts nothing on the shelf, and says where', async () => {
  const shopId = await ordered();
  const faultAt = async (lines: CameIn[], on?: string) => {
    const outcome = await receive(shopId, lines, on === undefined ? {} : { on });
    return !outcome.ok && outcome.refusal.code === 'faults' ? outcome.refusal.faults.map(({ path }) => path) : outcome;
  };
  expect(await faultAt([came(2), came(1, { offer: 'other' })])).toEqual(['lots[1].count']);
  expect(await faultAt([came(2), came(0)])).toEqual(['lots[1].count']);
  expect(await faultAt([came(2)], '2026-04-01')).toEqual(['receivedOn']);
  expect(await faultAt([came(2)], '2026-03-23')).toEqual(['receivedOn']);
  expect(await faultAt([])).toEqual(['lots']);
  expect(await lotsOf(shopId)).toEqual([]);
});

test('an order that is not there is not found', async () => {
  const shopId = await smallShop();
  expect(await receive(shopId, [came(1)])).toMatchObject({ ok: false, refusal: { code: 'not-found', what: 'order' } });
});

test('of an order with one offer on two lines, what came counts once, and the order closes with the last pack', async () => {
  const shopId = await smallShop();
  const lines = [...ORDER.lines, { offer: 'o', count: 2, price: '42.00' }];
  const part = { orders: [{ ...ORDER, lines }] };
  expect(await changeShop({ commandId: newId(), shopId, part }, CLOCK)).toMatchObject({ ok: true });
  // As its form sends it: a row for each line.
  expect(await receive(shopId, [came(4), came(1)])).toMatchObject({ ok: true, value: { expected: 2 } });
  expect(await closedOn(shopId)).toBeNull();
  expect(await receive(shopId, [came(2)])).toMatchObject({ ok: true, value: { expected: 0 } });
  expect(await closedOn(shopId)).toBe('2026-03-30');
});
