import fc from 'fast-check';
import { expect, test } from 'vitest';
import { latestEnd, recordsBegun, recordsToCome, runningRecords } from '@/lib/engine/keepout/record-index';
import type { Application, Bench, Recipe } from '@/lib/engine/shop';
import type { Instant } from '@/shared/time/instant';
import { runs } from '../../../runs';

const HOUR = 3_600_000;
const START = 500_000 * HOUR;
const BENCHES = ['b1', 'b2', 'b3'].map((id) => ({ id }) as Bench);
const recipe = (rei: number | null) =>
  ({ ingredients: [{ product: { label: { rei }, madeFrom: [] } }] }) as unknown as Recipe;
const RECIPES = [recipe(0), recipe(240), recipe(720), recipe(null)];

/** Records within ten hours, so that many touch; some lack an end or a bench, end before they begin or count nowhere. */
const aRecord = fc
  .record({
    start: fc.constantFrom(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, Number.NaN),
    hours: fc.constantFrom(0, 1, 2, -1, null),
    recipe: fc.constantFrom(...RECIPES),
    benches: fc.subarray(BENCHES),
    closedUntil: fc.constantFrom(null, 9, 20),
    withdrawn: fc.boolean(),
    recordedRei: fc.constantFrom(null, 0, 480),
  })
  .map(
    ({ start, hours, closedUntil, ...rest }) =>
      ({
        ...rest,
        startedAt: START + start * HOUR,
        endedAt: hours === null ? null : START + (start + hours) * HOUR,
        closedUntil: closedUntil === null ? null : START + closedUntil * HOUR,
      }) as unknown as Application,
  );

const counting = (records: Application[]) => records.filter((one) => !one.withdrawn || one.closedUntil !== null);

/** When a record reopens its benches, by the rules alone: end and interval, or a later end that is not confirmed. */
function reopens({ recipe: { ingredients }, startedAt, endedAt, closedUntil, recordedRei, benches }: Application) {
  const rei = ingredients[0]?.product.label.rei ?? null;
  const isWrong = endedAt === null || !(startedAt >= 0) || endedAt < startedAt;
  if (rei === null || isWrong || benches.length === 0) return null;
  return Math.max(endedAt + Math.max(rei, recordedRei ?? 0) * 60_000, closedUntil ?? 0);
}

test('what the index finds is what a look at every record finds', () => {
  fc.assert(
    fc.property(fc.array(aRecord, { maxLength: 12 }), fc.integer({ min: -1, max: 45 }), (records, halves) => {
      const now = (START + (halves * HOUR) / 2) as Instant;
      const all = counting(records);
      const running = all.filter((one) => {
        const end = reopens(one);
        return (end === null || end > now) && !(one.startedAt >= 0 && one.startedAt > now);
      });
      expect(runningRecords(records, now).map(({ application }) => application)).toEqual(running);
      expect(recordsToCome(records, now)).toEqual(all.filter(({ startedAt }) => startedAt >= 0 && startedAt > now));
      const day = (now + 3 * HOUR) as Instant;
      expect(recordsBegun(records, now, day)).toEqual(
        all.filter(({ startedAt }) => startedAt >= 0 && startedAt >= now && startedAt < day),
      );
      for (const bench of BENCHES) {
        const ends = all
          .filter((one) => one.startedAt <= now && one.benches.includes(bench))
          .flatMap((one) => reopens(one) ?? []);
        expect(latestEnd(records, bench, now)).toBe(ends.length === 0 ? null : Math.max(...ends));
      }
    }),
    { numRuns: runs(500, 20_000) },
  );
});
