import { expect, test } from 'vitest';
import { type Clock, clockAt } from '@/lib/clock';
import { confirmClock } from '@/lib/commands/confirm-clock';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { startWatch } from '@/lib/data/clock-mark';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates, certaintyNow } from '@/lib/views/bench-states';
import { instantOf } from '@/shared/time/instant';
import { SMALL, smallShop } from './small-shop';

const START = Date.UTC(2026, 2, 31, 9);
const [MINUTE, HOUR, YEAR] = [60_000, 3_600_000, 365 * 24 * 3_600_000];

/** A machine whose clock can be set: `pass` lets time pass, `set` moves the clock alone. Its count may go on in the next. */
function machine(count?: string) {
  let [wall, steady] = [START, 0];
  const clock = clockAt(
    () => new Date(wall),
    () => steady,
    count,
  );
  const pass = (ms: number) => {
    wall += ms;
    steady += ms;
  };
  const set = (ms: number) => {
    wall += ms;
  };
  return { clock, pass, set };
}

/** A shop whose one bench reopened weeks ago. */
const reopened = () =>
  smallShop({
    ...SMALL,
    applications: SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' })),
  });

/** A shop whose one bench reopens in 12 hours. */
const closed = () =>
  smallShop({
    ...SMALL,
    applications: SMALL.applications.map((one) => ({
      ...one,
      startedAt: '2026-03-31T08:00:00Z',
      endedAt: '2026-03-31T08:30:00Z',
    })),
  });

async function stateNow(shopId: string, clock: Clock) {
  const shop = shopOfFile(await shopFileOf(shopId));
  return benchStates(shop, clock.now(), await certaintyNow(clock, shopId))[0]?.state;
}

const confirm = (shopId: string, { now, ...rest }: Clock, shownAt = now(), commandId = newId()) =>
  confirmClock({ commandId, shopId, actor: 'Ada', shownAt }, { now, ...rest });

test.each([
  { name: 'back 1 hour', set: -HOUR },
  { name: 'forward 1 day', set: 24 * HOUR },
  { name: 'forward 11 minutes', set: 11 * MINUTE },
])('a clock that is set $name opens no bench until somebody has confirmed it', async ({ set }) => {
  const shopId = await reopened();
  const one = machine();
  expect(await lookAtClock(one.clock, true)).toBeNull();
  one.pass(MINUTE);
  expect(await lookAtClock(one.clock)).toBeNull();
  expect(await stateNow(shopId, one.clock)).toBe('open');

  one.set(set);
  expect(await stateNow(shopId, one.clock)).toBe('unknown');
  expect(await lookAtClock(one.clock)).not.toBeNull();
  one.pass(2 * HOUR);
  expect(await stateNow(shopId, one.clock)).toBe('unknown');
  one.set(-set);
  expect(await stateNow(shopId, one.clock)).toBe('unknown');

  one.set(set);
  expect(await confirm(shopId, one.clock)).toMatchObject({ ok: true });
  expect(await stateNow(shopId, one.clock)).toBe('open');
  one.pass(MINUTE);
  expect(await lookAtClock(one.clock)).toBeNull();
  const { reader } = await database();
  expect(await reader.clockConfirmation.findMany()).toMatchObject([{ actor: 'Ada' }]);
});

test.each([
  { name: '25 hours', gap: 25 * HOUR, state: 'unknown' },
  { name: 'two years', gap: 2 * YEAR, state: 'unknown' },
  { name: 'a night', gap: 14 * HOUR, state: 'open' },
])('a start after $name without a watch: $state', async ({ gap, state }) => {
  const shopId = await reopened();
  const one = machine();
  await lookAtClock(one.clock, true);
  await (await database()).close();
  const later = machine();
  later.set(gap);
  await lookAtClock(later.clock, true);
  expect(await stateNow(shopId, later.clock)).toBe(state);
  await lookAtClock(later.clock, true);
  expect(await stateNow(shopId, later.clock)).toBe(state);
});

test('a time that was shown too long ago is not confirmed, and a confirmation sent twice is one', async () => {
  const shopId = await reopened();
  const one = machine();
  await lookAtClock(one.clock, true);
  one.set(-HOUR);
  await lookAtClock(one.clock);
  const shown = one.clock.now();
  one.pass(6 * MINUTE);
  expect(await confirm(shopId, one.clock, shown)).toMatchObject({ ok: false, refusal: { code: 'clock-moved' } });
  expect(await stateNow(shopId, one.clock)).toBe('unknown');
  const [id, now] = [newId(), one.clock.now()];
  expect(await confirm(shopId, one.clock, now, id)).toMatchObject({ ok: true });
  expect(await confirm(shopId, one.clock, now, id)).toMatchObject({ ok: true });
  expect(await (await database()).reader.clockConfirmation.count()).toBe(1);
});

test('what is written moves the mark, but never far ahead of it', async () => {
  const shopId = await reopened();
  const one = machine();
  await lookAtClock(one.clock, true);
  const markAt = async () =>
    instantOf(Number((await (await database()).reader.clockMark.findUniqueOrThrow({ where: { id: 'latest' } })).at));
  one.pass(5 * MINUTE);
  await confirm(shopId, one.clock);
  expect(await markAt()).toBe(START + 5 * MINUTE);
});

test.each([
  { name: '5 hours ahead, with an interval running', shop: closed, gap: 5 * HOUR, doubt: 'unwatched' },
  { name: '23 hours ahead, with an interval running', shop: closed, gap: 23 * HOUR, doubt: 'unwatched' },
  { name: '23 hours ahead, with none', shop: reopened, gap: 23 * HOUR, doubt: null },
])('a restart with the clock $name: $doubt', async ({ shop, gap, doubt }) => {
  const shopId = await shop();
  await lookAtClock(machine().clock, true);
  await (await database()).close();
  const later = machine();
  later.set(gap);
  expect(await lookAtClock(later.clock, true)).toBe(doubt);
  expect(await stateNow(shopId, later.clock)).toBe(doubt === null ? 'open' : 'unknown');
  later.pass(30 * HOUR);
  expect(await stateNow(shopId, later.clock)).toBe(doubt === null ? 'open' : 'unknown');
});

test('a restart that the count of the machine goes on through asks nothing, and finds a clock that leapt', async () => {
  const shopId = await closed();
  const one = machine('boot');
  await lookAtClock(one.clock, true);
  await (await database()).close();
  one.pass(5 * HOUR);
  expect(await lookAtClock(one.clock, true)).toBeNull();
  expect(await stateNow(shopId, one.clock)).toBe('closed');
  await (await database()).close();
  one.set(9 * HOUR);
  expect(await lookAtClock(one.clock, true)).toBe('leapt');
  expect(await stateNow(shopId, one.clock)).toBe('unknown');
});

test.each([
  { name: '9.5 minutes ahead each minute', set: 9.5 * MINUTE, doubt: 'leapt' },
  { name: '1 minute back each minute', set: -MINUTE, doubt: 'behind' },
])('steps of $name add up', async ({ set, doubt }) => {
  const shopId = await reopened();
  const one = machine();
  await lookAtClock(one.clock, true);
  const step = () => {
    one.pass(MINUTE);
    one.set(set);
    return lookAtClock(one.clock);
  };
  expect(await step()).toBeNull();
  await step();
  expect(await step()).toBe(doubt);
  expect(await stateNow(shopId, one.clock)).toBe('unknown');
});

test('a step that is too small to be doubted opens no bench before its interval has passed', async () => {
  const shopId = await closed();
  const one = machine();
  await lookAtClock(one.clock, true);
  one.pass(12 * HOUR - 9 * MINUTE);
  one.set(9 * MINUTE);
  expect(await stateNow(shopId, one.clock)).toBe('closed');
  await lookAtClock(one.clock);
  one.pass(9 * MINUTE - 1);
  expect(await stateNow(shopId, one.clock)).toBe('closed');
  one.pass(1);
  expect(await stateNow(shopId, one.clock)).toBe('open');
});

test('a clock that was wrong and is set keeps closed for longer what was sprayed before', async () => {
  const shopId = await closed();
  const one = machine();
  await lookAtClock(one.clock, true);
  one.pass(HOUR);
  one.set(24 * HOUR);
  expect(await stateNow(shopId, one.clock)).toBe('unknown');
  const { now, ...rest } = one.clock;
  const said = { commandId: newId(), shopId, shownAt: now(), wasRight: false };
  expect(await confirmClock(said, { now, ...rest })).toMatchObject({ ok: true });
  expect(await stateNow(shopId, one.clock)).toBe('closed');
  one.pass(11 * HOUR);
  expect(await stateNow(shopId, one.clock)).toBe('open');
});

test('nothing is told of any bench until the first look has succeeded', async () => {
  const shopId = await reopened();
  await startWatch();
  const one = machine();
  expect(await stateNow(shopId, one.clock)).toBe('unknown');
  await lookAtClock(one.clock, true);
  expect(await stateNow(shopId, one.clock)).toBe('open');
});
