import fc from 'fast-check';
import { expect, test } from 'vitest';
import { account } from '@/lib/engine/ledger/account';
import { balance, holdsTogether } from '@/lib/engine/ledger/balance';
import { type Ledgered, receipt, setTo, takeBack, takeOut } from '@/lib/engine/ledger/decide';
import { costOut } from '@/lib/engine/ledger/draw-cost';
import type { Movement } from '@/lib/engine/ledger/movement';
import type { Outcome } from '@/shared/outcome';
import { micros, stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';

const START = Date.UTC(2026, 2, 1);
const at = (minute: number) => instantOf(START + minute * 60_000);

/** What a person might do to a bottle, with figures that need not fit. Minutes go back and forth: entries come late. */
const deed = fc.oneof(
  fc.record({ kind: fc.constant('draw' as const), amount: fc.integer({ min: 1, max: 400 }), minute: fc.nat(500) }),
  fc.record({ kind: fc.constant('discard' as const), amount: fc.integer({ min: 1, max: 400 }), minute: fc.nat(500) }),
  fc.record({ kind: fc.constant('count' as const), amount: fc.nat(1_100), minute: fc.nat(500) }),
  fc.record({ kind: fc.constant('reverse' as const), amount: fc.nat(60), minute: fc.nat(500) }),
);
type Deed = typeof deed extends fc.Arbitrary<infer T> ? T : never;

function decide(bottle: Ledgered, { kind, amount, minute }: Deed, id: string): Outcome<Movement | null> {
  switch (kind) {
    case 'draw':
      return takeOut(bottle, 'spray', stock(amount), { id, at: at(minute) });
    case 'discard':
      return takeOut(bottle, 'waste', stock(amount), { id, at: at(minute) });
    case 'count':
      return setTo(bottle, stock(amount), { id, at: at(minute) });
    case 'reverse':
      return takeBack(bottle, bottle.movements[amount % bottle.movements.length]?.id ?? '', id);
  }
}

const emptyBottle = (size: number): Ledgered => ({
  form: 'liquid',
  size: stock(size),
  receivedOn: Day.parse('2026-03-01'),
  movements: [receipt(stock(size), { id: 'first', at: at(0) })],
});

test('whatever is done to a bottle, its price is found again to the micro in what was drawn, wasted, counted and left', () => {
  const bottles = fc.record({
    size: fc.integer({ min: 1, max: 1_000 }),
    paid: fc.oneof(fc.nat(1_000), fc.nat(5_000_000_000)),
    deeds: fc.array(deed, { maxLength: 60 }),
  });
  fc.assert(
    fc.property(bottles, ({ size, paid, deeds }) => {
      const movements = deeds.reduce((so, one, index) => next(so, one, index), emptyBottle(size)).movements;
      const { sides, left, carried } = account(micros(paid), stock(size), movements);
      const gone = Object.values(sides).reduce((sum, { out, back }) => sum + out - back, 0);
      expect(gone + left).toBe(paid);
      expect(left).toBe(costOut(micros(paid), stock(size), stock(size - balance(movements)), stock(size)));
      expect(carried).toHaveLength(movements.length);
    }),
    { numRuns: 2_000 },
  );
});

test('whatever is entered, in whichever order, a bottle never held less than nothing or more than it can, at any instant', () => {
  let [taken, refused] = [0, 0];
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000 }), fc.array(deed, { maxLength: 60 }), (size, deeds) => {
      let bottle = emptyBottle(size);
      for (const [index, one] of deeds.entries()) {
        const after = next(bottle, one, index);
        if (after === bottle) refused += 1;
        else taken += 1;
        bottle = after;
        const sum = bottle.movements.reduce(
          (held, { from, amount }) => held + (from === 'container' ? -amount : amount),
          0,
        );
        expect(balance(bottle.movements)).toBe(sum);
        expect(sum).toBeGreaterThanOrEqual(0);
        expect(holdsTogether(bottle.movements, bottle.size)).toBe(true);
      }
    }),
    { numRuns: 2_000 },
  );
  expect(Math.min(taken, refused)).toBeGreaterThan(1_000);
});

const next = (bottle: Ledgered, one: Deed, index: number): Ledgered => {
  const outcome = decide(bottle, one, `m${index}`);
  return outcome.ok && outcome.value ? { ...bottle, movements: [...bottle.movements, outcome.value] } : bottle;
};

test('the last drop takes the last micro', () => {
  const third = costOut(micros(100), stock(3), stock(0), stock(1));
  const rest = [costOut(micros(100), stock(3), stock(1), stock(2)), costOut(micros(100), stock(3), stock(2), stock(3))];
  expect([third, ...rest]).toEqual([33, 34, 33]);
});

test('a draw that is taken back gives its place on the price back, and the receipt itself is no cost', () => {
  const bottle = emptyBottle(10);
  const drawn = next(bottle, { kind: 'draw', amount: 4, minute: 1 }, 1);
  const back = next(drawn, { kind: 'reverse', amount: 1, minute: 1 }, 2);
  const { sides, left } = account(micros(1_000), stock(10), back.movements);
  expect(sides.spray).toEqual({ out: 400, back: 400 });
  expect(sides.supplier).toEqual({ out: 0, back: 0 });
  expect(left).toBe(1_000);
});

test('a receipt that is taken back sends the whole price back to the supplier', () => {
  const bottle = next(emptyBottle(10), { kind: 'reverse', amount: 0, minute: 1 }, 1);
  const { sides, left } = account(micros(1_000), stock(10), bottle.movements);
  expect({ left, supplier: sides.supplier }).toEqual({ left: 0, supplier: { out: 1_000, back: 0 } });
});
