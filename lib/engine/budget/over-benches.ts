import { type Micros, micros } from '@/shared/quantity/amounts';
import { exact, multiply } from '@/shared/quantity/exact';
import { shareByValue, wholeNearest } from '@/shared/quantity/rounding';
import type { Bench, PlantGroup } from '../shop';
import type { BudgetLine, Piece } from './budget-line';

/**
 * A piece of cost as one line for each bench that it was for, by the spray that each takes: count × mL per plant ×
 * coverage. Where that is not known of any of them, by their plants; where there are none, alike.
 *
 * Rounds   each share to a micro, so that the lines add up to the piece
 */
export function overBenches({ benches, ...piece }: Piece): BudgetLine[] {
  const [only] = benches;
  if (benches.length <= 1) return [{ ...piece, bench: only ?? null }];
  const { cost } = piece;
  if (cost === null) return benches.map((bench) => ({ ...piece, bench }));
  const shares = shareByValue(micros(cost < 0 ? -cost : cost), weightsOf(benches));
  return benches.map((bench, at) => ({ ...piece, bench, cost: cost < 0 ? -(shares[at] ?? 0) : (shares[at] ?? 0) }));
}

const weights = new WeakMap<readonly Bench[], number[]>();

/** The benches of a program or a record are weighed once, however many pieces were for them. */
function weightsOf(benches: readonly Bench[]): number[] {
  const known = weights.get(benches) ?? weighed(benches);
  weights.set(benches, known);
  return known;
}

/** µL of spray on each bench, or its plants where that is not known of all. */
function weighed(benches: readonly Bench[]): number[] {
  const spray = benches.map(({ plants, coverage }) => plants.map((group) => sprayOf(group, coverage)));
  const isKnown = spray.every((groups) => groups.every((one) => one !== null));
  if (isKnown) return spray.map((groups) => groups.reduce<number>((total, one) => total + (one ?? 0), 0));
  return benches.map(({ plants }) => plants.reduce((total, { count }) => total + count, 0));
}

const sprayOf = ({ count, mlPerPlant }: PlantGroup, coverage: number): number | null =>
  mlPerPlant === null
    ? null
    : wholeNearest<Micros>(multiply(multiply(exact(count), exact(mlPerPlant)), exact(coverage * 1000)));

/** One plant group of a bench, its share of a cost, and what that is for one plant, to the nearest micro. */
export type GroupShare = { group: PlantGroup; cost: Micros; each: Micros | null };

/** What a bench cost, shared over its plant groups by the spray they take; by their plants where that is not known. */
export function overGroups(bench: Bench, cost: Micros): GroupShare[] {
  if (bench.plants.length === 0) return [];
  const spray = bench.plants.map((group) => sprayOf(group, bench.coverage));
  const values = spray.every((one) => one !== null) ? spray.map((one) => one ?? 0) : bench.plants.map((g) => g.count);
  const shares = shareByValue(cost, values);
  return bench.plants.map((group, at) => {
    const share = shares[at] ?? micros(0);
    const each = group.count === 0 ? null : wholeNearest<Micros>({ over: BigInt(share), under: BigInt(group.count) });
    return { group, cost: share, each };
  });
}
