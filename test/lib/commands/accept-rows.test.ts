import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { acceptRows } from '@/lib/commands/accept-rows';
import { confirmClock } from '@/lib/commands/confirm-clock';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { withConfirmation } from '@/lib/confirmation';
import { shownRows } from '@/lib/data/accept-rows';
import { damageOfShop } from '@/lib/data/check-records';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { doubtNow } from '@/lib/views/bench-states';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop } from './small-shop';

/** A change by another program, past every guard. */
async function changed(sql: string): Promise<void> {
  const raw = new Sqlite((await database()).file);
  raw.pragma('ignore_check_constraints = ON');
  raw.exec(sql);
  raw.close();
}

const ENDED = SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' }));
const stored = () => smallShop({ ...SMALL, programs: [], applications: ENDED });

const seenToAccept = async (shopId: string) => (await database()).accepting.seen(shopId);

const accepting = (shopId: string, seen: string, reason = 'put back by hand', commandId = newId()) =>
  acceptRows({ commandId, shopId, actor: 'Ada', seen, reason }, CLOCK);

test('a changed row is accepted as it stands once somebody confirms what opens, and it is on record', async () => {
  const shopId = await stored();
  await changed(`UPDATE "Product" SET "storage" = 'in the shed' WHERE "id" = 'p'`);
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  const found = await seenToAccept(shopId);
  expect(found).toMatchObject([{ table: 'Product', row: 'p', wrong: 'changed', held: { storage: "'in the shed'" } }]);
  const seen = shownRows(found);
  expect(await accepting(shopId, seen, ' ')).toMatchObject({ refusal: { faults: [{ path: 'reason' }] } });
  const asked = await accepting(shopId, seen);
  expect(asked).toMatchObject({
    refusal: { code: 'opens-earlier', openings: [expect.stringContaining('Bench: now')] },
  });
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  if (asked.ok || asked.refusal.code !== 'opens-earlier') throw new Error('it was not asked about');
  const { token } = asked.refusal;
  const done = await withConfirmation({ token, reason: 'looked' }, () => accepting(shopId, seen, 'put back', 'accept'));
  expect(done).toMatchObject({ ok: true, value: { reason: 'put back', rows: [{ table: 'Product', row: 'p' }] } });
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
  expect(await damageOfShop(shopId)).toBe(null);
  const { reader } = await database();
  expect(await reader.earlierOpening.findMany({ where: { shopId } })).toMatchObject([
    { benchId: 'b', wasUntil: null, reason: 'looked', commandId: 'accept' },
  ]);
  expect(await reader.command.findMany({ where: { id: 'accept' } })).toMatchObject([
    { name: 'acceptRows', actor: 'Ada', answer: [{ rows: [{ held: { storage: "'in the shed'" } }] }] },
  ]);
});

test('what was changed again since it was seen is not accepted, and a sound shop has nothing to accept', async () => {
  const shopId = await stored();
  expect(await seenToAccept(shopId)).toEqual([]);
  expect(await accepting(shopId, '0'.repeat(64))).toMatchObject({ refusal: { code: 'not-found' } });
  await changed(`UPDATE "Bench" SET "coverage" = 0.5`);
  const seen = shownRows(await seenToAccept(shopId));
  await changed(`UPDATE "Bench" SET "coverage" = 0.25`);
  expect(await accepting(shopId, seen)).toMatchObject({ refusal: { code: 'changed-meanwhile' } });
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
});

test('rows that were added or are gone are accepted, too, and damage of another shop stays', async () => {
  const shopId = await stored();
  await changed(`DELETE FROM "PlantGroup";
    INSERT INTO "Supplier" ("shopId", "id", "position", "name", "workingDays")
      SELECT "shopId", 'other', 9, 'Other', "workingDays" FROM "Supplier" LIMIT 1`);
  const found = await seenToAccept(shopId);
  expect(found.map(({ table, wrong }) => `${table} ${wrong}`)).toEqual(['PlantGroup missing', 'Supplier unsealed']);
  expect(await seenToAccept('another')).toEqual([]);
  const asked = await accepting(shopId, shownRows(found));
  if (asked.ok || asked.refusal.code !== 'opens-earlier') throw new Error('it was not asked about');
  const word = { token: asked.refusal.token, reason: 'looked' };
  expect(await withConfirmation(word, () => accepting(shopId, shownRows(found)))).toMatchObject({ ok: true });
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
});

test.each([
  `UPDATE "ClockMark" SET "at" = "at" - 60000`,
  `UPDATE "ClockMark" SET "at" = 'soon' WHERE "id" = 'latest'`,
  `DELETE FROM "ClockMark" WHERE "id" = 'latest'`,
])('marks of the clock that were changed keep out until somebody confirms the time: %s', async (sql) => {
  const shopId = await stored();
  await lookAtClock(CLOCK, true);
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
  await changed(sql);
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  await lookAtClock(CLOCK).catch(() => null);
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  expect(await seenToAccept(shopId)).toEqual([]);
  const confirmed = await confirmClock({ commandId: newId(), shopId, actor: 'Ada', shownAt: CLOCK.now() }, CLOCK);
  expect(confirmed).toMatchObject({ ok: true });
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
});

test('so does a start that cannot read the marks of the clock', async () => {
  const shopId = await stored();
  await lookAtClock(CLOCK, true);
  await changed(`UPDATE "ClockMark" SET "at" = 'soon' WHERE "id" = 'latest'`);
  await (await database()).close();
  expect(await lookAtClock(CLOCK, true).catch(() => 'unreadable')).toBe('unreadable');
  expect(await doubtNow(CLOCK, shopId).catch(() => 'unreadable')).not.toBe(null);
  const confirmed = await confirmClock({ commandId: newId(), shopId, actor: 'Ada', shownAt: CLOCK.now() }, CLOCK);
  expect(confirmed).toMatchObject({ ok: true });
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
});
