import { expect, test } from 'vitest';
import { correctLastDay } from '@/lib/commands/correct-last-day';
import { countContainer } from '@/lib/commands/count-container';
import { discardStock } from '@/lib/commands/discard-stock';
import { drawStock } from '@/lib/commands/draw-stock';
import { moveContainer } from '@/lib/commands/move-container';
import { openContainer } from '@/lib/commands/open-container';
import { receiveDelivery } from '@/lib/commands/receive-delivery';
import { reverseMovement } from '@/lib/commands/reverse-movement';
import { shutContainer } from '@/lib/commands/shut-container';
import { containersByName } from '@/lib/data/container-names';
import { historyOf } from '@/lib/data/ledger-rows';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { ledgerLines } from '@/lib/views/bottle-ledger';
import { micros, stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { CLOCK } from '../data/fresh-database';
import { lotOf, smallShop, today } from './small-shop';

const SECOND = { lotId: 'm', place: 1 };

test('a bottle keeps its place in the books while the names of the shop file pass to others', async () => {
  const shopId = await smallShop();
  const at = { shopId, actor: 'Ana' };
  const named = async (lot: string, place: number) => (await containersByName(shopId))(lot, place);
  expect(await named('m', 1)).toEqual(SECOND);
  await openContainer({ ...at, ...SECOND, commandId: newId(), openedOn: Day.parse('2026-03-03') }, CLOCK);
  expect(await named('m', 1)).toEqual({ lotId: 'm', place: 2 });
  expect(await named('m~2', 0)).toEqual(SECOND);
  const drawn = await drawStock({ ...at, ...SECOND, commandId: newId(), amount: stock(1_000), drawnAt: null }, CLOCK);
  expect(drawn.ok).toBe(true);
  expect((await lotOf(shopId, 'm~2')).remaining).toBe('499 mL');
});

test('an opening is taken back as long as nothing was drawn, and both lines stay', async () => {
  const shopId = await smallShop();
  const at = { shopId, ...SECOND, actor: 'Ana' };
  const open = (day: string) => openContainer({ ...at, commandId: newId(), openedOn: Day.parse(day) }, CLOCK);
  const shut = () => shutContainer({ ...at, commandId: newId(), reason: 'it was the other one' }, CLOCK);
  expect(await shut()).toMatchObject({ refusal: { code: 'not-opened' } });
  expect(await open('2026-04-01')).toMatchObject({ refusal: { code: 'faults', faults: [{ path: 'openedOn' }] } });
  await open('2026-03-03');
  expect(await shut()).toEqual({ ok: true, value: { wasOpenedOn: '2026-03-03' } });
  const drawn = await drawStock({ ...at, commandId: newId(), amount: stock(5_000), drawnAt: today(8) }, CLOCK);
  expect(await shut()).toMatchObject({ refusal: { code: 'drawn-since-opened' } });
  const movement = drawn.ok ? drawn.value.movement : '';
  await reverseMovement({ shopId, actor: 'Ben', commandId: newId(), movement, reason: 'wrong bottle' }, CLOCK);
  expect((await shut()).ok).toBe(true);
  const history = await historyOf(shopId, SECOND);
  if (!history) throw new Error('no history');
  const lines = ledgerLines(history, shopOfFile(await shopFileOf(shopId)));
  expect(lines.map(({ what, actor, takenBackBy, takesBack }) => [what.kind, actor, takenBackBy, takesBack])).toEqual([
    ['received', 'owner', null, null],
    ['opened', 'Ana', null, null],
    ['shut', 'Ana', null, null],
    ['opened', 'Ana', null, null],
    ['drawn', 'Ana', 6, null],
    ['reversed', 'Ben', null, 5],
    ['shut', 'Ana', null, null],
  ]);
  expect(lines.flatMap(({ moved }) => (moved ? [[moved.left, moved.cost]] : []))).toEqual([
    [500_000, 33_333_333],
    [495_000, 333_333],
    [500_000, 333_333],
  ]);
});

test('a count that was begun before somebody drew is asked for again, and the draw stays', async () => {
  const shopId = await smallShop();
  const at = { shopId, ...SECOND };
  const counted = { commandId: newId(), found: stock(490_000), countedAt: null, reason: null };
  await drawStock({ ...at, commandId: newId(), amount: stock(20_000), drawnAt: null }, CLOCK);
  expect(await countContainer({ ...at, ...counted, seen: 1 }, CLOCK)).toEqual({
    ok: false,
    refusal: { code: 'ledger-moved', left: 480_000, unit: 'mL' },
  });
  expect((await countContainer({ ...at, ...counted, seen: 2 }, CLOCK)).ok).toBe(true);
  expect((await lotOf(shopId, 'm~2')).remaining).toBe('490 mL');
  const far = { ...counted, commandId: newId(), found: stock(400_000) };
  expect(await countContainer({ ...at, ...far }, CLOCK)).toMatchObject({
    refusal: { code: 'faults', faults: [{ path: 'reason' }] },
  });
});

test('all that is left is thrown away or sent back, and then nothing is left', async () => {
  const shopId = await smallShop();
  const away = { shopId, ...SECOND, amount: null, discardedAt: null, reason: 'returned', returned: true };
  expect((await discardStock({ ...away, commandId: newId() }, CLOCK)).ok).toBe(true);
  expect(await discardStock({ ...away, commandId: newId() }, CLOCK)).toMatchObject({
    refusal: { code: 'nothing-left' },
  });
  const history = await historyOf(shopId, SECOND);
  expect(history?.ledger.movements.at(-1)).toMatchObject({ kind: 'discarded', to: 'supplier', amount: 500_000 });
});

test('where a bottle stands and its printed day are noted once, and the file says so', async () => {
  const shopId = await smallShop();
  const at = { shopId, lotId: 'l', place: 0 };
  const move = () => moveContainer({ ...at, commandId: newId(), keptIn: 'top shelf' }, CLOCK);
  const day = { expiresOn: Day.parse('2027-01-31'), reason: 'misread' };
  expect(await move()).toEqual({ ok: true, value: { moved: true } });
  expect(await move()).toEqual({ ok: true, value: { moved: false } });
  await correctLastDay({ ...at, commandId: newId(), ...day }, CLOCK);
  expect(await correctLastDay({ ...at, commandId: newId(), ...day }, CLOCK)).toMatchObject({
    value: { corrected: false },
  });
  expect(await lotOf(shopId, 'l')).toMatchObject({ keptIn: 'top shelf', expiresOn: '2027-01-31' });
  expect((await historyOf(shopId, { lotId: 'l', place: 0 }))?.lines).toHaveLength(3);
});

test('a delivery comes in whole or not at all', async () => {
  const shopId = await smallShop();
  const lot = { product: 'p', pack: '1 qt', count: 2, paid: micros(9), expiresOn: null, keptIn: 'shed' };
  const receive = (commandId: string, lots: (typeof lot)[]) =>
    receiveDelivery({ commandId, shopId, receivedOn: Day.parse('2026-03-31'), lots }, CLOCK);
  expect(await receive(newId(), [lot, { ...lot, pack: '1 oz' }, { ...lot, count: 0 }])).toMatchObject({
    refusal: { code: 'faults', faults: [{ path: 'lots[1].pack' }, { path: 'lots[2].count' }] },
  });
  expect(await receive(newId(), [])).toMatchObject({ refusal: { code: 'faults' } });
  expect((await shopFileOf(shopId)).lots).toHaveLength(2);
  const command = newId();
  const received = await receive(command, [lot, { ...lot, product: 'q', pack: '1 lb' }]);
  expect(await receive(command, [lot, { ...lot, product: 'q', pack: '1 lb' }])).toEqual(received);
  expect((await shopFileOf(shopId)).lots.map(({ product, count }) => [product, count])).toEqual([
    ['p', 1],
    ['p', 3],
    ['p', 2],
    ['q', 2],
  ]);
});
