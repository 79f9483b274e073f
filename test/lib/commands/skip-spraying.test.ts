import { expect, test } from 'vitest';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { Day } from '@/shared/time/day';
import { CLOCK } from '../data/fresh-database';
import { smallShop } from './small-shop';

const on = Day.parse('2026-03-03');

test('a spraying that was left out keeps the reason, once', async () => {
  const shopId = await smallShop();
  const skip = { commandId: newId(), shopId, program: 'g', on, reason: 'rain' };
  expect(await skipSpraying(skip, CLOCK)).toMatchObject({ ok: true });
  expect(await skipSpraying(skip, CLOCK)).toMatchObject({ ok: true });
  expect((await shopFileOf(shopId)).programs[0]?.changes).toMatchObject([{ on, kind: 'skipped', reason: 'rain' }]);
  const again = await skipSpraying({ ...skip, commandId: newId() }, CLOCK);
  expect(again).toMatchObject({ ok: false, refusal: { code: 'changed-meanwhile' } });
});

test('nothing is left out on a day without a spraying, or of a program that is not there', async () => {
  const shopId = await smallShop();
  const skip = { commandId: newId(), shopId, program: 'g', on: Day.parse('2026-03-04'), reason: 'rain' };
  expect(await skipSpraying(skip, CLOCK)).toMatchObject({ refusal: { code: 'faults', faults: [{ path: 'on' }] } });
  expect(await skipSpraying({ ...skip, program: 'h' }, CLOCK)).toMatchObject({ refusal: { code: 'not-found' } });
});
