import { expect, test } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { tellSpraying } from '@/lib/commands/tell-spraying';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { mixJudged } from '@/lib/views/mix-judged';
import { mixAsked } from '@/lib/views/mix-screen';
import type { ShopFile } from '@/shared/shop-file/contract';
import { instantOf } from '@/shared/time/instant';
import { SMALL, smallShop } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';

/* The recipe closes for 12 h 30, and its bench was sprayed until noon; its program sprays it the day after tomorrow. */

const NOON = instantOf(Date.UTC(2026, 2, 31, 16));
const at = (minutes: number) => clockPinnedTo(new Date(NOON + minutes * 60_000).toISOString());
const SHOP: ShopFile = parsedOrThrow({
  ...SMALL,
  programs: SMALL.programs.map((one) => ({ ...one, startsOn: '2026-04-02' })),
  applications: SMALL.applications.map((one) => ({
    ...{ ...one, startedAt: '2026-03-31T15:30:00Z', endedAt: '2026-03-31T16:00:00Z' },
  })),
});

test('a mix that is begun before its day is judged as of now: its bench is still closed', () => {
  const shop = shopOfFile(SHOP);
  const planned = [
    ['program', 'g'],
    ['on', '2026-04-02'],
  ] as const;
  const rules = (isNow: boolean) => {
    const mix = mixAsked({ shop, now: at(5).now() }, planned, isNow);
    if (!mix.ok) throw new Error(mix.message);
    return mix.value.flags.flatMap(({ rule, severity }) => (severity === 'stop' ? [rule] : []));
  };
  expect([rules(false), rules(true)]).toEqual([[], ['bench-closed']]);
});

test('what is about to be sprayed is judged as of this minute, and never against itself', async () => {
  const shopId = await smallShop(SHOP);
  const asked = { shopId, recipe: 'r', benches: ['b'], sprayed: null, spraying: 'a'.repeat(32) };
  const rules = async (minutes: number) => {
    const judged = await mixJudged(asked, at(minutes));
    return judged.ok ? judged.value.stops.map(({ rule }) => rule) : judged.refusal;
  };
  expect(await rules(5)).toEqual(['bench-closed']);
  expect(await rules(750)).toEqual([]);
  const told = { commandId: 'x', shopId, spraying: asked.spraying, recipe: 'r', benches: ['b'], planned: null };
  const startedAt = instantOf(NOON + 750 * 60_000);
  await tellSpraying({ ...told, startedAt, endedAt: null, by: null, passed: [] }, at(750));
  expect(await rules(751)).toEqual([]);
});
