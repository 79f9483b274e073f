import type { Horizon } from '../horizon';
import { leastPrice } from '../least-ahead';
import type { Pack } from '../pack';
import { usableBehind } from '../pack-use';
import type { Prices } from './cheapest-column';
import type { Ordered } from './column';
import { MOST_SHUT, whileShut } from './extras';
import type { PartGraph } from './part-graph';
import { countOf, goodsIn, type Way } from './ways';

/** One kind of pack that may be put into one order to stay shut. Micros, at the prices of the orders. */
type Kind = {
  pack: Pack;
  slot: number;
  /** What one comes to when all of it will still be used. */
  cost: number;
  /** What a unit of it costs, and what of it may still be used at most: µL or mg. */
  perUnit: number;
  mostUsed: number;
};

/** Some packs beside the need: what they come to if all of it will still be used, how much that is, what is in each order. */
type Mixture = { cost: number; size: number; goods: Way['goods']; slots: readonly number[]; packs: readonly Kind[] };

/** So many mixtures of one way are gone on with; with more, the answer is not complete. */
const MOST_MIXTURES = 20_000;

/**
 * Every mixture of packs that may be put into the orders of a way beside what it needs, the empty one first: packs that
 * stay shut, and are there only to make an order large enough, or to bring its prices down. Of two that make the orders
 * as large, the cheaper one will do.
 *
 *   a mixture comes to at least Σ price × (1 + capital − reward − credit), and what cannot be used of it is not credited
 *
 * Takes    the way, the most that it may come to with them, what a unit that stays shut can gain, and whether nobody else
 *          is in these orders, so that each must be large enough by this alone
 * Gives    null when there are too many, or the time is over
 */
export function mixturesFor(
  graph: PartGraph,
  horizon: Horizon,
  prices: Prices,
  within: { way: Way; most: number; rate: number; isAlone: boolean; isOver: () => boolean },
): Ordered[][] | null {
  const { way } = within;
  const kinds = kindsFor(graph, horizon, prices, way);
  const room = graph.filling.gain(1, way.keeps);
  const surely = Math.min(...kinds.map(({ mostUsed }) => mostUsed)) - way.keeps;
  const cheapest = Math.min(...kinds.map(({ perUnit }) => perUnit));
  const isWithin = ({ cost, size }: Mixture): boolean =>
    cost + cheapest * Math.max(0, size - room) - within.rate * Math.max(0, room - size) <= within.most;
  let mixtures: Mixture[] = [{ cost: way.cost, size: 0, goods: way.goods, slots: way.slots, packs: [] }];
  for (const [at, kind] of kinds.entries()) {
    mixtures = mixtures.flatMap((mixture) => withMore(mixture, kind));
    const isLastOfOrder = kinds[at + 1]?.slot !== kind.slot;
    const asked = { slot: kind.slot, minimum: graph.slots.all[kind.slot]?.minimum ?? 0 };
    if (isLastOfOrder || mixtures.length > MOST_MIXTURES / 20) mixtures = undominated(mixtures, surely, asked);
    if (isLastOfOrder && within.isAlone) mixtures = mixtures.filter((one) => isLargeEnough(graph, way, one, asked));
    if (mixtures.length > MOST_MIXTURES || within.isOver()) return null;
  }
  return mixtures.map(({ packs }) => packs.map((one) => orderedOf(graph, one)));

  function withMore(mixture: Mixture, kind: Kind): Mixture[] {
    const all = [mixture];
    for (let last = mixture; helps(graph, kind, way, last) && all.length <= MOST_SHUT; ) {
      last = plusOne(last, kind, last.slots.includes(kind.slot) ? 0 : (prices.fixed[kind.slot] ?? 0));
      if (!isWithin(last)) break;
      all.push(last);
    }
    return all;
  }
}

const plusOne = ({ cost, size, goods, slots, packs }: Mixture, kind: Kind, begun: number): Mixture => ({
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

/** The kinds that could be of use, order by order. */
function kindsFor({ slots, part }: PartGraph, horizon: Horizon, { reward }: Prices, way: Way): Kind[] {
  const kinds: Kind[] = [];
  for (const [slot, { supplier, day, minimum }] of slots.all.entries()) {
    for (const pack of part.packs) {
      if (pack.offer.supplier !== supplier) continue;
      if (minimum === 0 && (pack.levels.length === 1 || countOf(way, pack, part.packs, slot) === 0)) continue;
      const { lastDay, tied } = whileShut(pack, horizon, day);
      const mostUsed = usableBehind(part.need, horizon, lastDay);
      const off = (mostUsed > 0 ? 0 : 1) + tied - (reward[slot] ?? 0);
      const cost = Math.min(...pack.levels.map(({ price }) => price * off));
      kinds.push({ pack, slot, cost, perUnit: mostUsed > 0 ? leastPrice(pack) / pack.size : 0, mostUsed });
    }
  }
  return kinds;
}

/** Whether one more of a kind could be of use: its order is not large enough yet, or its price not the best. */
function helps({ slots, part }: PartGraph, { pack, slot }: Kind, way: Way, { goods, packs }: Mixture): boolean {
  if ((goods.get(slot) ?? 0) < (slots.all[slot]?.minimum ?? 0)) return true;
  if (pack.levels.length === 1) return false;
  const beside = packs.filter((one) => one.pack === pack && one.slot === slot).length;
  return countOf(way, pack, part.packs, slot) + beside < (pack.levels.at(-1)?.atLeast ?? 1);
}

/** What an order asks to be worth. */
type Asked = { slot: number; minimum: number };

/** True when an order that is begun is worth what it asks for, at the prices that so many packs have. */
function isLargeEnough({ part }: PartGraph, way: Way, { slots, goods, packs }: Mixture, { slot, minimum }: Asked) {
  if (!slots.includes(slot) || (goods.get(slot) ?? 0) >= minimum) return true;
  return part.packs.some(({ levels }) => levels.length > 1) && goodsIn(way, part.packs, slot, packs) >= minimum;
}

/**
 * Mixtures without those that another one makes needless: one in the same orders that is worth no less in the order that
 * is looked at and as much in the others, and surely comes to no more, since all of it will be used.
 */
function undominated(mixtures: readonly Mixture[], surely: number, { slot, minimum }: Asked): Mixture[] {
  const groups = new Map<string, Mixture[]>();
  for (const one of mixtures) {
    const others = [...one.goods].filter(([at]) => at !== slot);
    const key = `${one.slots.join(' ')}|${others.join(' ')}|${one.packs.some(hasLevels) ? groups.size : ''}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].flatMap((group) => {
    const worth = ({ goods }: Mixture) => Math.min(minimum, goods.get(slot) ?? 0);
    const kept: Mixture[] = [];
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
