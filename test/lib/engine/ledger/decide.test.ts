import { expect, test } from 'vitest';
import { type Ledgered, receipt, setTo, takeBack, takeOut } from '@/lib/engine/ledger/decide';
import type { Movement } from '@/lib/engine/ledger/movement';
import { stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';

const at = (hour: number) => instantOf(Date.UTC(2026, 2, 1, hour));
const full = receipt(stock(500), { id: 'r', at: at(0) });
const bottle = (...movements: Movement[]): Ledgered => {
  return { form: 'liquid', size: stock(500), receivedOn: Day.parse('2026-03-01'), movements: [full, ...movements] };
};

const drawn = (amount: number, hour: number, id = `d${hour}`): Movement => {
  const outcome = takeOut(bottle(), 'spray', stock(amount), { id, at: at(hour) });
  if (!outcome.ok) throw new Error('a draw within a full bottle was refused');
  return outcome.value;
};

test('a draw goes from the container into a spray, and its amount is above zero', () => {
  expect(drawn(7, 1)).toEqual({
    ...{ id: 'd1', kind: 'drawn', from: 'container', to: 'spray', amount: 7, occurredAt: at(1), reverses: null },
  });
});

test('all that is left may be drawn, and not one microlitre more', () => {
  const left = bottle(drawn(450, 1));
  expect(takeOut(left, 'spray', stock(50), { id: 'x', at: at(2) }).ok).toBe(true);
  expect(takeOut(left, 'spray', stock(51), { id: 'x', at: at(2) })).toEqual({
    ok: false,
    refusal: { code: 'not-enough-stock', wanted: 51, left: 50, unit: 'mL' },
  });
});

test('a draw that is entered late may not take what was drawn since', () => {
  const outcome = takeOut(bottle(drawn(450, 5)), 'spray', stock(51), { id: 'x', at: at(2) });
  expect(outcome).toMatchObject({ ok: false, refusal: { code: 'not-enough-stock', left: 50 } });
});

test('nothing is drawn before the container came', () => {
  const early = { id: 'x', at: instantOf(at(0) - 1) };
  const refusal = { code: 'before-received', receivedOn: '2026-03-01' };
  expect(takeOut(bottle(), 'spray', stock(1), early)).toEqual({ ok: false, refusal });
  expect(setTo(bottle(), stock(1), early)).toEqual({ ok: false, refusal });
  expect(takeOut(bottle(), 'spray', stock(1), { id: 'x', at: at(0) }).ok).toBe(true);
});

test('a count that agrees with the books moves nothing', () => {
  expect(setTo(bottle(drawn(100, 1)), stock(400), { id: 'x', at: at(2) })).toEqual({ ok: true, value: null });
});

test('a count says for its own instant what was there, and later draws still follow', () => {
  const outcome = setTo(bottle(drawn(100, 5)), stock(450), { id: 'x', at: at(2) });
  expect(outcome).toMatchObject({ ok: true, value: { from: 'container', to: 'count', amount: 50 } });
  expect(setTo(bottle(drawn(100, 5)), stock(99), { id: 'x', at: at(2) })).toMatchObject({
    ok: false,
    refusal: { code: 'not-enough-stock' },
  });
});

test('a container is never counted above what it can hold', () => {
  const half = bottle(drawn(250, 1));
  expect(setTo(half, stock(500), { id: 'x', at: at(2) })).toMatchObject({ ok: true, value: { amount: 250 } });
  expect(setTo(half, stock(501), { id: 'x', at: at(2) })).toEqual({
    ok: false,
    refusal: { code: 'more-than-it-holds', most: 500, unit: 'mL' },
  });
});

test('a line is taken back once, and a line that takes another back is not taken back itself', () => {
  const one = drawn(100, 1);
  const back = takeBack(bottle(one), 'd1', 'b');
  if (!back.ok) throw new Error('taking a draw back was refused');
  expect(back.value).toMatchObject({ kind: 'reversed', from: 'spray', to: 'container', amount: 100, reverses: 'd1' });
  for (const id of ['d1', 'b']) {
    expect(takeBack(bottle(one, back.value), id, 'c')).toMatchObject({
      ok: false,
      refusal: { code: 'already-reversed' },
    });
  }
});

test('a receipt is not taken back from under what was drawn', () => {
  expect(takeBack(bottle(drawn(1, 1)), 'r', 'b')).toMatchObject({ ok: false, refusal: { code: 'others-stand-on-it' } });
  expect(takeBack(bottle(), 'r', 'b').ok).toBe(true);
  expect(takeBack(bottle(), 'nothing', 'b')).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
});
