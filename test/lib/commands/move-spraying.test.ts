import { expect, test } from 'vitest';
import { moveSpraying } from '@/lib/commands/move-spraying';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { horizonEnd, sprayingsBetween } from '@/lib/engine/ahead/sprayings';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { Day } from '@/shared/time/day';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop } from './small-shop';

const day = (text: string) => Day.parse(text);

/** Every Tuesday at 17:30 from 31 March on, which is the day of the tests' clock. */
const weekly = () =>
  smallShop({
    ...SMALL,
    programs: SMALL.programs.map((one) => ({ ...one, startsOn: day('2026-03-31'), repeat: 'FREQ=WEEKLY;BYDAY=TU' })),
  });

async function planned(shopId: string): Promise<string[]> {
  const shop = shopOfFile(await shopFileOf(shopId));
  const today = day('2026-03-31');
  return sprayingsBetween(shop, today, horizonEnd(today, 3)).map(
    ({ date, startsAt }) => `${date} ${new Date(startsAt).toISOString().slice(11, 16)}`,
  );
}

const on = day('2026-04-07');

test('a spraying is moved to another day and time, back to where it was, and no other one with it', async () => {
  const shopId = await weekly();
  const before = await planned(shopId);
  expect(before).toEqual(['2026-03-31 21:30', '2026-04-07 21:30', '2026-04-14 21:30']);
  const move = { commandId: newId(), shopId, program: 'g', on, to: day('2026-04-08'), at: 19 * 60 };
  const outcome = await moveSpraying(move, CLOCK);
  expect(outcome).toEqual({ ok: true, value: { day: on, at: 17 * 60 + 30 } });
  expect(await moveSpraying(move, CLOCK)).toEqual(outcome);
  expect(await planned(shopId)).toEqual(['2026-03-31 21:30', '2026-04-08 23:00', '2026-04-14 21:30']);

  const again = { ...move, commandId: newId(), to: day('2026-04-09'), at: 6 * 60 };
  expect(await moveSpraying(again, CLOCK)).toEqual({ ok: true, value: { day: day('2026-04-08'), at: 19 * 60 } });
  const back = { ...move, commandId: newId(), to: on, at: 17 * 60 + 30 };
  expect(await moveSpraying(back, CLOCK)).toMatchObject({ ok: true });
  expect(await planned(shopId)).toEqual(before);
});

test('nothing is moved to a day that is past, onto another turn of its program, or once it was left out', async () => {
  const shopId = await weekly();
  const move = (change: object) =>
    moveSpraying({ commandId: newId(), shopId, program: 'g', on, to: on, at: 600, ...change }, CLOCK);
  const faults = (path: string) => ({ ok: false, refusal: { code: 'faults', faults: [{ path }] } });
  expect(await move({ to: day('2026-03-30') })).toMatchObject(faults('to'));
  expect(await move({ to: day('2026-04-14') })).toMatchObject(faults('to'));
  expect(await move({ on: day('2026-04-08') })).toMatchObject(faults('on'));
  expect(await move({ program: 'h' })).toMatchObject({ refusal: { code: 'not-found', what: 'program' } });
  await skipSpraying({ commandId: newId(), shopId, program: 'g', on, reason: 'rain' }, CLOCK);
  expect(await move({})).toMatchObject({ refusal: { code: 'changed-meanwhile' } });
  expect(await planned(shopId)).toEqual(['2026-03-31 21:30', '2026-04-14 21:30']);
});
