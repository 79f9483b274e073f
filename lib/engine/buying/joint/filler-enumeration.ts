import type { Horizon } from '../horizon';
import type { Pack } from '../pack';
import { usableBehind } from '../pack-use';
import { leastPrice } from '../remaining-cost-bound';
import type { Ordered } from './column';
import { MOST_FILLERS, whileShut } from './fillers';
import { countOf, goodsIn, type Label } from './label-setting';
import type { PartGraph } from './part-graph';
import type { DualPrices } from './pricing-problem';

/** A filler: a pack in one order that is not opened within the horizon. Micros, at the dual prices. */
type Kind = {
  pack: Pack;
  slot: number;
  /** What one comes to when all of it will still be used. */
  cost: number;
  /** What a unit of it costs, and what of it may still be used at most: µL or mg. */
  perUnit: number;
  mostUsed: number;
};

/** A set of fillers: its least reduced cost, its content, and what each order then holds. */
type FillerSet = {
  cost: number;
  size: number;
  goods: Label['goods'];
  slots: readonly number[];
  packs: readonly Kind[];
};

/** More sets than this for one label make the enumeration incomplete. */
const MOST_MIXTURES = 20_000;

/**
 * Every set of fillers that may complete the orders of a label, the empty one first: unopened packs that bring an order to
 * its minimum or a price to its quantity break. Dominated sets are left out.
 *
 *   reduced cost of a set ≥ Σ price × (1 + capital − goodsDual − credit)
 *
 * Takes    the label, the highest reduced cost with the fillers, what a unit of filler can gain, and `isAlone` when no
 *          other product shares these orders, so that each must reach its minimum by itself
 * Gives    null when there are too many, or the time is over
 */
export function enumerateFillers(
  graph: PartGraph,
  horizon: Horizon,
  prices: DualPrices,
  within: { label: Label; most: number; rate: number; isAlone: boolean; isOver: () => boolean },
): Ordered[][] | null {
  const { label } = within;
  const kinds = kindsFor(graph, horizon, prices, label);
  const room = graph.fillerGain.gain(1, label.keeps);
  const surely = Math.min(...kinds.map(({ mostUsed }) => mostUsed)) - label.keeps;
  const cheapest = Math.min(...kinds.map(({ perUnit }) => perUnit));
  const isWithin = ({ cost, size }: FillerSet): boolean =>
    cost + cheapest * Math.max(0, size - room) - within.rate * Math.max(0, room - size) <= within.most;
  let mixtures: FillerSet[] = [{ cost: label.cost, size: 0, goods: label.goods, slots: label.slots, packs: [] }];
  for (const [at, kind] of kinds.entries()) {
    mixtures = mixtures.flatMap((mixture) => withMore(mixture, kind));
    const isLastOfOrder = kinds[at + 1]?.slot !== kind.slot;
    const asked = { slot: kind.slot, minimum: graph.slots.all[kind.slot]?.minimum ?? 0 };
    if (isLastOfOrder || mixtures.length > MOST_MIXTURES / 20) mixtures = undominated(mixtures, surely, asked);
    if (isLastOfOrder && within.isAlone) mixtures = mixtures.filter((one) => isLargeEnough(graph, label, one, asked));
    if (mixtures.length > MOST_MIXTURES || within.isOver()) return null;
  }
  return mixtures.map(({ packs }) => packs.map((one) => orderedOf(graph, one)));

  function withMore(mixture: FillerSet, kind: Kind): FillerSet[] {
    const all = [mixture];
    for (let last = mixture; helps(graph, kind, label, last) && all.length <= MOST_FILLERS; ) {
      last = plusOne(last, kind, last.slots.includes(kind.slot) ? 0 : (prices.orderDual[kind.slot] ?? 0));
      if (!isWithin(last)) break;
      all.push(last);
    }
    return all;
  }
}

const plusOne = ({ cost, size, goods, slots, packs }: FillerSet, kind: Kind, begun: number): FillerSet => ({
  cost: cost + kind.cost + begun,
  size: size + kind.pack.size,
  goods: new Map(goods).set(kind.slot, (goods.get(kind.slot) ?? 0) + leastPrice(kind.pack)),
  slots: slots.includes(kind.slot) ? slots : [...slots, kind.slot],
  packs: [...packs, kind],
});

const orderedOf = ({ slots, at }: PartGraph, { pack, slot }: Kind): Ordered => ({
  pack,
  orderOn: slots.all[slot]?.day ?? 0,
  slot: at[slot] ?? slot,
});

/** The fillers that could help, order by order. */
function kindsFor({ slots, part }: PartGraph, horizon: Horizon, { goodsDual }: DualPrices, label: Label): Kind[] {
  const kinds: Kind[] = [];
  for (const [slot, { supplier, day, minimum }] of slots.all.entries()) {
    for (const pack of part.packs) {
      if (pack.offer.supplier !== supplier) continue;
      if (minimum === 0 && (pack.levels.length === 1 || countOf(label, pack, part.packs, slot) === 0)) continue;
      const { lastDay, tied } = whileShut(pack, horizon, day);
      const mostUsed = usableBehind(part.need, horizon, lastDay);
      const off = (mostUsed > 0 ? 0 : 1) + tied - (goodsDual[slot] ?? 0);
      const cost = Math.min(...pack.levels.map(({ price }) => price * off));
      kinds.push({ pack, slot, cost, perUnit: mostUsed > 0 ? leastPrice(pack) / pack.size : 0, mostUsed });
    }
  }
  return kinds;
}

/** True while one more may help: its order is below its minimum, or its price is not yet the lowest. */
function helps({ slots, part }: PartGraph, { pack, slot }: Kind, label: Label, { goods, packs }: FillerSet): boolean {
  if ((goods.get(slot) ?? 0) < (slots.all[slot]?.minimum ?? 0)) return true;
  if (pack.levels.length === 1) return false;
  const beside = packs.filter((one) => one.pack === pack && one.slot === slot).length;
  return countOf(label, pack, part.packs, slot) + beside < (pack.levels.at(-1)?.atLeast ?? 1);
}

/** The minimum of an order. */
type Asked = { slot: number; minimum: number };

/** True when a used order reaches its minimum, each pack at the price of its quantity. */
function isLargeEnough(
  { part }: PartGraph,
  label: Label,
  { slots, goods, packs }: FillerSet,
  { slot, minimum }: Asked,
) {
  if (!slots.includes(slot) || (goods.get(slot) ?? 0) >= minimum) return true;
  return part.packs.some(({ levels }) => levels.length > 1) && goodsIn(label, part.packs, slot, packs) >= minimum;
}

/**
 * The sets that no other dominates. A set dominates another in the same orders when it is worth as much in each, costs no
 * more, and all of it will be used.
 */
function undominated(mixtures: readonly FillerSet[], surely: number, { slot, minimum }: Asked): FillerSet[] {
  const groups = new Map<string, FillerSet[]>();
  for (const one of mixtures) {
    const others = [...one.goods].filter(([at]) => at !== slot);
    const key = `${one.slots.join(' ')}|${others.join(' ')}|${one.packs.some(hasLevels) ? groups.size : ''}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].flatMap((group) => {
    const worth = ({ goods }: FillerSet) => Math.min(minimum, goods.get(slot) ?? 0);
    const kept: FillerSet[] = [];
    for (const one of group.sort((a, b) => a.cost - b.cost || worth(b) - worth(a))) {
      const isNeedless = kept.some(
        (other) => other.size <= Math.min(surely, one.size) && worth(other) >= worth(one) && other.cost <= one.cost,
      );
      if (!isNeedless) kept.push(one);
    }
    return kept;
  });
}

const hasLevels = ({ pack }: Kind): boolean => pack.levels.length > 1;
