import { expect, test } from 'vitest';
import { keepSafetySheet } from '@/lib/commands/keep-safety-sheet';
import { putAwaySheet } from '@/lib/commands/put-away-sheet';
import { database } from '@/lib/data/database';
import { sheetsKept, sheetWithBytes } from '@/lib/data/safety-sheets';
import { MOST_SHEET_BYTES, sheetFault } from '@/shared/forms/safety-sheet';
import { CLOCK } from '../data/fresh-database';
import { smallShop } from './small-shop';

const pdf = (inside = 'x') => new TextEncoder().encode(`%PDF-1.7\n${inside}\n%%EOF\n`);

test('a product keeps every sheet that was given to it, and the newest counts', async () => {
  const shopId = await smallShop();
  const keep = (commandId: string, bytes: Uint8Array, product = 'p') =>
    keepSafetySheet({ commandId, shopId, actor: 'Ada', product, fileName: `${commandId}.pdf`, bytes }, CLOCK);
  expect(await keep('one', pdf('first'))).toEqual({ ok: true, value: { number: 1 } });
  expect(await keep('one', pdf('first'))).toEqual({ ok: true, value: { number: 1 } });
  expect(await keep('one', pdf('other'))).toMatchObject({ refusal: { code: 'same-key-other-body' } });
  expect(await keep('two', pdf('second'))).toEqual({ ok: true, value: { number: 2 } });
  expect(await keep('three', pdf(), 'zz')).toMatchObject({ refusal: { code: 'not-found' } });
  expect(await sheetsKept(shopId, 'p')).toMatchObject([
    { number: 2, fileName: 'two.pdf', actor: 'Ada', size: pdf('second').length },
    { number: 1, fileName: 'one.pdf' },
  ]);
  expect((await sheetWithBytes(shopId, 'p'))?.bytes).toEqual(pdf('second'));
  expect((await sheetWithBytes(shopId, 'p', 1))?.bytes).toEqual(pdf('first'));
  expect(await sheetWithBytes(shopId, 'q')).toBe(null);
  const { writer } = await database();
  await expect(writer.safetySheet.deleteMany()).rejects.toThrow();
  await expect(writer.safetySheet.updateMany({ data: { fileName: 'x' } })).rejects.toThrow();
});

test('a sheet that is put away counts no more, stays kept, and can be taken out again', async () => {
  const shopId = await smallShop();
  for (const name of ['one', 'two']) {
    const bytes = pdf(name);
    await keepSafetySheet(
      { commandId: name, shopId, actor: 'Ada', product: 'p', fileName: `${name}.pdf`, bytes },
      CLOCK,
    );
  }
  const shelve = (number: number, isAway: boolean, commandId: string, product = 'p') =>
    putAwaySheet({ commandId, shopId, product, number, isAway }, CLOCK);
  const counts = async () => (await sheetWithBytes(shopId, 'p'))?.fileName ?? null;
  expect(await shelve(2, true, 'a')).toEqual({ ok: true, value: { isAway: true } });
  expect(await counts()).toBe('one.pdf');
  expect((await sheetWithBytes(shopId, 'p', 2))?.bytes).toEqual(pdf('two'));
  expect(await sheetsKept(shopId, 'p')).toMatchObject([
    { number: 2, isAway: true },
    { number: 1, isAway: false },
  ]);
  await shelve(1, true, 'b');
  expect(await counts()).toBe(null);
  await shelve(2, false, 'c');
  expect(await counts()).toBe('two.pdf');
  expect(await shelve(3, true, 'd')).toMatchObject({ refusal: { code: 'not-found' } });
  expect(await shelve(1, true, 'e', 'q')).toMatchObject({ refusal: { code: 'not-found' } });
});

test('a sheet whose bytes are no longer those that were kept is not shown', async () => {
  const shopId = await smallShop();
  await keepSafetySheet({ commandId: '1', shopId, product: 'p', fileName: 'a.pdf', bytes: pdf() }, CLOCK);
  const { writer } = await database();
  await writer.$executeRawUnsafe('DROP TRIGGER "SafetySheet_no_update"');
  await writer.$executeRawUnsafe(`UPDATE "SafetySheet" SET "bytes" = X'25504446'`);
  expect(await sheetWithBytes(shopId, 'p')).toBe(null);
});

test.each([
  ['nothing', new Uint8Array(), 'empty'],
  ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47]), 'no PDF'],
  ['a page that names itself one', new TextEncoder().encode('<html>%PDF-1.7 %%EOF'), 'no PDF'],
  ['half of one', pdf('x'.repeat(5_000)).slice(0, 2_500), 'not whole'],
  ['one byte too many', new Uint8Array(MOST_SHEET_BYTES + 1), '10 MB'],
])('%s is refused, with what to choose instead', (_, bytes, word) => {
  expect(sheetFault(bytes)).toContain(word);
});

test('a PDF of ten megabytes is taken', () => {
  const bytes = new Uint8Array(MOST_SHEET_BYTES);
  bytes.set(new TextEncoder().encode('%PDF-2.0\n'));
  bytes.set(new TextEncoder().encode('\n%%EOF'), MOST_SHEET_BYTES - 6);
  expect(sheetFault(bytes)).toBe(null);
});
