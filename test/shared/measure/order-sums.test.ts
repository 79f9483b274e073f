import { describe, expect, test } from 'vitest';
import { orderSums } from '@/shared/measure/order-sums';
import { micros } from '@/shared/quantity/amounts';

const dollars = (amount: number) => micros(amount * 1_000_000);
const TERMS = { freightPerOrder: dollars(10), freeFreightOver: dollars(100), minimumOrder: dollars(40) };
const line = (count: number, price: number | null) => ({ count, price: price === null ? null : dollars(price) });

describe('what an order comes to', () => {
  test('is its lines and the freight, which is nothing from the free-freight value on', () => {
    expect(orderSums([line(2, 15), line(1, 5)], TERMS, null)).toEqual({
      ...{ goods: dollars(35), unpriced: 0, freight: dollars(10), total: dollars(45) },
      ...{ toMinimum: dollars(5), toFreeFreight: dollars(65) },
    });
    expect(orderSums([line(4, 25)], TERMS, null)).toMatchObject({ freight: 0, total: dollars(100), toFreeFreight: 0 });
    expect(orderSums([line(1, 5)], TERMS, dollars(3))).toMatchObject({ freight: dollars(3), total: dollars(8) });
  });

  test('is not known where a line has no price, and neither is what is missing or whether freight is free', () => {
    expect(orderSums([line(1, 20), line(1, null)], TERMS, null)).toEqual({
      ...{ goods: null, unpriced: 1, freight: null, total: null },
      ...{ toMinimum: null, toFreeFreight: null },
    });
  });

  test('a threshold that the priced lines reach by themselves is reached whatever the others cost', () => {
    expect(orderSums([line(1, 40), line(1, null)], TERMS, null)).toMatchObject({ toMinimum: 0, freight: null });
    expect(orderSums([line(1, 100), line(1, null)], TERMS, null)).toMatchObject({
      ...{ goods: null, freight: 0, total: null, toMinimum: 0, toFreeFreight: 0 },
    });
  });

  test('freight that is never free is known whatever the lines cost', () => {
    const never = { ...TERMS, freeFreightOver: null };
    expect(orderSums([line(1, null)], never, null)).toMatchObject({ freight: dollars(10), toFreeFreight: null });
  });
});
