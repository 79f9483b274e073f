import { parse } from 'csv-parse/sync';
import { expect, test, vi } from 'vitest';
import { purchaseListCsv, purchaseLists } from '@/lib/views/purchase-list';
import { CLOCK } from '../data/fresh-database';
import { orderingShop } from './an-ordering-shop';

vi.mock('next/headers', () => ({ cookies: async () => new Map() }));

const OPEN = { id: 'open', supplier: 's', placedOn: '2026-03-30', lines: [{ offer: 'o', count: 1, price: '38.00' }] };
const CLOSED = { ...OPEN, id: 'closed', closedOn: '2026-03-31' };

const line = (row: number, offer: string, count: string, price = '') => ({
  [`lines[${row}].offer`]: offer,
  [`lines[${row}].count`]: count,
  [`lines[${row}].price`]: price,
});

async function listed(asked: Record<string, string>) {
  const screen = await purchaseLists(CLOCK, asked);
  if (!screen) throw new Error('there is no shop');
  return screen.lists;
}

const dollars = (amount: number) => amount * 1_000_000;

test('lines of several suppliers are a list for each, with its sums beside what that supplier asks', async () => {
  await orderingShop();
  const lists = await listed({ ...line(0, 'o', '1'), ...line(1, 'far', '2'), ...line(2, 'o', '4') });
  expect(lists).toMatchObject([
    {
      supplier: { id: 's' },
      order: null,
      figures: null,
      lines: [
        { count: 1, price: dollars(40) },
        { count: 4, price: dollars(36), cost: dollars(144) },
      ],
      sums: { goods: dollars(184), freight: 0, total: dollars(184), toMinimum: 0, toFreeFreight: 0 },
      expectedOn: '2026-04-03',
    },
    // Of the other one nobody entered what it asks, nor how long it takes.
    {
      supplier: { id: 't' },
      sums: { goods: dollars(25), freight: null, total: null, toMinimum: null, toFreeFreight: null },
      expectedOn: null,
    },
  ]);
  expect(new Set(lists.map(({ formId }) => formId)).size).toBe(2);
});

test('what is missing to the smallest order and to free freight is said to the cent, and not once it is reached', async () => {
  await orderingShop();
  const missing = async (price: string) => {
    const [list] = await listed(line(0, 'o', '1', price));
    return [list?.sums.toMinimum, list?.sums.toFreeFreight, list?.sums.freight];
  };
  expect(await missing('49.99')).toEqual([10_000, dollars(50) + 10_000, dollars(10)]);
  expect(await missing('50.00')).toEqual([0, dollars(50), dollars(10)]);
  expect(await missing('99.99')).toEqual([0, 10_000, dollars(10)]);
  expect(await missing('100.00')).toEqual([0, 0, 0]);
});

test('without lines it is what is on order, or one order whatever became of it; each figure opens', async () => {
  await orderingShop({ orders: [OPEN, CLOSED] });
  expect((await listed({})).map(({ order }) => order)).toEqual(['open']);
  const [list] = await listed({ order: 'closed' });
  expect(list).toMatchObject({
    order: 'closed',
    figures: {
      goods: { at: 'order/closed/goods', value: { micros: dollars(38) } },
      toMinimum: { value: { micros: dollars(12) } },
      toFreeFreight: { value: { micros: dollars(62) } },
      lines: [{ at: 'order/closed/line/o', value: { micros: dollars(38) } }],
    },
  });
  expect(await listed({ order: 'nowhere' })).toEqual([]);
});

test('what was entered beside the lines goes with them to one supplier, and to none of several', async () => {
  await orderingShop();
  const aside = { placedOn: '2026-03-27', expectedOn: '2026-04-09', freight: '4.00', note: 'By the back door' };
  const entered = { expectedOn: '2026-04-09', freight: dollars(4) };
  expect(await listed({ ...line(0, 'o', '2'), ...aside })).toMatchObject([
    {
      placedOn: '2026-03-27',
      expectedOn: '2026-04-09',
      note: 'By the back door',
      entered,
      sums: { freight: dollars(4) },
    },
  ]);
  const both = await listed({ ...line(0, 'o', '2'), ...line(1, 'far', '1'), ...aside });
  expect(both.map(({ note, entered: { freight } }) => [note, freight])).toEqual([
    [null, null],
    [null, null],
  ]);
});

test('as text it has every pack, what they come to, and whom to ask, in lines that a mail can carry', async () => {
  await orderingShop();
  const [list] = await listed({ ...line(0, 'o', '3'), note: 'By the back door' });
  expect(list?.text.split('\r\n')).toEqual(
    expect.arrayContaining(['3 x Soap, 500 mL at $36.00: $108.00', 'By the back door', 'A shop', '555 0100']),
  );
  expect(list?.text).toContain('$108.00');
  expect(decodeURIComponent(encodeURIComponent(list?.text ?? ''))).toBe(list?.text);
});

test('as CSV it opens as a table of numbers and texts, and no text of it is a formula', async () => {
  await orderingShop();
  const asked = { ...line(0, 'o', '3'), ...line(1, 'far', '2', '12.25') };
  const csv = await purchaseListCsv(CLOCK, asked);
  if (!csv.ok) throw new Error('the list was refused');
  const rows: Record<string, string>[] = parse(csv.value, { columns: true, bom: true });
  expect(rows).toEqual([
    { Supplier: 'Supplier', Product: 'Soap', Pack: '500 mL', Packs: '3', 'Price of one': '36', Cost: '108' },
    { Supplier: 'Other', Product: "'=Sulfur", Pack: '1 kg', Packs: '2', 'Price of one': '12.25', Cost: '24.5' },
  ]);
});

test('without a price, the cell is empty and not nothing', async () => {
  await orderingShop({ orders: [{ ...OPEN, lines: [{ offer: 'o', count: 2 }] }] });
  const csv = await purchaseListCsv(CLOCK, { order: 'open' });
  expect(csv.ok && csv.value.split('\r\n')[1]).toBe('"Supplier","Soap","500 mL",2,,');
});

test('what cannot be read is on no list, and is said with what to write instead', async () => {
  await orderingShop();
  const asked = {
    ...line(0, 'o', 'half'),
    ...line(1, 'far', '2'),
    ...line(2, 'big', '1', 'ten'),
    ...line(3, 'gone', '1'),
  };
  const screen = await purchaseLists(CLOCK, asked);
  expect(screen?.lists.map(({ lines }) => lines.map(({ offer, count }) => [offer, count]))).toEqual([[['far', 2]]]);
  expect(screen?.leftOut).toHaveLength(3);
  for (const [at, typed] of ['half', 'ten', 'gone'].entries()) expect(screen?.leftOut[at]).toContain(`“${typed}”`);
  expect(screen?.leftOut[0]).toContain('Soap, 500 mL');
});
