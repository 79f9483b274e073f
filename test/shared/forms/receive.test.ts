import { expect, test } from 'vitest';
import { DiscardFromBottle, reasonIn } from '@/shared/forms/bottle';
import { ReceiveDelivery } from '@/shared/forms/receive';
import { readLocalTime } from '@/shared/time/local-time';
import { Zone } from '@/shared/time/zone';

const SENT = { commandId: '0'.repeat(32), shop: 's', receivedOn: '2026-03-03', keptIn: ' shed ' };
const line = (row: number, count: string, paid = '', expiresOn = '') => ({
  [`lots[${row}].offer`]: `o${row}`,
  [`lots[${row}].count`]: count,
  [`lots[${row}].paid`]: paid,
  [`lots[${row}].expiresOn`]: expiresOn,
});

test('of a delivery only what was counted comes in, and a price left empty is not known', () => {
  const read = ReceiveDelivery.parse({
    ...SENT,
    ...line(0, ''),
    ...line(1, '3', '54.5', '2027-01-31'),
    ...line(2, '1'),
  });
  expect(read.lines).toEqual([
    { row: 1, offer: 'o1', count: 3, paid: 54_500_000, expiresOn: '2027-01-31' },
    { row: 2, offer: 'o2', count: 1, paid: null, expiresOn: null },
  ]);
  expect(read.keptIn).toBe('shed');
});

test('what cannot be read of a delivery is said at its own field', () => {
  const read = ReceiveDelivery.safeParse({ ...SENT, ...line(0, '2.5', '$4', '31 Jan'), receivedOn: '', other: 'x' });
  expect(read.success).toBe(false);
  const at = read.error?.issues.map(({ path }) => path.join('.')).sort();
  expect(at).toEqual(['lots[0].count', 'lots[0].expiresOn', 'lots[0].paid', 'other', 'receivedOn']);
});

test('whoever throws away for another reason says which', () => {
  const sent = { commandId: '0'.repeat(32), shop: 's', lotId: 'l', place: '0', much: 'all', why: 'other' };
  expect(DiscardFromBottle.safeParse(sent).error?.issues[0]?.path).toEqual(['words']);
  expect(DiscardFromBottle.safeParse({ ...sent, words: 'frozen' }).success).toBe(true);
  expect([
    reasonIn('', ''),
    reasonIn('other', 'frozen'),
    reasonIn('spilled', ''),
    reasonIn('spilled', 'twice'),
  ]).toEqual([null, 'frozen', 'spilled', 'spilled: twice']);
});

test('a day and a time are those of the shop’s own clock', () => {
  const zone = Zone.parse('America/New_York');
  expect(readLocalTime('2026-03-03T18:15', zone)).toEqual({ ok: true, value: Date.UTC(2026, 2, 3, 23, 15) });
  for (const text of ['', '2026-03-03', '2026-02-30T10:00', '2026-03-03T24:00', '18:15']) {
    expect(readLocalTime(text, zone).ok).toBe(false);
  }
});
