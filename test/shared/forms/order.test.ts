import { describe, expect, test } from 'vitest';
import { fieldsOfOrder, OrderForm, orderOfForm, orderTyped } from '@/shared/forms/order';
import { Day } from '@/shared/time/day';
import { parsedOrThrow } from '../../lib/data/any-shop-file';

const TODAY = Day.parse('2026-03-10');
const FILE = parsedOrThrow({
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
  suppliers: [
    { id: 's', name: 'Supplier' },
    { id: 't', name: 'Other' },
  ],
  products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid' }],
  offers: [
    { id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00', breaks: [{ atLeast: 3, price: '36.00' }] },
    { id: 'far', supplier: 't', product: 'p', pack: '500 mL', price: '39.00' },
  ],
  lots: [{ id: 'l', product: 'p', pack: '500 mL', count: 2, receivedOn: '2026-03-05', order: 'x', offer: 'o' }],
  orders: [{ id: 'x', supplier: 's', placedOn: '2026-03-02', lines: [{ offer: 'o', count: 4, price: '36.00' }] }],
});

const SENT = { commandId: 'a'.repeat(32), shop: 'shop', supplier: 's' };

function decided(fields: Record<string, string>, file = FILE) {
  const form = OrderForm.safeParse({ ...SENT, ...fields });
  if (!form.success) return form.error.issues.map(({ path }) => path[0]);
  const { order, faults } = orderOfForm(form.data, file, TODAY);
  return faults.length > 0 ? faults.map(({ path }) => path) : order;
}

describe('an order as it is typed', () => {
  test('a line without a price costs what the offer says for so many; a price that is typed counts', () => {
    const at = (count: string, price = '') => {
      return decided({ 'lines[0].offer': 'o', 'lines[0].count': count, 'lines[0].price': price });
    };
    expect(at('2')).toMatchObject({ placedOn: '2026-03-10', lines: [{ offer: 'o', count: 2, price: '40.000000' }] });
    expect(at('3')).toMatchObject({ lines: [{ price: '36.000000' }] });
    expect(at('3', '35.50')).toMatchObject({ lines: [{ price: '35.500000' }] });
  });

  test('the same form sent twice is one order, another is another', () => {
    const fields = { 'lines[0].offer': 'o', 'lines[0].count': '1' };
    expect(decided(fields)).toEqual(decided(fields));
    expect(decided({ ...fields, commandId: 'b'.repeat(32) })).not.toEqual(decided(fields));
  });

  test.each([
    ['nothing at all', {}, ['lines']],
    [
      'blank lines',
      { 'lines[0].offer': 'o', 'lines[0].count': ' ', 'lines[1].offer': 'o', 'lines[1].count': '0' },
      ['lines'],
    ],
    ['half a pack', { 'lines[0].offer': 'o', 'lines[0].count': '1.5' }, ['lines[0].count']],
    ['a price in words', { 'lines[0].offer': 'o', 'lines[0].count': '1', 'lines[0].price': 'ten' }, ['lines[0].price']],
    ['another supplier', { 'lines[4].offer': 'far', 'lines[4].count': '1' }, ['lines[4].count']],
    ['an offer that is gone', { 'lines[0].offer': 'gone', 'lines[0].count': '1' }, ['lines[0].count']],
    [
      'one offer twice',
      { 'lines[0].offer': 'o', 'lines[0].count': '1', 'lines[2].offer': 'o', 'lines[2].count': '1' },
      ['lines[2].count'],
    ],
    ['a day to come', { 'lines[0].offer': 'o', 'lines[0].count': '1', placedOn: '2026-03-11' }, ['placedOn']],
    ['expected before', { 'lines[0].offer': 'o', 'lines[0].count': '1', expectedOn: '2026-03-09' }, ['expectedOn']],
    ['less than came', { id: 'x', 'lines[0].offer': 'o', 'lines[0].count': '1' }, ['lines[0].count']],
  ])('%s is refused at its field', (_, fields, at) => {
    expect(decided(fields)).toEqual(at);
  });

  test('what has come can be ordered no less than that, and exactly that', () => {
    expect(decided({ id: 'x', 'lines[0].offer': 'o', 'lines[0].count': '2' })).toMatchObject({
      id: 'x',
      placedOn: '2026-03-02',
    });
    expect(decided({ id: 'x', 'lines[0].offer': 'far', 'lines[0].count': '1', supplier: 't' })).toEqual(['lines']);
  });

  test('an order that a file brought with one offer on two lines can be changed, but gets no third', () => {
    const doubled = [{ offer: 'o', count: 1 }, ...(FILE.orders[0]?.lines ?? [])];
    const file = { ...FILE, orders: FILE.orders.map((one) => ({ ...one, lines: doubled })) } as typeof FILE;
    const rows = (...counts: string[]) =>
      counts.flatMap((count, row) => [
        [`lines[${row}].offer`, 'o'],
        [`lines[${row}].count`, count],
      ]);
    const at = (...counts: string[]) => decided({ id: 'x', ...Object.fromEntries(rows(...counts)) }, file);
    expect(at('1', '4')).toMatchObject({ lines: [{ count: 1 }, { count: 4 }] });
    // Two have come: on whichever line, there are no fewer.
    expect(at('1', '1')).toMatchObject({ lines: [{ count: 1 }, { count: 1 }] });
    expect(at('1', '')).toEqual(['lines[0].count']);
    expect(at('1', '4', '1')).toEqual(['lines[2].count']);
  });

  test('an order as its form shows it reads back as the same order', () => {
    const [order] = FILE.orders;
    if (!order) throw new Error('there is no order');
    const { typed, faults } = orderTyped(fieldsOfOrder(order));
    expect(faults).toEqual([]);
    expect(typed).toMatchObject({ placedOn: '2026-03-02', lines: [{ offer: 'o', count: 4, price: 36_000_000 }] });
  });
});
