import fc from 'fast-check';
import { expect, test } from 'vitest';
import { projectionWith } from '@/lib/engine/ahead/projection';
import { batchFor } from '@/lib/engine/mix/batch';
import { onlyFor, sprayingOf } from '@/lib/engine/mix/dry-run';
import { mixFlags } from '@/lib/engine/mix/mix-flags';
import { flagsOf } from '@/lib/engine/rules/all-rules';
import type { Bench, Recipe } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { addMinutes, type Instant, instantOf } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { shopWithRecords } from '../../../bench/long-history';
import { parsedOrThrow } from '../../data/any-shop-file';

/* A mix is judged by the records of its own benches alone; the answer is that of all records. */

const shop = shopOfFile(parsedOrThrow(shopWithRecords({ products: 8, programs: 5, benches: 6 }, 900)));

/** The rules that a mix breaks, of everything on record. */
function ofAllRecords(recipe: Recipe, benches: Bench[], startsAt: Instant): string[] {
  const [today, batch] = [dayOf(shop.zone, startsAt), batchOf(benches)];
  const spraying = { ...sprayingOf(shop, recipe, batch, today), startsAt, endsAt: startsAt, reopensAt: startsAt };
  const flags = flagsOf(projectionWith(onlyFor(shop, recipe), [spraying], today, 1));
  return said(flags.filter(({ program }) => program !== null));
}

const said = (flags: readonly { rule: string; message: string }[]): string[] =>
  [
    ...new Set(flags.filter(({ rule }) => OF_RECORDS.has(rule)).map(({ rule, message }) => `${rule}: ${message}`)),
  ].sort();

/** The rules that look at what was sprayed before. */
const OF_RECORDS = new Set(['too-many-applications', 'too-soon', 'mode-repeated', 'oil-near-sulfur', 'bench-closed']);

function batchOf(benches: Bench[]) {
  const batch = batchFor({ kind: 'benches', benches }, shop.sprayer);
  if (!batch.ok) throw new Error(batch.message);
  return batch.value;
}

test('what was sprayed on other benches changes nothing that is said of a mix', () => {
  const last = instantOf(Date.parse('2026-03-01T22:00:00Z'));
  const told = new Set<string>();
  fc.assert(
    fc.property(
      fc.constantFrom(...shop.recipes),
      fc.subarray(shop.benches, { minLength: 1 }),
      fc.integer({ min: -900, max: 40_000 }),
      (recipe, benches, minutes) => {
        const at = addMinutes(last, minutes);
        const flags = mixFlags(shop, recipe, batchOf(benches), { startsAt: at, endsAt: at });
        expect(said(flags)).toEqual(ofAllRecords(recipe, benches, at));
        for (const { rule } of flags) told.add(rule);
      },
    ),
    { numRuns: 60 },
  );
  expect([...told].filter((rule) => OF_RECORDS.has(rule)).length).toBeGreaterThanOrEqual(2);
});
