import { showMinutes } from '@/shared/measure/show';
import type { Recipe } from '../shop';
import type { Flag } from './flag';
import { flagSpraying } from './raise';
import type { Unflagged } from './unflagged';

/**
 * A mixed spray that would be older than it may be before the last of it is out.
 *
 * Looks at  how long a recipe may be used once it is mixed, and how long its spraying takes: mixed when it begins, at the
 *           latest
 * Fires     when the spraying takes longer; to the very minute is in time. A recipe without such a time is not judged
 * Severity  warn
 * Cleared   by mixing it in two batches, or by splitting the program
 */
export function mixedTooLong(plan: Unflagged): Flag[] {
  return plan.sprayings.flatMap((spraying) => {
    const { recipe, program, startsAt, endsAt } = spraying;
    const age = ageBeyond(recipe, startsAt, endsAt);
    if (age === null) return [];
    const about = { rule: 'mixed-too-long', severity: 'warn', benches: program.benches, product: null } as const;
    return flagSpraying(
      spraying,
      about,
      () =>
        `This takes ${showMinutes(age)}, and ${toBeUsedWithin(recipe)}. Mix it in two batches, or split the program.`,
    );
  });
}

const MINUTE = 60_000;

/** How old, in minutes, a spray was that was mixed and finished then; null when it was in time, and when nobody says. */
export function ageBeyond({ useWithin }: Recipe, mixedAt: number, endedAt: number): number | null {
  const age = (endedAt - mixedAt) / MINUTE;
  return useWithin !== null && age > useWithin ? age : null;
}

export const toBeUsedWithin = ({ name, useWithin }: Recipe): string =>
  `${name} is to be used within ${showMinutes(useWithin ?? 0)} of mixing`;
