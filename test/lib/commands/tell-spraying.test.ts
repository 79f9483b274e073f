import { expect, test } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { denySpraying } from '@/lib/commands/deny-spraying';
import { type FinishMix, finishMix } from '@/lib/commands/finish-mix';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { recordApplication } from '@/lib/commands/record-application';
import { type TellSpraying, tellSpraying } from '@/lib/commands/tell-spraying';
import { withConfirmation } from '@/lib/confirmation';
import { newCommandId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { unrecordedSprayings } from '@/lib/engine/ahead/overdue';
import { openSprayings } from '@/lib/engine/ahead/turns-on-record';
import { shopCalendar } from '@/lib/engine/calendar/shop-calendar';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates } from '@/lib/views/bench-states';
import { boardBench } from '@/lib/views/keep-out-board';
import { exact } from '@/shared/quantity/exact';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { SMALL, smallShop } from './small-shop';

/*
 * A shop of two benches in New York on 31 March 2026. The recipe closes for 12 h 30; program g is planned for 17:30,
 * which is 21:30 UTC. Everything is asked of the stored shop, as the board asks it.
 */

const MINUTE = 60_000;
const REI = 750 * MINUTE;
const at = (hour: number, minute = 0): Instant => instantOf(Date.UTC(2026, 2, 31, hour, minute));
const clockAt = (moment: number) => clockPinnedTo(new Date(moment).toISOString());
const PLANNED = { program: 'g', on: Day.parse('2026-03-31') };
const ID = 'a'.repeat(32);

const READY = {
  ...SMALL,
  applications: [],
  benches: [...SMALL.benches, ...SMALL.benches.map((bench) => ({ ...bench, id: 'c', name: 'Other' }))],
  programs: SMALL.programs.map((one) => ({ ...one, startsOn: PLANNED.on })),
};
const ready = () => smallShop(READY);

const TOLD: Omit<TellSpraying, 'shopId' | 'commandId' | 'endedAt'> = {
  ...{ spraying: ID, recipe: 'r', benches: ['b'], planned: PLANNED, startedAt: at(21, 30), by: 'Ada', passed: [] },
};
const tell = (shopId: string, said: Partial<TellSpraying>, now: number) =>
  tellSpraying({ ...TOLD, endedAt: null, ...said, shopId, commandId: newCommandId() }, clockAt(now));

const MIX: Omit<FinishMix, 'shopId'> = {
  ...{ commandId: ID, recipe: 'r', benches: ['b'], plants: null, startedAt: at(21, 30), endedAt: at(22), by: null },
  ...{ sprayed: exact(2000), leftover: null, leftoverWent: null, conditions: null, pH: null },
  poured: [{ product: 'p', from: [{ lotId: 'l', place: 0, amount: '6 mL', heldMore: false }], elsewhere: null }],
  ...{ acid: null, passed: [], plannedCost: null, planned: PLANNED },
};

async function standing(shopId: string, now: number) {
  const shop = shopOfFile(await shopFileOf(shopId));
  return keepOut(shop, instantOf(now), unrecordedSprayings(shop, instantOf(now)));
}
const states = async (shopId: string, now: number) => (await standing(shopId, now)).map(({ state }) => state);
const until = async (shopId: string, now: number) => (await standing(shopId, now))[0]?.until ?? null;

test('once spraying began its bench is kept out of, unplanned or early, and says that it is being sprayed', async () => {
  const shopId = await ready();
  await tell(shopId, { planned: null, benches: ['c'], startedAt: at(15) }, at(15));
  expect(await states(shopId, at(15))).toEqual(['open', 'unknown']);
  await tell(shopId, { spraying: 'b'.repeat(32), startedAt: at(19) }, at(19));
  expect(await states(shopId, at(19))).toEqual(['unknown', 'unknown']);

  const shop = shopOfFile(await shopFileOf(shopId));
  const words = (now: Instant) =>
    benchStates(shop, now, { doubt: null, lag: null }).map((one) => boardBench({ shop, now }, one, 'full'));
  expect(words(at(19))[0]).toMatchObject({
    word: 'KEEP OUT, being sprayed',
    because: ['Recipe is being sprayed, begun Tue 31 March 15:00'],
  });
  // Nobody has said that it ended: after some hours nobody is taken to spray still, and the bench stays closed.
  const later = words(instantOf(at(19) + 30 * 3_600_000))[0];
  expect(later).toMatchObject({ word: 'KEEP OUT (not known)' });
  expect(later?.because.join()).toContain('was begun Tue 31 March 15:00 and nobody has said that it ended');
});

test('the last plant closes the bench by the interval there and then, and the latest end counts', async () => {
  const shopId = await ready();
  await tell(shopId, {}, at(21, 30));
  expect(await states(shopId, at(21, 45))).toEqual(['unknown', 'open']);
  await tell(shopId, { endedAt: at(22) }, at(22));
  expect(await until(shopId, at(22))).toBe(at(22) + REI);
  await tell(shopId, { endedAt: at(22, 20) }, at(22, 20));
  await tell(shopId, { endedAt: at(22) }, at(22, 25));
  expect(await until(shopId, at(22, 25))).toBe(at(22, 20) + REI);
  // An end that comes before its start on the way is enough by itself.
  await tell(shopId, { spraying: 'c'.repeat(32), benches: ['c'], planned: null, endedAt: at(22, 30) }, at(22, 30));
  expect(await states(shopId, at(22, 31))).toEqual(['closed', 'closed']);
});

test('its record takes its place, once, and its turn is done; a bench that the record leaves out stays closed', async () => {
  const shopId = await ready();
  await tell(shopId, { benches: ['b', 'c'] }, at(21, 30));
  await tell(shopId, { benches: ['b', 'c'], endedAt: at(22) }, at(22));
  expect(openSprayings(shopOfFile(await shopFileOf(shopId)), PLANNED.on, PLANNED.on)).toEqual([]);
  const done = await finishMix({ ...MIX, shopId }, clockAt(at(22, 10)));
  expect(done).toMatchObject({ ok: true, value: { application: ID } });
  const file = await shopFileOf(shopId);
  expect(file.applications.map(({ id }) => id)).toEqual([ID]);
  expect(file.underWay).toMatchObject([{ id: ID, benches: ['c'] }]);
  expect(await states(shopId, at(22, 10))).toEqual(['closed', 'closed']);
});

test('a record with an earlier end or a shorter interval is written, and opens nothing before somebody confirms it', async () => {
  const shopId = await ready();
  await tell(shopId, {}, at(21, 30));
  await tell(shopId, { endedAt: at(22, 20) }, at(22, 20));
  expect(await finishMix({ ...MIX, shopId, startedAt: at(21, 40) }, clockAt(at(22, 25)))).toMatchObject({ ok: true });
  expect(await until(shopId, at(22, 25))).toBe(at(22, 20) + REI);
  const [record] = (await shopFileOf(shopId)).applications;
  expect(record).toMatchObject({ endedAt: '2026-03-31T22:00:00Z', closedUntil: '2026-04-01T10:50:00Z' });
});

test('a record that is refused for a rule closes its bench all the same', async () => {
  const shopId = await ready();
  await tell(shopId, { spraying: 'd'.repeat(32), planned: null, startedAt: at(12), endedAt: at(13) }, at(13));
  const refused = await finishMix({ ...MIX, shopId, planned: null }, clockAt(at(22, 5)));
  expect(refused).toMatchObject({ ok: false, refusal: { code: 'faults', faults: [{ path: 'passed.bench-closed' }] } });
  expect(await until(shopId, at(22, 5))).toBe(at(22) + REI);
  // The first was never written up. It stays to be asked about, and closes nothing any more.
  const written = { ...MIX, shopId, planned: null, passed: [{ rule: 'bench-closed', reason: 'mites' }] };
  expect(await finishMix(written, clockAt(at(22, 6)))).toMatchObject({ ok: true });
  const { applications, underWay } = await shopFileOf(shopId);
  expect([applications.map(({ id }) => id), underWay?.map(({ id }) => id)]).toEqual([[ID], ['d'.repeat(32)]]);
});

test('an end told after its interval is over keeps the bench closed for the interval from then on', async () => {
  const shopId = await ready();
  await tell(shopId, {}, at(21, 30));
  const late = at(22) + REI + 10 * MINUTE;
  expect(await tell(shopId, { endedAt: at(22) }, late)).toMatchObject({ ok: true });
  expect(await until(shopId, late)).toBe(late + REI);
  // Its record comes right after it, and keeps that.
  expect(await finishMix({ ...MIX, shopId }, clockAt(late + MINUTE))).toMatchObject({ ok: true });
  expect(await until(shopId, late + MINUTE)).toBe(late + REI);
});

test('what is gone meanwhile, or comes from a clock that is ahead, closes benches all the same', async () => {
  const shopId = await ready();
  expect(
    await tell(shopId, { recipe: 'gone', planned: null, endedAt: at(15, 10), startedAt: at(15) }, at(15, 10)),
  ).toMatchObject({ ok: true });
  expect(await states(shopId, at(20))).toEqual(['unknown', 'open']);
  const other = await ready();
  await tell(other, { benches: ['gone'], planned: null }, at(15));
  expect(await states(other, at(15))).toEqual(['unknown', 'unknown']);
  const ahead = await ready();
  await tell(ahead, { planned: null, startedAt: instantOf(at(15) + 400 * 24 * 3_600_000) }, at(15));
  expect(await states(ahead, at(15))).toEqual(['unknown', 'open']);
});

test('that nothing was sprayed opens the bench only with a confirmation; a record without amounts takes its place, too', async () => {
  const shopId = await ready();
  await tell(shopId, { planned: null, startedAt: at(15) }, at(15));
  const deny = () =>
    denySpraying({ commandId: 'never', shopId, spraying: ID, reason: 'the pump broke' }, clockAt(at(16)));
  const asked = await deny();
  if (asked.ok || asked.refusal.code !== 'opens-earlier') throw new Error(JSON.stringify(asked));
  expect(await states(shopId, at(16))).toEqual(['unknown', 'open']);
  const { token } = asked.refusal;
  expect(await withConfirmation({ token, reason: 'Ada said so' }, deny)).toMatchObject({ ok: true });
  expect(await states(shopId, at(16))).toEqual(['open', 'open']);

  await tell(shopId, { spraying: 'e'.repeat(32) }, at(21, 30));
  await tell(shopId, { spraying: 'e'.repeat(32), endedAt: at(22) }, at(22));
  const record = {
    ...{ recipe: 'r', benches: ['b'], startedAt: at(21, 30), endedAt: at(22) },
    spraying: 'e'.repeat(32),
  };
  const written = await recordApplication({ ...record, shopId, commandId: 'write' }, clockAt(at(22, 30)));
  expect(written).toMatchObject({ ok: true, value: { application: 'e'.repeat(32) } });
  const file = await shopFileOf(shopId);
  expect(file.underWay).toBeUndefined();
  expect(openSprayings(shopOfFile(file), PLANNED.on, PLANNED.on)).toEqual([]);
});

test('the shop file carries what is under way into another shop, and calendars tell of it', async () => {
  const shopId = await ready();
  await tell(shopId, {}, at(21, 30));
  const file = await shopFileOf(shopId);
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  const brought = await importShopFile(
    { commandId: 'x', file: parsed.file, into: { isDemo: false } },
    clockAt(at(21, 40)),
  );
  if (!brought.ok) throw new Error(JSON.stringify(brought.refusal));
  expect(await states(brought.value.shopId, at(21, 40))).toEqual(['unknown', 'open']);
  const facts = {
    ...{ shopId, createdOn: PLANNED.on, revision: 3, changedAt: at(21, 40) },
    ...{ now: at(21, 40), today: PLANNED.on, inDoubt: false },
  };
  expect(JSON.stringify(shopCalendar(shopOfFile(file), facts, 1))).toContain(ID);
});
