import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { startShop } from '@/lib/commands/start-shop';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { type Command, write } from '@/lib/data/writer';
import { accept, refuse } from '@/shared/outcome';
import { figure } from '@/test/promises/figure';
import { runs } from '@/test/runs';
import { CLOCK, freshDatabase } from './fresh-database';

const SETTINGS = { name: 'A shop', timeZone: 'Europe/Berlin', currency: 'EUR', fillCapacity: '5 L' };

async function aShop(): Promise<string> {
  await freshDatabase();
  const outcome = await startShop({ commandId: newId(), settings: SETTINGS }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value.shopId;
}

const commandOf = (shopId: string, body: unknown, id: string = newId()): Command => ({
  id,
  name: 'addBench',
  shopId,
  body,
});

/** A small command: put up a bench. Gives how many there are then. */
const addBench = (command: Command, name: string) =>
  write(command, CLOCK.now(), async (rows, { shopId }) => {
    const position = await rows.bench.count({ where: { shopId } });
    if (name === '') return refuse({ code: 'not-found', what: 'bench', id: name });
    const bench = { shopId, id: newId(), position, name, customers: true, enclosed: true, coverage: 1 };
    await rows.bench.create({ data: bench });
    if (name === 'breaks') throw new RangeError('planted');
    return accept({ benches: position + 1 });
  });

const benchesIn = async (shopId: string) => (await database()).reader.bench.count({ where: { shopId } });

test('commands sent at once are done one after another, in the order in which they came', async () => {
  const shopId = await aShop();
  const sent = Array.from({ length: 40 }, (_, place) => addBench(commandOf(shopId, place), `bench ${place}`));
  const answers = await Promise.all(sent);
  expect(answers).toEqual(sent.map((_, place) => ({ ok: true, value: { benches: place + 1 } })));
});

/** How many commands are sent again and again. */
const ROUNDS = runs(20, 1_000);

test('a command sent five times at once is done once and answers the same five times', async () => {
  const shopId = await aShop();
  for (let round = 0; round < ROUNDS; round += 1) {
    const command = commandOf(shopId, { round });
    const answers = await Promise.all([1, 2, 3, 4, 5].map(() => addBench(command, 'bench')));
    expect(new Set(answers.map((answer) => JSON.stringify(answer)))).toEqual(
      new Set([JSON.stringify({ ok: true, value: { benches: round + 1 } })]),
    );
  }
  expect(await benchesIn(shopId)).toBe(ROUNDS);
  figure(6, `${ROUNDS} commands five times each: ${ROUNDS} effects`);
});

test('the same id with another body, another name or for another shop is refused, and changes nothing', async () => {
  const shopId = await aShop();
  const command = commandOf(shopId, { a: 1, b: [1, 2] }, 'one');
  await addBench(command, 'bench');
  const refused = { ok: false, refusal: { code: 'same-key-other-body' } };
  expect(await addBench({ ...command, body: { a: 2, b: [1, 2] } }, 'bench')).toEqual(refused);
  expect(await addBench({ ...command, body: { a: 1, b: [2, 1] } }, 'bench')).toEqual(refused);
  expect(await addBench({ ...command, name: 'other' }, 'bench')).toEqual(refused);
  expect(await addBench({ ...command, shopId: 'elsewhere' }, 'bench')).toEqual(refused);
  expect(await addBench({ ...command, body: { b: [1, 2], a: 1 } }, 'bench')).toEqual({
    ok: true,
    value: { benches: 1 },
  });
  expect(await benchesIn(shopId)).toBe(1);
});

test('a refused command leaves nothing behind, and may be sent again', async () => {
  const shopId = await aShop();
  const command = commandOf(shopId, 'x', 'one');
  expect((await addBench(command, '')).ok).toBe(false);
  const { reader } = await database();
  expect(await reader.command.count({ where: { id: 'one' } })).toBe(0);
  expect(await reader.shop.findUnique({ where: { id: shopId }, select: { revision: true } })).toEqual({ revision: 0n });
  expect(await addBench(command, 'bench')).toEqual({ ok: true, value: { benches: 1 } });
});

test('a command that breaks takes everything back, and the next in line is done', async () => {
  const shopId = await aShop();
  const sent = [addBench(commandOf(shopId, 1, 'one'), 'breaks'), addBench(commandOf(shopId, 2), 'bench')];
  const [broken, next] = await Promise.allSettled(sent);
  expect(broken).toMatchObject({ status: 'rejected', reason: expect.any(RangeError) });
  expect(next).toMatchObject({ status: 'fulfilled', value: { ok: true, value: { benches: 1 } } });
  expect(await benchesIn(shopId)).toBe(1);
});

/** How many writes are confirmed while as many are refused and as many break. */
const CONFIRMED = runs(30, 100);

test('a write that was confirmed while others are refused or break never vanishes', { timeout: 120_000 }, async () => {
  const shopId = await aShop();
  const sent = Array.from({ length: 3 * CONFIRMED }, (_, place) =>
    addBench(commandOf(shopId, place), ['bench', '', 'breaks'][place % 3] ?? ''),
  );
  // Readers in between see only what is confirmed: never a bench of a command that breaks.
  const seen: number[] = [];
  const reading = (async () => {
    for (let round = 0; round < CONFIRMED; round += 1) seen.push(await benchesIn(shopId));
  })();
  const results = await Promise.allSettled(sent);
  await reading;
  const done = results.filter((result) => result.status === 'fulfilled' && result.value.ok);
  expect(done.length).toBe(CONFIRMED);
  expect(await benchesIn(shopId)).toBe(CONFIRMED);
  expect(seen).toEqual([...seen].sort((a, b) => a - b));
  const { reader } = await database();
  expect(await reader.bench.count({ where: { shopId, name: 'breaks' } })).toBe(0);
  figure(4, `${3 * CONFIRMED} writes, a third of them broken and a third refused: 0 vanished, 0 dirty reads`);
});

test('who sent a command, when it was recorded and what instant it speaks of stand beside it', async () => {
  const shopId = await aShop();
  await addBench({ ...commandOf(shopId, 1, 'one'), actor: 'Jo', spokenAt: CLOCK.now() }, 'bench');
  await addBench(commandOf(shopId, 2, 'two'), 'bench');
  const { reader } = await database();
  const columns = { id: true, actor: true, recordedAt: true, spokenAt: true };
  const at = BigInt(Date.UTC(2026, 2, 31, 9));
  expect(
    await reader.command.findMany({ where: { name: 'addBench' }, select: columns, orderBy: { id: 'asc' } }),
  ).toEqual([
    { id: 'one', actor: 'Jo', recordedAt: at, spokenAt: at },
    { id: 'two', actor: 'owner', recordedAt: at, spokenAt: null },
  ]);
});

test('a shop is started once, however often that is sent', async () => {
  await freshDatabase();
  const start = () => startShop({ commandId: 'start', settings: SETTINGS }, CLOCK);
  const answers = await Promise.all([start(), start(), start()]);
  expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
  expect(await (await database()).reader.shop.count()).toBe(1);
  const faulty = await startShop({ commandId: 'bad', settings: { ...SETTINGS, timeZone: 'Mars/Base' } }, CLOCK);
  expect(faulty).toMatchObject({ ok: false, refusal: { code: 'faults', faults: [{ path: 'shop.timeZone' }] } });
});

/** Another process on the same file, in the middle of a write. Gives what ends it. */
async function anotherWriter(): Promise<() => void> {
  const other = new Database((await database()).file);
  other.exec('BEGIN IMMEDIATE');
  return () => {
    other.exec('ROLLBACK');
    other.close();
  };
}

test('a command that finds the file busy for a moment is done all the same', async () => {
  const shopId = await aShop();
  const end = await anotherWriter();
  setTimeout(end, 300);
  expect(await addBench(commandOf(shopId, 1), 'bench')).toEqual({ ok: true, value: { benches: 1 } });
});

test('a file that stays busy stops a command after a few tries and nothing else, and the same command may come again', async () => {
  const shopId = await aShop();
  const end = await anotherWriter();
  const command = commandOf(shopId, 1);
  expect(await addBench(command, 'bench')).toMatchObject({ ok: false, refusal: { code: 'not-writable' } });
  expect(await benchesIn(shopId)).toBe(0);
  end();
  expect(await addBench(command, 'bench')).toEqual({ ok: true, value: { benches: 1 } });
});
