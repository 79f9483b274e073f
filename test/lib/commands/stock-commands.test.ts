import { expect, test } from 'vitest';
import { countContainer } from '@/lib/commands/count-container';
import { discardStock } from '@/lib/commands/discard-stock';
import { drawStock } from '@/lib/commands/draw-stock';
import { openContainer } from '@/lib/commands/open-container';
import { receiveLot } from '@/lib/commands/receive-lot';
import { reverseMovement } from '@/lib/commands/reverse-movement';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { explain } from '@/shared/outcome';
import { micros, stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { figure } from '@/test/promises/figure';
import { CLOCK } from '../data/fresh-database';
import { lotOf, smallShop, today } from './small-shop';

const draw = (
  shopId: string,
  millilitres: number,
  of: { lot?: string; place?: number; hour?: number; id?: string } = {},
) => {
  const { lot = 'l', place = 0, hour = 8, id = newId() } = of;
  const amount = stock(1_000 * millilitres);
  return drawStock({ commandId: id, shopId, lot, place, amount, drawnAt: today(hour) }, CLOCK);
};

test('of 300 requests at once to draw 7 mL from a bottle of 500 mL, exactly 71 are met and the others politely refused', {
  timeout: 240_000,
}, async () => {
  const shopId = await smallShop();
  const outcomes = await Promise.all(Array.from({ length: 300 }, () => draw(shopId, 7)));
  const met = outcomes.filter(({ ok }) => ok);
  expect(met.length).toBe(71);
  figure(8, `${met.length} of ${outcomes.length} met (SQLite)`);
  expect((await lotOf(shopId, 'l')).remaining).toBe('3 mL');
  const refused = outcomes.find(({ ok }) => !ok);
  if (!refused || refused.ok) throw new Error('nothing was refused');
  expect(explain(refused.refusal)).toBe(
    'There is not enough left: 7 mL wanted, 3 mL there. Take less, or count the bottle.',
  );
});

test('the first draw opens a bottle on its day in the shop, and a late entry opens it earlier', async () => {
  const shopId = await smallShop();
  await drawStock({ commandId: '1', shopId, lot: 'l', place: 0, amount: stock(1), drawnAt: today(3) }, CLOCK);
  // At three in the morning in UTC it is still the evening before in New York.
  expect(await lotOf(shopId, 'l')).toMatchObject({ openedOn: '2026-03-30', remaining: '499.999 mL' });
  const earlier = instantOf(Date.UTC(2026, 2, 20, 12));
  await drawStock({ commandId: '2', shopId, lot: 'l', place: 0, amount: stock(1), drawnAt: earlier }, CLOCK);
  expect((await lotOf(shopId, 'l')).openedOn).toBe('2026-03-20');
});

test('drawing from one of three leaves two full ones together, with their share of the price', async () => {
  const shopId = await smallShop();
  expect((await draw(shopId, 100, { lot: 'm', place: 1 })).ok).toBe(true);
  expect(await lotOf(shopId, 'm')).toMatchObject({ count: 2, remaining: null, paid: '66.666667' });
  expect(await lotOf(shopId, 'm~2')).toMatchObject({ count: 1, remaining: '400 mL', paid: '33.333333' });
  expect((await draw(shopId, 100, { lot: 'm~2' })).ok).toBe(true);
  expect((await lotOf(shopId, 'm~2')).remaining).toBe('300 mL');
  expect(await draw(shopId, 1, { lot: 'm', place: 2 })).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
});

test('a bottle is opened once, and not before it came', async () => {
  const shopId = await smallShop();
  const open = (commandId: string, day: string) =>
    openContainer({ commandId, shopId, lot: 'l', place: 0, openedOn: Day.parse(day) }, CLOCK);
  expect(await open('1', '2026-02-01')).toEqual({
    ok: false,
    refusal: { code: 'before-received', receivedOn: '2026-02-02' },
  });
  expect(await open('2', '2026-02-02')).toEqual({ ok: true, value: { openedOn: '2026-02-02' } });
  expect(await open('2', '2026-02-02')).toEqual({ ok: true, value: { openedOn: '2026-02-02' } });
  expect(await open('3', '2026-02-03')).toEqual({ ok: false, refusal: { code: 'already-opened', on: '2026-02-02' } });
});

test('what was counted and thrown away is in the books with its reason', async () => {
  const shopId = await smallShop();
  const at = { shopId, lot: 'l', place: 0 };
  await countContainer({ ...at, commandId: '1', found: stock(450_000), countedAt: today(8), reason: 'leaked' }, CLOCK);
  await discardStock({ ...at, commandId: '2', amount: stock(50_000), discardedAt: today(8), reason: 'clotted' }, CLOCK);
  const same = await countContainer(
    { ...at, commandId: '3', found: stock(400_000), countedAt: today(8), reason: null },
    CLOCK,
  );
  expect(same).toEqual({ ok: true, value: { movement: null } });
  const { reader } = await database();
  const lines = await reader.movement.findMany({ where: { shopId, lotId: 'l' }, orderBy: { number: 'asc' } });
  expect(lines.map(({ kind, fromSide, toSide, amount, reason }) => [kind, fromSide, toSide, amount, reason])).toEqual([
    ['received', 'supplier', 'container', 500_000n, null],
    ['counted', 'container', 'count', 50_000n, 'leaked'],
    ['discarded', 'container', 'waste', 50_000n, 'clotted'],
  ]);
});

test('a draw that is taken back leaves both lines in the books and the bottle as it was', async () => {
  const shopId = await smallShop();
  const drawn = await draw(shopId, 100);
  if (!drawn.ok) throw new Error('a draw was refused');
  const reverse = (commandId: string) =>
    reverseMovement({ commandId, shopId, movement: drawn.value.movement, reason: 'wrong bottle' }, CLOCK);
  const first = await reverse('1');
  expect(first.ok).toBe(true);
  expect(await reverse('1')).toEqual(first);
  expect(await reverse('2')).toMatchObject({ ok: false, refusal: { code: 'already-reversed' } });
  expect((await lotOf(shopId, 'l')).remaining).toBe(null);
});

test('a lot that comes in gets an id of its own, and each bottle its share of the price', async () => {
  const shopId = await smallShop();
  const receive = (commandId: string, change = {}) =>
    receiveLot(
      {
        ...{ commandId, shopId, product: 'p', pack: '1 qt', count: 3, paid: micros(10) },
        ...{ receivedOn: Day.parse('2026-03-31'), expiresOn: null, keptIn: null, ...change },
      },
      CLOCK,
    );
  const received = await receive('1');
  if (!received.ok) throw new Error('a lot was refused');
  expect(await receive('1')).toEqual(received);
  expect((await shopFileOf(shopId)).lots).toHaveLength(3);
  expect(await lotOf(shopId, received.value.lot)).toMatchObject({
    pack: '1 qt',
    count: 3,
    paid: '0.00001',
    remaining: null,
  });
  expect(await receive('2', { product: 'zz' })).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
  for (const change of [
    { pack: '1 oz' },
    { pack: '1 lb' },
    { pack: '0 mL' },
    { count: 0 },
    { count: 1.5 },
    { count: Number.NaN },
  ]) {
    expect(await receive(newId(), change)).toMatchObject({
      ok: false,
      refusal: { code: 'faults', faults: [expect.anything()] },
    });
  }
  expect((await shopFileOf(shopId)).lots).toHaveLength(3);
});

test.each([1.5, Number.NaN, Number.POSITIVE_INFINITY, -1, 2 ** 53 + 2, 1e21])(
  'an amount of %s never reaches the books, cut or whole',
  async (amount) => {
    const shopId = await smallShop();
    const planted = Object.assign(JSON.parse('{}'), { amount }).amount;
    const drawn = drawStock({ commandId: '1', shopId, lot: 'l', place: 0, amount: planted, drawnAt: today(8) }, CLOCK);
    const kept = await drawn.then(({ ok }) => ok).catch(() => false);
    expect(kept).toBe(false);
    expect((await lotOf(shopId, 'l')).remaining).toBe(null);
  },
);
