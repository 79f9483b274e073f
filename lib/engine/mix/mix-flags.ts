import { addMinutes, type Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { projectionWith } from '../ahead/projection';
import { recordsOn } from '../keepout/record-index';
import { longestRei } from '../keepout/reopening';
import { flagsOf } from '../rules/all-rules';
import type { Flag, RuleName } from '../rules/flag';
import type { Recipe, Shop } from '../shop';
import type { Batch } from './batch';
import { onlyFor, sprayingOf } from './dry-run';

/** When a mix is sprayed: from its start to its end, as it is planned or as it was. */
export type SprayedWhen = { startsAt: Instant; endsAt: Instant };

/**
 * Which rules a mix breaks when it is sprayed at a time on its benches: everything that a plan would be flagged for, with
 * what is on record counted. What is planned beside it is not.
 *
 * Takes    the shop as it stands, the recipe with what really goes in, the batch with its benches, and the time
 * Gives    flags without a program, the gravest first
 */
export function mixFlags(shop: Shop, recipe: Recipe, batch: Batch, { startsAt, endsAt }: SprayedWhen): Flag[] {
  const today = dayOf(shop.zone, startsAt);
  const rei = longestRei(recipe);
  const reopensAt = rei === null ? null : addMinutes(endsAt, rei);
  const spraying = { ...sprayingOf(shop, recipe, batch, today), startsAt, endsAt, reopensAt };
  // Rules remember each bench by itself, so that what was sprayed on other benches changes nothing.
  const here = { ...onlyFor(shop, recipe), applications: recordsOn(shop.applications, batch.benches) };
  const projection = projectionWith(here, [spraying], today, 1);
  const benches = batch.benches.map(({ id }) => id);
  const named = new Set(benches);
  return (
    flagsOf(projection)
      // What a mix takes is measured while it is mixed: only a plan lacks it.
      .filter(({ rule }) => rule !== 'unknown-need')
      .filter(({ program, benches: flagged }) => program !== null || flagged.length === 0)
      .map((flag) => ({ ...flag, program: null, benches: flag.benches.filter((id) => named.has(id)) }))
  );
}

/** A rule that a mix broke and somebody passed, and why. */
export type Passing = { rule: string; reason: string };

/**
 * The rules that say stop to a mix and that nobody has given a reason for.
 *
 * Gives    each rule once, with the flags that are in the way
 */
export function unpassed(flags: readonly Flag[], passed: readonly Passing[]): Map<RuleName, Flag[]> {
  const given = new Set(passed.filter(({ reason }) => reason.trim() !== '').map(({ rule }) => rule));
  const left = new Map<RuleName, Flag[]>();
  for (const flag of flags) {
    if (flag.severity !== 'stop' || given.has(flag.rule)) continue;
    left.set(flag.rule, [...(left.get(flag.rule) ?? []), flag]);
  }
  return left;
}
