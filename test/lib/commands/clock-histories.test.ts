import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Clock, clockAt } from '@/lib/clock';
import { confirmClock } from '@/lib/commands/confirm-clock';
import { recordApplication } from '@/lib/commands/record-application';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { trustOfClock } from '@/lib/data/clock-mark';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates, certaintyNow } from '@/lib/views/bench-states';
import { runs } from '@/test/runs';
import { SMALL, smallShop } from './small-shop';

/*
 * The board of a running shop beside the time that really passes: clock set, asleep and started anew, through the database.
 * `test/lib/engine/keepout/clock-model.test.ts` does the same many more times without one.
 */

const [SECOND, MINUTE, HOUR, DAY] = [1_000, 60_000, 3_600_000, 86_400_000];
const BEGIN = Date.UTC(2026, 2, 31, 9);
/** The label of the soap: 12.5 hours. */
const INTERVAL = 750 * MINUTE;

function machine() {
  const time = { real: 0, ahead: 0, steady: 0, boot: 1 };
  const wall = () => new Date(BEGIN + time.real + time.ahead);
  const clock = (): Clock => clockAt(wall, () => time.steady, `boot ${time.boot}`);
  return { time, clock };
}

const jump = fc.constantFrom(0, -DAY, -HOUR, -1.9 * MINUTE, 9.5 * MINUTE, 5 * HOUR, 23 * HOUR);
const step = fc.oneof(
  fc.record({ do: fc.constant('pass' as const), ms: fc.integer({ min: 0, max: 9 * HOUR }) }),
  fc.record({ do: fc.constant('spray' as const) }),
  fc.record({ do: fc.constant('jump' as const), ms: jump }),
  fc.record({ do: fc.constant('sleep' as const), ms: fc.integer({ min: 0, max: 20 * HOUR }) }),
  fc.record({
    do: fc.constant('restart' as const),
    ...{ ms: fc.integer({ min: 0, max: 20 * HOUR }), isReboot: fc.boolean(), jump },
  }),
  fc.record({ do: fc.constant('confirm' as const) }),
);
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

/** Sprayed and waited for: a history in which the bench does open. */
const OPENS: Step[] = [{ do: 'spray' }, { do: 'pass', ms: 9 * HOUR }, { do: 'pass', ms: 9 * HOUR }];

async function history(steps: readonly Step[]): Promise<{ early: number; opened: number }> {
  const shopId = await smallShop({ ...SMALL, programs: [], applications: [] });
  const { time, clock } = machine();
  const sprayed: { real: number; wrongBy: number }[] = [];
  const seen = { early: 0, opened: 0 };
  const doOne = async (one: Step) => {
    if (one.do === 'pass') Object.assign(time, { real: time.real + one.ms, steady: time.steady + one.ms });
    else if (one.do === 'sleep') time.real += one.ms;
    else if (one.do === 'jump') time.ahead += one.ms;
    else if (one.do === 'spray') {
      const now = clock().now();
      const what = { recipe: 'r', benches: ['b'], startedAt: now, endedAt: now };
      await recordApplication({ commandId: newId(), shopId, ...what }, clock());
      sprayed.push({ real: time.real, wrongBy: time.ahead });
    } else if (one.do === 'restart') {
      time.real += one.ms;
      time.ahead += one.jump;
      time.steady = one.isReboot ? 0 : time.steady + one.ms;
      time.boot += one.isReboot ? 1 : 0;
      await lookAtClock(clock(), true);
    } else if ((await trustOfClock(clock().reading())).doubt !== null) {
      time.ahead = 0;
      const wasRight = sprayed.every(({ wrongBy }) => wrongBy > -SECOND);
      await confirmClock({ commandId: newId(), shopId, shownAt: clock().now(), wasRight }, clock());
    }
  };
  await lookAtClock(clock(), true);
  for (const one of steps) {
    await doOne(one);
    const shop = shopOfFile(await shopFileOf(shopId));
    const [bench] = benchStates(shop, clock().now(), await certaintyNow(clock(), shopId));
    const isWet = sprayed.some(({ real }) => time.real < real + INTERVAL - SECOND);
    if (bench?.state === 'open') seen[isWet ? 'early' : 'opened'] += 1;
    await lookAtClock(clock());
  }
  return seen;
}

test('through the database, too, no bench opens early', { timeout: 600_000 }, async () => {
  let opened = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 14 }), async (steps) => {
      const seen = await history(steps);
      opened += seen.opened;
      expect(seen.early).toBe(0);
    }),
    { numRuns: runs(2, 300), examples: [[OPENS]] },
  );
  expect(opened).toBeGreaterThan(0);
});
