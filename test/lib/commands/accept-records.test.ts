import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { verify } from '@/lib/command-line/verify';
import { acceptRecords } from '@/lib/commands/accept-records';
import { recordApplication } from '@/lib/commands/record-application';
import { withConfirmation } from '@/lib/confirmation';
import { damageOfShop } from '@/lib/data/check-records';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { acceptRecordsScreen } from '@/lib/views/accept-rows';
import { doubtNow } from '@/lib/views/bench-states';
import { recordsAnswer, recordsCsv } from '@/lib/views/log';
import { LogQuestion } from '@/shared/api/questions';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop, today } from './small-shop';

/** A change by another program, past every guard. */
async function changed(sql: string): Promise<void> {
  const raw = new Sqlite((await database()).file);
  const guards = raw.prepare("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'").all();
  for (const { name } of guards as { name: string }[]) raw.exec(`DROP TRIGGER "${name}"`);
  raw.pragma('foreign_keys = OFF');
  raw.exec(sql);
  for (const { sql: guard } of guards as { sql: string }[]) raw.exec(guard);
  raw.close();
}

const ENDED = SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' }));
const stored = () => smallShop({ ...SMALL, programs: [], applications: ENDED });

const CHANGED = `UPDATE "ApplicationVersion" SET "conditions" = 'windy'`;
const seenIn = async (shopId: string): Promise<string> => (await acceptRecordsScreen(shopId))?.seen ?? '';

const accepting = (shopId: string, seen: string, reason = 'put back by hand', commandId = newId()) =>
  acceptRecords({ commandId, shopId, actor: 'Ada', seen, reason }, CLOCK);

/** The same by somebody who is shown what opens, and confirms it. */
async function accepted(shopId: string) {
  const seen = await seenIn(shopId);
  const asked = await accepting(shopId, seen);
  if (asked.ok || asked.refusal.code !== 'opens-earlier') throw new Error('it was not asked about');
  expect(asked.refusal.openings).toEqual([expect.stringContaining('Bench: now')]);
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  const word = { token: asked.refusal.token, reason: 'looked' };
  return withConfirmation(word, () => accepting(shopId, seen));
}

test.each([
  ['a record that was changed', CHANGED, 'is not as it was sealed'],
  ['a line of the chain that was changed', `UPDATE "RecordSeal" SET "hash" = '${'a'.repeat(64)}'`, 'is not as it was'],
  ['a record that nobody sealed', 'DELETE FROM "RecordSeal"', 'was never sealed'],
])('%s is accepted with a reason once what opens is confirmed, and the log names it for good', async (_, sql, says) => {
  const shopId = await stored();
  await changed(sql);
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  expect(await acceptRecordsScreen(shopId)).toMatchObject({ rows: [{ says: expect.stringContaining(says) }] });
  expect(await accepting(shopId, await seenIn(shopId), ' ')).toMatchObject({
    refusal: { faults: [{ path: 'reason' }] },
  });
  expect(await accepted(shopId)).toMatchObject({ ok: true, value: { reason: 'put back by hand' } });
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
  expect(await damageOfShop(shopId)).toBe(null);
  expect(await acceptRecordsScreen(shopId)).toBe(null);
  // The chain goes on after it, and a start finds the same.
  const more = { recipe: 'r', benches: ['b'], startedAt: today(5), endedAt: today(6) };
  expect(await recordApplication({ ...more, commandId: newId(), shopId }, CLOCK)).toMatchObject({ ok: true });
  const { file, close } = await database();
  await close();
  expect((await verify(file, '/')).document).toMatchObject({ ok: true, shops: [{ ok: true, accepted: [{}] }] });
  expect(await doubtNow(CLOCK, shopId)).toBe(null);
  const log = await recordsAnswer(LogQuestion.parse({ shop: shopId }), CLOCK);
  expect(log).toMatchObject({
    value: {
      damage: null,
      accepted: [
        { by: 'Ada', reason: 'put back by hand', records: [{ record: 'a', message: expect.stringContaining(says) }] },
      ],
      openings: [{ bench: { id: 'b' }, closedUntil: null, by: 'Ada', reason: 'looked' }],
    },
  });
  const list = await recordsCsv(LogQuestion.parse({ shop: shopId }), CLOCK);
  expect(list.ok && list.value).toMatch(/opened earlier by hand.*Bench.*Ada.*looked.*not known/);
});

test('any other change of an accepted record is a new fault, and what was not seen is not accepted', async () => {
  const shopId = await stored();
  expect(await accepting(shopId, '0'.repeat(64))).toMatchObject({ refusal: { code: 'not-found' } });
  await changed(CHANGED);
  const seen = await seenIn(shopId);
  await changed(CHANGED.replace('windy', 'calm'));
  expect(await accepting(shopId, seen)).toMatchObject({ refusal: { code: 'changed-meanwhile' } });
  expect(await accepted(shopId)).toMatchObject({ ok: true });
  await changed(CHANGED);
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  expect(await accepted(shopId)).toMatchObject({ ok: true });
  const log = await recordsAnswer(LogQuestion.parse({ shop: shopId }), CLOCK);
  expect(log).toMatchObject({ value: { accepted: [{}, {}] } });
});

test('an acceptance that another program wrote accepts nothing', async () => {
  const shopId = await stored();
  await changed(CHANGED);
  expect(await accepted(shopId)).toMatchObject({ ok: true });
  await changed(`UPDATE "Command" SET "actor" = 'Eve' WHERE "name" = 'acceptRecords'`);
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
});
