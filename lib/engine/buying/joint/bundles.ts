import type { Horizon } from '../horizon';
import { ratePerDay } from '../pack-use';
import { MOST_FILLERS, unopenedCosts } from './fillers';
import type { Arc, PartGraph } from './part-graph';

/** Several packs at once: the node that they lead to, how many there are, and what they come to. */
export type Bundle = { to: number; count: number; cost: number };

/**
 * Several packs of one kind from one order, one after another, at the price that so many of them have: one bundle for
 * each number that a quantity break reaches. Those that the need does not take any more stay shut.
 */
export function bundlesOf(
  graph: PartGraph,
  horizon: Horizon,
  { arc, slot, orderOn, goodsDual }: { arc: Arc; slot: number; orderOn: number; goodsDual: number },
): Bundle[] {
  const chain = chainOf(graph, arc, slot);
  const off = ratePerDay(horizon) * (orderOn - horizon.start) + goodsDual;
  const bundles = chain.bundles.map(({ to, count, price, shares }) => ({
    to,
    count,
    cost: price * (shares - count * off),
  }));
  if (!chain.isAtEnd) return bundles;
  const { shares, count } = chain;
  return [
    ...bundles,
    ...fillerBundles(graph, horizon, { arc, orderOn, goodsDual, shares: shares - count * off, count }),
  ];
}

/** The same packs whatever the order's price: how far so many reach, and what counts of each one's price. */
type Chain = {
  bundles: { to: number; count: number; price: number; shares: number }[];
  count: number;
  shares: number;
  isAtEnd: boolean;
};

/** A chain holds for all order days of its first arc, unless one of those behind it does not: then it is kept by slot. */
const chains = new WeakMap<Arc, Map<number, Chain>>();

export function chainOf(graph: PartGraph, arc: Arc, slot: number): Chain {
  const known = chains.get(arc) ?? new Map<number, Chain>();
  chains.set(arc, known);
  const kept = known.get(slot) ?? known.get(ANY_SLOT);
  if (kept) return kept;
  const { chain, isForAll } = followChain(graph, arc, slot);
  known.set(isForAll ? ANY_SLOT : slot, chain);
  return chain;
}

const ANY_SLOT = -1;

function followChain(graph: PartGraph, arc: Arc, slot: number): { chain: Chain; isForAll: boolean } {
  const { levels } = arc.pack;
  const chain: Chain = { bundles: [], count: 0, shares: 0, isAtEnd: false };
  let isForAll = true;
  for (let next: Arc | undefined = arc; next && !chain.isAtEnd; next = arcFrom(graph, next.to, arc, slot)) {
    if (next.firstSlot > arc.firstSlot || next.lastSlot < arc.lastSlot) isForAll = false;
    chain.shares += next.share;
    chain.count += 1;
    chain.isAtEnd = next.to === graph.nodes;
    const level = levels.findLast(({ atLeast }) => atLeast <= chain.count);
    const { count, shares } = chain;
    if (level && level.atLeast > 1) chain.bundles.push({ to: next.to, count, price: level.price, shares });
  }
  // An order day that stops short would go on another way for another slot.
  return { chain, isForAll: isForAll && chain.isAtEnd };
}

/** The numbers of packs that a break asks for and the need does not take: what is more stays shut. */
export function fillerBundles(
  graph: PartGraph,
  horizon: Horizon,
  {
    arc,
    orderOn,
    goodsDual,
    shares,
    count,
  }: { arc: Arc; orderOn: number; goodsDual: number; shares: number; count: number },
): Bundle[] {
  return arc.pack.levels.flatMap(({ atLeast, price }) => {
    const shut = atLeast - count;
    if (shut <= 0 || shut > MOST_FILLERS) return [];
    const cost = unopenedCosts(graph.part, horizon, { pack: arc.pack, orderOn, price })[shut - 1] ?? 0;
    return [{ to: graph.nodes, count: atLeast, cost: price * (shares - shut * goodsDual) + cost }];
  });
}

/** The arc of the same kind of pack that leaves a node and holds for an order day. */
function arcFrom({ arcs, firstArc, nodes }: PartGraph, node: number, like: Arc, slot: number): Arc | undefined {
  if (node >= nodes) return undefined;
  for (let index = firstArc[node] ?? 0; index < (firstArc[node + 1] ?? 0); index++) {
    const arc = arcs[index];
    if (arc && arc.packIndex === like.packIndex && arc.firstSlot <= slot && slot <= arc.lastSlot) return arc;
  }
  return undefined;
}
