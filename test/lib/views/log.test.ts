import { createHash } from 'node:crypto';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { recordsAnswer, recordsCsv } from '@/lib/views/log';
import { recordSeen } from '@/lib/views/record';
import { recordBook } from '@/lib/views/record-book';
import { LogQuestion } from '@/shared/api/questions';
import type { ShopFile } from '@/shared/shop-file/contract';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

/** How many records are amended five times each: ten, or as many as somebody asks for. */
const AMENDED = Number(process.env.AMENDED_RECORDS ?? 10);

const sprayed = (id: string, day: string, more: Partial<ShopFile['applications'][number]> = {}) => {
  const [one] = SMALL.applications;
  if (!one) throw new Error('the small shop has a record');
  return { ...one, id, startedAt: `${day}T10:00:00Z`, endedAt: `${day}T11:00:00Z`, ...more };
};

const ask = (shop: string, asked: object = {}) => LogQuestion.parse({ shop, ...asked });

async function listed(shop: string, asked: object = {}): Promise<string[]> {
  const answer = await recordsAnswer(ask(shop, asked), CLOCK);
  if (!answer.ok) throw new Error('the log was refused');
  return answer.value.records.map(({ id }) => id);
}

test('the log finds records by bench, product, days and person, the last one sprayed first', async () => {
  const shopId = await smallShop({
    ...SMALL,
    benches: [...SMALL.benches, ...SMALL.benches.map((bench) => ({ ...bench, id: 'c', name: 'Other' }))],
    applications: [
      sprayed('one', '2026-03-01', { by: 'Ada' }),
      sprayed('two', '2026-03-20', { benches: ['c'], by: 'Björn' }),
      // Half past three at night in UTC is still the day before where the shop is.
      sprayed('three', '2026-03-10', { startedAt: '2026-03-11T03:30:00Z', endedAt: '2026-03-11T04:00:00Z' }),
    ],
  });
  expect(await listed(shopId)).toEqual(['two', 'three', 'one']);
  expect(await listed(shopId, { bench: 'c' })).toEqual(['two']);
  expect(await listed(shopId, { product: 'p' })).toEqual(['two', 'three', 'one']);
  expect(await listed(shopId, { product: 'q' })).toEqual([]);
  expect(await listed(shopId, { from: '2026-03-10', to: '2026-03-10' })).toEqual(['three']);
  expect(await listed(shopId, { from: '2026-03-11' })).toEqual(['two']);
  expect(await listed(shopId, { person: 'bjorn' })).toEqual(['two']);
  expect(await listed(shopId, { person: 'owner', to: '2026-03-05' })).toEqual(['one']);
});

test(`${AMENDED} records amended five times each keep every version, in the file and in the list`, {
  timeout: 300_000,
}, async () => {
  const ids = Array.from({ length: AMENDED }, (_, number) => `a${number}`);
  const shopId = await smallShop({ ...SMALL, programs: [], applications: ids.map((id) => sprayed(id, '2026-03-02')) });
  for (const application of ids) {
    for (const round of [1, 2, 3, 4, 5]) {
      const change = { conditions: `=round ${round}, "dry"` };
      await amendApplication({ commandId: newId(), shopId, application, change, reason: `reason ${round}` }, CLOCK);
    }
  }
  const answer = await recordsAnswer(ask(shopId), CLOCK);
  if (!answer.ok) throw new Error('the log was refused');
  const versions = answer.value.records.flatMap((record) => record.versions);
  expect(versions).toHaveLength(AMENDED * 6);
  expect(new Set(versions.map(({ conditions }) => conditions))).toEqual(
    new Set([null, ...[1, 2, 3, 4, 5].map((round) => `=round ${round}, "dry"`)]),
  );
  // Whoever has the file can make every hash again, and follow it to the newest one.
  const seals = versions.map(({ seal }) => seal).sort((a, b) => (a?.line ?? 0) - (b?.line ?? 0));
  let before = '0'.repeat(64);
  for (const seal of seals) {
    expect(
      createHash('sha256')
        .update(seal?.text ?? '')
        .digest('hex'),
    ).toBe(seal?.hash);
    expect(seal?.previousHash).toBe(before);
    before = seal?.hash ?? '';
  }
  expect(answer.value.newestHash).toBe(before);

  const csv = await recordsCsv(ask(shopId), CLOCK);
  if (!csv.ok) throw new Error('the list was refused');
  const lines: Record<string, string>[] = parse(csv.value, { columns: true, bom: true });
  expect(lines).toHaveLength(AMENDED * 6);
  expect(lines.filter(({ state }) => state === 'counts')).toHaveLength(AMENDED);
  // What a spreadsheet would take for a formula is none.
  expect(lines.some(({ conditions }) => /^[=+\-@]/.test(conditions ?? ''))).toBe(false);
  expect(lines.some(({ conditions }) => conditions === `'=round 3, "dry"`)).toBe(true);
});

test('neither the client nor a statement rewrites or removes a version', async () => {
  await smallShop();
  const { writer } = await database();
  await expect(writer.applicationVersion.updateMany({ data: { conditions: 'other' } })).rejects.toThrow();
  await expect(writer.recordSeal.deleteMany()).rejects.toThrow();
  await expect(writer.$executeRawUnsafe('UPDATE "RecordSeal" SET "hash" = \'0\'')).rejects.toThrow();
});

test('a record tells of its amendment, of what nobody has confirmed, and of who did', async () => {
  const shopId = await smallShop({
    ...SMALL,
    programs: [],
    applications: [sprayed('a', '2026-03-31')].map((one) => ({
      ...one,
      startedAt: '2026-03-31T05:00:00Z',
      endedAt: '2026-03-31T06:00:00Z',
    })),
  });
  const amend = { shopId, application: 'a', change: { withdrawn: true }, reason: 'entered in error' };
  await amendApplication({ commandId: '1', actor: 'Ada', ...amend }, CLOCK);
  const record = async () => {
    const answer = await recordsAnswer(ask(shopId), CLOCK);
    return answer.ok ? answer.value.records[0] : undefined;
  };
  expect(await record()).toMatchObject({
    state: 'unconfirmed',
    versions: [
      { version: 1, enteredBy: 'owner', withdrawn: false, unconfirmed: false },
      // 6 o'clock and 12.5 hours, where the shop is four hours behind.
      {
        version: 2,
        enteredBy: 'Ada',
        reason: 'entered in error',
        withdrawn: true,
        unconfirmed: true,
        closedUntil: '2026-03-31T14:30:00-04:00',
      },
    ],
  });
  const seen = async () => {
    const book = await recordBook(shopId);
    return book.records.map((one) => recordSeen(book, one, []))[0];
  };
  // Whoever withdrew it by mistake can take that back before anybody confirms it.
  expect(await seen()).toMatchObject({ counting: 'unconfirmed', isWithdrawn: true });
  await confirmAmendment({ commandId: '2', actor: 'Bo', shopId, application: 'a', version: 2, reason: 'asked' }, CLOCK);
  expect(await record()).toMatchObject({
    state: 'withdrawn',
    versions: [{}, { unconfirmed: false, confirmed: { by: 'Bo', reason: 'asked' }, confirmationSeal: { line: 3 } }],
  });
  const restore = { shopId, application: 'a', change: { withdrawn: false }, reason: 'it was right after all' };
  await amendApplication({ commandId: '3', ...restore }, CLOCK);
  expect(await seen()).toMatchObject({ counting: 'counts', isWithdrawn: false });
});

test('a withdrawal that is taken back before anybody confirmed it leaves the record counting, with nothing to confirm', async () => {
  const shopId = await smallShop({ ...SMALL, programs: [], applications: [sprayed('a', '2026-03-30')] });
  const amend = async (commandId: string, withdrawn: boolean) => {
    await amendApplication({ commandId, shopId, application: 'a', change: { withdrawn }, reason: 'a slip' }, CLOCK);
    const book = await recordBook(shopId);
    return book.records.map((one) => recordSeen(book, one, []))[0];
  };
  expect(await amend('1', true)).toMatchObject({ counting: 'unconfirmed', isWithdrawn: true });
  const back = await amend('2', false);
  expect(back).toMatchObject({ counting: 'counts', isWithdrawn: false });
  expect(back?.versions[0]).toMatchObject({ isPending: false });
});
