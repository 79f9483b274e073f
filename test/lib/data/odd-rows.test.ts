import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { putRight } from '@/lib/commands/put-right';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { shopFileAnswer } from '@/lib/views/documents';
import { unreadOfSentence } from '@/lib/views/unread';
import { explain } from '@/shared/outcome';
import { type UnreadThing, unreadIn } from '@/shared/shop-file/unread';
import { parsedOrThrow } from './any-shop-file';
import { CLOCK } from './fresh-database';
import { shopWith, TWO } from './shop-with-odd-rows';

const statesIn = async (shopId: string) =>
  Object.fromEntries(
    keepOut(shopOfFile(await shopFileOf(shopId)), CLOCK.now()).map(({ bench, state }) => [bench.id, state]),
  );

test('every bench of the sound shop is open', async () => {
  expect(await statesIn(await shopWith('SELECT 1'))).toEqual({ b: 'open', b2: 'open' });
});

const CLOSED = 'unknown';
const ROWS: [what: string, sql: string, of: string, benches: Record<string, string>][] = [
  [
    'a product whose name holds a tab',
    `UPDATE Product SET name = 'So' || char(9) || 'ap' WHERE id = 'p'`,
    'products p',
    { b: CLOSED, b2: 'open' },
  ],
  [
    'a product whose name is a space',
    `UPDATE Product SET name = ' ' WHERE id = 'q'`,
    'products q',
    { b: 'open', b2: CLOSED },
  ],
  [
    'a product whose kind is none',
    `UPDATE Product SET kind = 'magic' WHERE id = 'q'`,
    'products q',
    { b: 'open', b2: CLOSED },
  ],
  [
    'a recipe whose name holds a line separator',
    `UPDATE RecipeVersion SET name = 'R' || char(8232) WHERE recipeId = 'r2'`,
    'recipes r2',
    { b: 'open', b2: CLOSED },
  ],
  [
    'a recipe whose dose is none',
    `UPDATE Ingredient SET dose = 'much' WHERE recipeId = 'r'`,
    'recipes r',
    { b: CLOSED, b2: 'open' },
  ],
  [
    'a bench whose name holds a mark of direction',
    `UPDATE Bench SET name = char(8238) || 'x' WHERE id = 'b2'`,
    'benches b2',
    { b: 'open', b2: CLOSED },
  ],
  [
    'a record mixed in 1970',
    `UPDATE ApplicationVersion SET mixedAt = 0 WHERE applicationId = 'a'`,
    'applications a',
    { b: CLOSED, b2: 'open' },
  ],
  [
    'a record begun in the year 3000',
    `UPDATE ApplicationVersion SET startedAt = 32503680000000 WHERE applicationId = 'a2'`,
    'applications a2',
    { b: 'open', b2: CLOSED },
  ],
  [
    'a record by somebody with a tab',
    `UPDATE ApplicationVersion SET sprayedBy = 'A' || char(9) WHERE applicationId = 'a'`,
    'applications a',
    { b: CLOSED, b2: 'open' },
  ],
  [
    'a record of a bench that is not there',
    `UPDATE ApplicationBench SET benchId = 'gone' WHERE applicationId = 'a'`,
    'applications a',
    { b: CLOSED, b2: CLOSED },
  ],
  ['a program with an odd day', `UPDATE Program SET endsOn = '3000-01-01'`, 'programs g', { b: CLOSED, b2: 'open' }],
  [
    'a lot received in 1970',
    `UPDATE Lot SET receivedOn = '1970-01-01' WHERE id = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a lot with a last day in 9999',
    `UPDATE Container SET expiresOn = '9999-12-31' WHERE lotId = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a lot in a place of nothing',
    `UPDATE Container SET keptIn = ' ' WHERE lotId = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a lot that holds less than nothing',
    `UPDATE Movement SET fromSide = 'container', toSide = 'waste' WHERE lotId = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a lot with a movement whose amount is a text',
    `UPDATE Movement SET amount = 'garbage' WHERE lotId = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a lot with a movement of half a microlitre',
    `UPDATE Movement SET amount = 0.5 WHERE lotId = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a lot with a movement to nowhere',
    `UPDATE Movement SET toSide = 'garbage' WHERE lotId = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a lot of a liquid by weight, and nobody knows its density',
    `UPDATE Lot SET packText = '500 g' WHERE id = 'l'`,
    'lots l',
    { b: 'open', b2: 'open' },
  ],
  [
    'a recipe with a dose of a substance that is not in it',
    `UPDATE Ingredient SET dose = '40 ppm spinosad' WHERE recipeId = 'r'`,
    'recipes r',
    { b: CLOSED, b2: 'open' },
  ],
  [
    'a product whose interval is a text',
    `UPDATE Product SET reiHours = 'garbage' WHERE id = 'p'`,
    'products p',
    { b: CLOSED, b2: 'open' },
  ],
  [
    'a supplier whose working days are broken JSON',
    `UPDATE Supplier SET workingDays = '["mon",'`,
    'suppliers s',
    { b: 'open', b2: 'open' },
  ],
  [
    'a bench of which nobody can read whether customers come to it',
    `UPDATE Bench SET customers = 'perhaps' WHERE id = 'b2'`,
    'benches b2',
    { b: 'open', b2: CLOSED },
  ],
  ['an offer whose lead time is half a day', `UPDATE Offer SET leadDays = 0.5`, 'offers o', { b: 'open', b2: 'open' }],
  ['a supplier with an odd name', `UPDATE Supplier SET name = char(9)`, 'suppliers s', { b: 'open', b2: 'open' }],
  ['an offer of an odd pack', `UPDATE Offer SET packText = 'some'`, 'offers o', { b: 'open', b2: 'open' }],
  [
    'a shop whose address holds a line break',
    `UPDATE Shop SET address = 'a' || char(10) || 'b'`,
    'shop shop',
    { b: 'open', b2: 'open' },
  ],
];

test.each(ROWS)(
  '%s costs that one thing and the benches it may have closed, and nothing else',
  async (_what, sql, of, benches) => {
    const shopId = await shopWith(sql);
    const file = await shopFileOf(shopId);
    expect(
      unreadIn(file)
        .filter(({ isCaused }) => !isCaused)
        .map(({ list, id }) => `${list} ${id}`),
    ).toEqual([of]);
    for (const { odd } of unreadIn(file)) for (const { message } of odd) expect(message).toMatch(/\.$/);
    expect(await statesIn(shopId)).toEqual(benches);
    // What is left is a whole shop: it passes every check that a file passes.
    parsedOrThrow(file);
  },
);

test('two odd rows are two things, and a bench that either may have closed is kept out of', async () => {
  const shopId = await shopWith(`${ROWS[0]?.[1]}; ${ROWS[7]?.[1]}`);
  expect(unreadIn(await shopFileOf(shopId))).toHaveLength(2);
  expect(await statesIn(shopId)).toEqual({ b: CLOSED, b2: CLOSED });
});

/** What each odd thing should say, by the place of the value in it; and whether its benches are open again then. */
const RIGHT: [of: string, row: string, values: Record<string, string | null>][] = [
  ['products', 'a product whose name holds a tab', { name: 'Soap' }],
  ['products', 'a product whose kind is none', { kind: 'fungicide' }],
  ['products', 'a product whose interval is a text', { 'label.reiHours': '4' }],
  ['suppliers', 'a supplier whose working days are broken JSON', { workingDays: null }],
  ['offers', 'an offer whose lead time is half a day', { leadDays: '3' }],
  ['recipes', 'a recipe whose name holds a line separator', { name: 'Sulfur' }],
  ['recipes', 'a recipe whose dose is none', { 'ingredients[0].dose': '12 mL/gal' }],
  ['benches', 'a bench whose name holds a mark of direction', { name: 'Second' }],
  ['applications', 'a record mixed in 1970', { mixedAt: '2026-02-24T22:00:00Z' }],
  ['applications', 'a record begun in the year 3000', { startedAt: '2026-02-24T22:30:00Z' }],
  ['applications', 'a record by somebody with a tab', { by: null }],
  ['applications', 'a record of a bench that is not there', { 'benches[0]': 'b' }],
  ['programs', 'a program with an odd day', { endsOn: null }],
  ['lots', 'a lot received in 1970', { receivedOn: '2026-02-02' }],
  ['lots', 'a lot with a last day in 9999', { expiresOn: null }],
  ['lots', 'a lot in a place of nothing', { keptIn: 'shelf' }],
  ['suppliers', 'a supplier with an odd name', { name: 'Supplier' }],
  ['offers', 'an offer of an odd pack', { pack: '500 mL' }],
  ['shop', 'a shop whose address holds a line break', { address: 'a, b' }],
];

test.each(RIGHT)('of %s: %s is put right, on record, and its benches are told of again', async (list, row, right) => {
  const [, sql = '', of = ''] = ROWS.find(([what]) => what === row) ?? [];
  const shopId = await shopWith(sql);
  const values = Object.entries(right).map(([path, is]) => ({ path, is }));
  const [, id = ''] = of.split(' ');
  const sent = { shopId, list: list as UnreadThing['list'], id, values, actor: 'Ada', reason: 'looked' };
  const stillOdd = values.map(({ path }) => ({ path, is: 'odd\tvalue' }));
  expect(await putRight({ ...sent, commandId: newId(), values: stillOdd }, CLOCK)).toMatchObject({
    refusal: { code: 'faults', faults: [{ path: values[0]?.path, message: expect.stringMatching(/\.$/) }] },
  });
  const outcome = await putRight({ ...sent, commandId: newId() }, CLOCK);
  expect(outcome).toMatchObject({ ok: true, value: { list, id, reason: 'looked' } });
  const file = await shopFileOf(shopId);
  expect(unreadIn(file)).toEqual([]);
  expect(await statesIn(shopId)).toEqual({ b: 'open', b2: 'open' });
  const { reader } = await database();
  const [line] = await reader.command.findMany({ where: { shopId, name: 'putRight' } });
  expect(line).toMatchObject({ actor: 'Ada', answer: [{ was: values.map(({ path }) => ({ path })) }] });
  // It comes out as a file and goes in again.
  const again = await importShopFile({ commandId: newId(), file: parsedOrThrow(file), into: { isDemo: false } }, CLOCK);
  expect(again.ok && (await shopFileOf(again.value.shopId))).toEqual(file);
});

const sqlOf = (row: string): string => ROWS.find(([what]) => what === row)?.[1] ?? '';

test('a file of a shop in which something cannot be read is refused by name, and nothing is brought into it', async () => {
  const shopId = await shopWith(sqlOf('a lot received in 1970'));
  const answer = await shopFileAnswer({ shop: shopId });
  expect(answer).toMatchObject({ ok: false, refusal: { code: 'things-unread', count: 1 } });
  expect(answer.ok || explain(answer.refusal)).toMatch(
    /lot "l", receivedOn: .* Put this right on the Setup page first/,
  );
  const into = { shopId, fingerprint: fingerprint(await shopFileOf(shopId)) };
  expect(await importShopFile({ commandId: newId(), file: TWO, into }, CLOCK)).toMatchObject({
    refusal: { code: 'things-unread' },
  });
  const part = { lots: TWO.lots.filter(({ id }) => id === 'l') };
  expect(await changeShop({ commandId: newId(), shopId, part }, CLOCK)).toMatchObject({
    refusal: { code: 'things-unread' },
  });
});

test('a ledger that comes to less than nothing is not put right by hand, and says so', async () => {
  const shopId = await shopWith(sqlOf('a lot that holds less than nothing'));
  const sent = {
    shopId,
    list: 'lots' as const,
    id: 'l',
    values: [{ path: 'remaining', is: '1 mL' }],
    reason: 'looked',
  };
  expect(await putRight({ ...sent, commandId: newId() }, CLOCK)).toMatchObject({
    refusal: { code: 'faults', faults: [{ path: 'remaining', message: expect.stringContaining('Restore a backup') }] },
  });
});

test('what cannot be read is said of its own thing and in its list, with the benches that are kept out of', async () => {
  const file = await shopFileOf(await shopWith(sqlOf('a recipe whose dose is none')));
  const said = unreadOfSentence(file, { list: 'recipes', id: 'r' });
  expect(said).toMatch(/^ingredients\[0\]\.dose: .* Kept out of until it can be read: Bench\.$/);
  expect(unreadOfSentence(file, { list: 'recipes', id: 'r2' })).toBe(null);
  expect(unreadOfSentence(file, { list: 'recipes' })).toMatch(/^recipe "r" is left out: /);
  expect(unreadOfSentence(file, { list: 'programs', id: 'g' })).toMatch(/names the recipe "r", which cannot be read/);
  expect(unreadOfSentence(file, { list: 'benches', id: 'b' })).toBe(null);
  const other = await shopFileOf(await shopWith(sqlOf('a product whose interval is a text')));
  expect(unreadOfSentence(other, { list: 'products', id: 'p' })).toMatch(
    /^label\.reiHours: A value of the wrong kind stands here\. Write hours, 0 or more; null when it is unknown\. Kept/,
  );
});
