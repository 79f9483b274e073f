import { expect, test } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { recordApplication } from '@/lib/commands/record-application';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { shopFileOf, shopOf } from '@/lib/data/snapshot';
import { demoShop } from '@/lib/demo/demo-shop';
import { missedSprayings } from '@/lib/engine/ahead/overdue';
import { type OpenSpraying, openSprayings } from '@/lib/engine/ahead/turns-on-record';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { amendedIn } from '@/lib/views/amend-form';
import { leftOutSeen } from '@/lib/views/left-out';
import { missedTurn } from '@/lib/views/missed-turn';
import { plantsSprayed } from '@/lib/views/mixed';
import { addDays, Day } from '@/shared/time/day';
import { SMALL, smallShop } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';

/* A program of one day, 3 March 2026 at 17:30 in New York, that nobody recorded; four weeks later it is still missed. */

const NOW = clockPinnedTo('2026-03-31T15:00:00Z');
const TODAY = Day.parse('2026-03-31');
const PLANNED = { program: 'g', on: Day.parse('2026-03-03') };
const SHOP = parsedOrThrow({
  ...SMALL,
  applications: [],
  benches: [...SMALL.benches, { id: 'c', name: 'Other', place: 'by the door', plants: [{ name: 'Mint', count: 7 }] }],
});

const missedOn = async (shopId: string) => missedSprayings(await shopOf(shopId), TODAY).map(({ date }) => date);

test('what was missed stands until it is done, with the times of its plan, in one step', async () => {
  const shopId = await smallShop(SHOP);
  expect(await missedOn(shopId)).toEqual(['2026-03-03']);
  const turn = await missedTurn(shopId, NOW, PLANNED);
  if (!turn) throw new Error('it is not missed');
  const done = await recordApplication({ ...turn, commandId: 'done-it', shopId, planned: PLANNED }, NOW);
  expect(done).toMatchObject({ ok: true });
  expect(await missedOn(shopId)).toEqual([]);
  const { applications, programs } = await shopFileOf(shopId);
  expect(applications).toMatchObject([{ startedAt: '2026-03-03T22:30:00Z', endedAt: '2026-03-03T23:15:00Z' }]);
  expect(programs[0]?.changes).toMatchObject([{ kind: 'done', application: applications[0]?.id }]);
  expect(await missedTurn(shopId, NOW, PLANNED)).toBeNull();
});

test('or until it is left out with a reason', async () => {
  const shopId = await smallShop(SHOP);
  await skipSpraying({ ...PLANNED, commandId: 'skip-it', shopId, reason: 'no pests seen' }, NOW);
  expect(await missedOn(shopId)).toEqual([]);
});

test('what was missed never vanishes, however long ago it was', async () => {
  const shop = await shopOf(await smallShop(SHOP));
  for (const later of ['2026-05-20', '2027-03-03', '2029-03-03']) {
    expect(missedSprayings(shop, Day.parse(later)).map(({ date }) => date)).toEqual(['2026-03-03']);
  }
});

const named = ({ program, date }: OpenSpraying) => `${program.id} ${date}`;

test('nothing that was missed is passed over because all before it was told of', () => {
  const demo = shopOfFile(demoShop(TODAY));
  for (const later of ['2026-03-31', '2026-06-30']) {
    const day = Day.parse(later);
    const all = openSprayings(demo, Day.parse('2025-01-01'), addDays(day, -1));
    expect(missedSprayings(demo, day).map(named)).toEqual(all.map(named));
  }
  expect(missedSprayings(demo, Day.parse('2026-06-30')).length).toBeGreaterThan(5);
});

test('what was left out stands with its benches and its reason on its day, in Week, Mix and Log alike', async () => {
  const shopId = await smallShop(SHOP);
  await skipSpraying({ ...PLANNED, commandId: 'skip-it', shopId, reason: 'no pests seen' }, NOW);
  const shop = await shopOf(shopId);
  const seen = leftOutSeen(shop, Day.parse('2026-03-01'), TODAY, TODAY);
  expect(seen).toMatchObject([{ day: '2026-03-03', reason: 'no pests seen' }]);
  expect(seen[0]?.benches).not.toBe('');
  expect(leftOutSeen(shop, Day.parse('2026-03-04'), TODAY, TODAY)).toEqual([]);
});

test('a cost per plant is divided by the plants that were sprayed', async () => {
  const { benches } = await shopOf(await smallShop(SHOP));
  const mint = benches.filter(({ id }) => id === 'c');
  expect(plantsSprayed(mint, null)).toBe(7);
  expect(plantsSprayed(mint, '3 Mint on Other')).toBe(3);
  expect(plantsSprayed(mint, '3 Mint, 2 Sage on Other; 4 Fern on Wall')).toBe(9);
  expect(plantsSprayed(mint, 'the front row'), 'nobody says how many').toBeNull();
});

test('crop and location follow the benches of an amendment, unless somebody wrote them anew', async () => {
  const shopId = await smallShop(SHOP);
  const times = { startedAt: NOW.now(), endedAt: NOW.now() };
  const record = await recordApplication({ ...times, commandId: 'rec', shopId, recipe: 'r', benches: ['b'] }, NOW);
  if (!record.ok) throw new Error(JSON.stringify(record.refusal));
  const form = {
    ...{ commandId: 'x', shop: shopId, application: record.value.application, version: 1, reason: 'wrong bench' },
    ...{
      recipe: 'r',
      bench: ['c'],
      startedAt: '2026-03-31T11:00',
      endedAt: '2026-03-31T11:00',
      mixedAt: '',
      by: 'Ada',
    },
    ...{ crop: 'Bench: 12 Ferns', location: '', plants: '', sprayed: '', leftover: '', leftoverWent: '' },
    ...{ conditions: '', temperature: '', pH: '', product: [], amount: [], gone: [], moreProduct: '', moreAmount: '' },
  };
  const followed = await amendedIn(form as never);
  expect(followed?.change).toMatchObject({ benches: ['c'], crop: 'Other: 7 Mint' });
  const written = await amendedIn({ ...form, crop: 'seven mints' } as never);
  expect(written?.change).toMatchObject({ crop: 'seven mints' });
});
