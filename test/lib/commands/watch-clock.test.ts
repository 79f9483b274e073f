import { expect, test } from 'vitest';
import { type Clock, clockAt } from '@/lib/clock';
import { confirmClock } from '@/lib/commands/confirm-clock';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates, doubtNow } from '@/lib/views/bench-states';
import { instantOf } from '@/shared/time/instant';
import { SMALL, smallShop } from './small-shop';

const START = Date.UTC(2026, 2, 31, 9);
const [MINUTE, HOUR, YEAR] = [60_000, 3_600_000, 365 * 24 * 3_600_000];

/** A machine whose clock can be set: `pass` lets time pass, `set` moves the clock alone. */
function machine() {
  let [wall, steady] = [START, 0];
  const clock = clockAt(
    () => new Date(wall),
    () => steady,
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

async function stateNow(shopId: string, clock: Clock) {
  const shop = shopOfFile(await shopFileOf(shopId));
  return benchStates(shop, clock.now(), await doubtNow(clock))[0]?.state;
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
