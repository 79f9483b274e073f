import { expect, test } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { recordApplication } from '@/lib/commands/record-application';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { shopFileOf, shopOf } from '@/lib/data/snapshot';
import { missedSprayings } from '@/lib/engine/ahead/overdue';
import { amendedIn } from '@/lib/views/amend-form';
import { missedTurn } from '@/lib/views/missed-turn';
import { Day } from '@/shared/time/day';
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
