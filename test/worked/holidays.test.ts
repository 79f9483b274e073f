import { expect, test } from 'vitest';
import { expectedDay } from '@/lib/engine/orders/on-order';
import { fieldsOfSupplier, SupplierForm, supplierOfFields } from '@/shared/forms/supplier';
import { parseShopFile } from '@/shared/shop-file/parse';
import { planOf, shopWith } from './plan-of';

/*
 * Holidays of the supplier and of the shop. Worked by hand: 10 mL are needed on Friday 10 July 2026 and none is there, so the
 * product runs out that day; without safety days and with two working days of lead the last day to order is Wednesday 8 July.
 * With Thursday 9 July closed, on either side, it is Tuesday 7 July; with the 10th itself closed the order has to arrive on
 * the 9th, and so goes out on the 7th.
 */
const file = (closedOn: string[], specialDays: { on: string; hours: [string, string][] }[] = []) =>
  shopWith({
    shop: { specialDays, openingHours: { thu: [['09:00', '17:00']], fri: [['09:00', '17:00']] } },
    suppliers: [{ id: 's', name: 'Seller', closedOn }],
    products: [{ id: 'p', name: 'P', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
    offers: [{ id: 'o', supplier: 's', product: 'p', pack: '1 L', price: '10.00', leadDays: 2 }],
    benches: [{ id: 'b', name: 'B', customers: false, plants: [{ name: 'x', count: 100, mlPerPlant: 10 }] }],
    recipes: [{ id: 'r', name: 'R', ingredients: [{ product: 'p', dose: '10 mL/L' }] }],
    programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-07-10', startTime: '18:00', minutes: 5 }],
    orders: [
      { id: 'q', supplier: 's', placedOn: '2026-07-01', closedOn: '2026-07-02', lines: [{ offer: 'o', count: 1 }] },
    ],
  });

const orderBy = (...of: Parameters<typeof file>) => planOf(file(...of), '2026-06-22', 4).products[0]?.reorder?.by;

test.each([
  { name: 'no holiday', closedOn: [], by: '2026-07-08' },
  { name: 'the supplier closed in between', closedOn: ['2026-07-09'], by: '2026-07-07' },
  { name: 'closed on the day it is needed', closedOn: ['2026-07-10'], by: '2026-07-07' },
  { name: 'closed on a day that matters to nobody', closedOn: ['2026-07-04'], by: '2026-07-08' },
])('$name: order by $by', ({ closedOn, by }) => {
  expect(orderBy(closedOn)).toBe(by);
  // The same days as holidays of the shop; with hours of their own they are ordinary days.
  expect(
    orderBy(
      [],
      closedOn.map((on) => ({ on, hours: [] })),
    ),
  ).toBe(by);
  expect(
    orderBy(
      [],
      closedOn.map((on) => ({ on, hours: [['10:00', '12:00']] })),
    ),
  ).toBe('2026-07-08');
});

test('an order is expected after the holiday', () => {
  const [order] = planOf(file(['2026-07-02', '2026-07-03']), '2026-06-22', 1).shop.orders;
  // Wednesday 1 July, then Monday 6 and Tuesday 7 July.
  expect(order && expectedDay(order)).toBe('2026-07-07');
});

test('the form of a supplier keeps its dates, each once and in order, and refuses what is none', () => {
  const fields = fieldsOfSupplier(null);
  const typed = { ...fields, name: 'Seller', closedOn: '2026-12-25, 2026-07-04\n2026-12-25' };
  expect(supplierOfFields('s', typed).closedOn).toEqual(['2026-07-04', '2026-12-25']);
  const sent = { commandId: crypto.randomUUID(), shop: crypto.randomUUID(), id: 's', expecting: '', keepBoth: '' };
  const refused = SupplierForm.safeParse({ ...sent, ...typed, closedOn: '2026-02-30' });
  expect(refused.error?.issues.map(({ path }) => path.join('.'))).toContain('closedOn');
});

test('a date twice is refused, with its place', () => {
  const parsed = parseShopFile(JSON.stringify(file(['2026-07-04', '2026-07-04'])));
  expect(parsed.ok ? [] : parsed.faults.map(({ path }) => path)).toEqual(['suppliers[0].closedOn[1]']);
});
