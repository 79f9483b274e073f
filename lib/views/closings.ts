import type { Instant } from '@/shared/time/instant';
import type { Spraying } from '../engine/ahead/plan';
import { countingApplications } from '../engine/keepout/counting';
import { reopensAfter } from '../engine/keepout/reopening';
import type { Bench, Recipe, Shop } from '../engine/shop';

/** A bench being sprayed and the time after it: as recorded, or as planned. */
export type Closing = {
  benches: Bench[];
  recipe: Recipe;
  planned: boolean;
  startsAt: Instant;
  /** Null while it is running, or when nobody noted the end. */
  endsAt: Instant | null;
  /** Null when it is not known. */
  reopensAt: Instant | null;
};

/** Every closing there is: what was recorded, and what planned sprayings will add. */
export function closingsOf(shop: Shop, sprayings: readonly Spraying[]): Closing[] {
  const planned = sprayings.map(
    ({ program, recipe, startsAt, endsAt, reopensAt }): Closing => ({
      benches: program.benches,
      recipe,
      planned: true,
      startsAt,
      endsAt,
      reopensAt,
    }),
  );
  return [...recordedClosings(shop), ...planned];
}

/** The closings that application records give. */
export function recordedClosings(shop: Shop): Closing[] {
  return countingApplications(shop).map((application) => {
    const { benches, recipe, startedAt, endedAt } = application;
    const reopensAt = reopensAfter(application);
    return { benches, recipe, planned: false, startsAt: startedAt, endsAt: endedAt, reopensAt };
  });
}
