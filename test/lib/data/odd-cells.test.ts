import { expect, test } from 'vitest';
import { putRight } from '@/lib/commands/put-right';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { unreadOfSentence, unreadScreen } from '@/lib/views/unread';
import { unreadIn } from '@/shared/shop-file/unread';
import { CLOCK } from './fresh-database';
import { shopWith } from './shop-with-odd-rows';

test.each([
  ['that comes to less than nothing', `UPDATE Movement SET fromSide = 'container', toSide = 'waste' WHERE lotId = 'l'`],
  ['with an amount that is a text', `UPDATE Movement SET amount = 'garbage' WHERE lotId = 'l'`],
  ['with half a microlitre', `UPDATE Movement SET amount = 0.5 WHERE lotId = 'l'`],
  ['with a movement to nowhere', `UPDATE Movement SET toSide = 'garbage' WHERE lotId = 'l'`],
])('a ledger %s gives no level: the lot is left out, not taken for full or empty', async (_, sql) => {
  const file = await shopFileOf(await shopWith(sql));
  expect(file.lots.map(({ id }) => id)).toEqual(['m']);
  expect(unreadOfSentence(file, { list: 'lots', id: 'l' })).toContain('remaining');
});

test.each([
  ['benches', 'b2', `UPDATE Bench SET customers = 'perhaps' WHERE id = 'b2'`, 'customers', false],
  ['benches', 'b2', `UPDATE Bench SET enclosed = 'perhaps' WHERE id = 'b2'`, 'enclosed', false],
  ['products', 'p', `UPDATE Product SET alkaliSilicate = 'perhaps' WHERE id = 'p'`, 'alkaliSilicate', true],
  ['applications', 'a', `UPDATE ApplicationVersion SET extra = 'perhaps' WHERE applicationId = 'a'`, 'extra', true],
  ['applications', 'a', `UPDATE ApplicationVersion SET withdrawn = 7 WHERE applicationId = 'a'`, 'withdrawn', false],
] as const)('of %s %s: a yes or no that cannot be read is asked, and never taken for no: %s', async (...row) => {
  const [list, id, sql, field, right] = row;
  const before = (await shopFileOf(await shopWith('SELECT 1')))[list].find((one) => one.id === id);
  const shopId = await shopWith(sql);
  const [thing] = unreadScreen(await shopFileOf(shopId)).things;
  expect(thing).toMatchObject({ list, id, odd: [{ path: field, isYesNo: true, proposed: '' }] });
  const sent = { shopId, list, id, reason: 'looked' };
  const put = (is: string | null) => putRight({ ...sent, commandId: newId(), values: [{ path: field, is }] }, CLOCK);
  for (const is of [null, 'perhaps', 'toString']) {
    expect(await put(is)).toMatchObject({ refusal: { faults: [{ path: field }] } });
  }
  expect(await put(right ? 'yes' : 'no')).toMatchObject({ ok: true });
  const file = await shopFileOf(shopId);
  expect(unreadIn(file)).toEqual([]);
  const it = file[list].find((one) => one.id === id);
  expect(it).toMatchObject({ [field]: right });
  expect({ ...it, [field]: null }).toEqual({ ...before, [field]: null });
});
