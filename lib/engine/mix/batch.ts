import { type Reading, read, unreadable } from '@/shared/outcome';
import { compare, divide, type Exact, exact, ZERO } from '@/shared/quantity/exact';
import { wholeUp } from '@/shared/quantity/rounding';
import type { Spray } from '../ahead/plan';
import { groundOf } from '../bench/ground';
import { plantsOn, sprayFor } from '../bench/spray-volume';
import type { Bench, PlantGroup, Sprayer } from '../shop';

/** What a mix is for. */
export type MixFor =
  /** A finished volume, mL, taken as it is; with a sprayer it is split over its fills, without one it is one vessel. */
  | { kind: 'volume'; ml: Exact; area: Exact | null }
  /** Benches, as a program sprays them. */
  | { kind: 'benches'; benches: Bench[] }
  /** Just these plants, wherever they stand. */
  | { kind: 'plants'; plants: PlantGroup[]; coverage: number; area: Exact | null };

/** How much is mixed: the spray and its fills, what it is sprayed on, and how many plants that are. */
export type Batch = {
  spray: Spray;
  benches: Bench[];
  /** m²; null when it is not known. */
  area: Exact | null;
  /** Null when only a volume was asked for. */
  plants: number | null;
};

/**
 * The batch that something takes with a sprayer.
 *
 * Takes    what it is for; the sprayer, whose capacity is above its loss, or null for a volume in one vessel
 * Gives    the spray in equal fills. For plants and benches as a plan has them, with the loss of each fill; a volume is
 *          the finished one, with none.
 * Refuses  a volume of nothing; plants whose mL per plant are unknown; nothing to spray
 */
export function batchFor(what: MixFor, sprayer: Sprayer | null): Reading<Batch> {
  if (what.kind === 'volume') return volumeBatch(what, sprayer);
  const standing = what.kind === 'benches' ? what.benches : [what];
  if (!sprayer) return unreadable('Name the sprayer: how much is mixed for plants depends on what a fill holds.');
  const spray = sprayFor(standing, sprayer);
  if (!spray)
    return unreadable(`Enter the mL per plant of ${unmeasured(standing)}; spray a few and note what is gone.`);
  if (spray.fills === 0) return unreadable('There is nothing to spray: no plants, or none that take any spray.');
  const benches = what.kind === 'benches' ? what.benches : [];
  const area = what.kind === 'benches' ? groundOf(what.benches) : what.area;
  return read({ spray, benches, area, plants: plantsOn(standing) });
}

function volumeBatch({ ml, area }: Extract<MixFor, { kind: 'volume' }>, sprayer: Sprayer | null): Reading<Batch> {
  if (compare(ml, ZERO) === 0)
    return unreadable('That is no spray at all. Write a volume above nothing, such as "2 gal".');
  const fills = sprayer ? wholeUp<number>(divide(ml, sprayer.capacity)) : 1;
  const spray = { onPlants: ml, fills, fill: divide(ml, exact(fills)), total: ml };
  return read({ spray, benches: [], area, plants: null });
}

const unmeasured = (standing: readonly Pick<Bench, 'plants'>[]): string =>
  standing
    .flatMap(({ plants }) => plants.filter(({ mlPerPlant }) => mlPerPlant === null).map(({ name }) => name))
    .join(', ');
