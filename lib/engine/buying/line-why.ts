import { type Day, dayFromNumber } from '@/shared/time/day';
import { isCheaper } from '../ahead/cheapest-offer';
import type { Offer } from '../shop';
import type { UsedPack } from './bought';
import type { Part } from './habit';
import type { Horizon } from './horizon';
import { placeAfter } from './need';
import type { Order, OrderLine } from './orders';
import { openPack } from './pack-use';
import type { PurchasePlan } from './purchase-plan';

/** Why some packs are in a plan: what becomes of them, and what speaks against the pack that is cheaper by the unit. */
export type LineWhy = {
  /** How much of all these packs together will die, as a part of them, and the first day after which it does. */
  dies: { part: number; after: Day } | null;
  /** Whether no other pack of the product is cheaper by the unit. */
  isCheapest: boolean;
  /** The pack that is, opened instead of the first of these. Null where these are the cheapest. */
  rival: Rival | null;
  /** The first day on which one of these is opened; null when none is within the horizon. */
  openedOn: Day | null;
  /** From how many packs on this price holds; null when it holds for one. */
  fromPacks: number | null;
  /** Whether their order is free of freight, and would not be without these. */
  freesFreight: boolean;
};

export type Rival = {
  offer: Offer;
  /** What would die of it, as a part of it, and after which day; null when nothing would. */
  dies: { part: number; after: Day } | null;
  /** What would be left in it when the horizon ends, as a part of it. */
  left: number;
  /** Whether it could not be there in time. */
  isLate: boolean;
};

/** Why a line of an order is there. Null when the plan knows nothing of its packs. */
export function whyLine({ parts, horizon }: PurchasePlan, order: Order, line: OrderLine): LineWhy | null {
  const found = parts.find(({ part }) => part.need.product === line.offer.product);
  const packs = found?.purchase.packs.filter(({ pack, orderOn }) => pack.offer === line.offer && orderOn === order.on);
  const first = packs?.[0];
  if (!found || !packs || !first) return null;
  const cheapest = found.part.packs.reduce((best, one) => (isCheaper(one.offer, best.offer) ? one : best));
  const isCheapest = cheapest.offer === line.offer;
  const { freeFreightOver } = line.offer.supplier;
  const opened = packs.flatMap(({ openedOn }) => openedOn ?? []);
  const reached = line.offer.breaks.map(({ atLeast }) => atLeast).filter((atLeast) => atLeast <= line.count);
  return {
    dies: diesOf(packs, horizon),
    isCheapest,
    rival: isCheapest ? null : rivalOf(found.part, horizon, first, cheapest),
    openedOn: opened.length > 0 ? dayFromNumber(Math.min(...opened)) : null,
    fromPacks: reached.length > 0 ? Math.max(...reached) : null,
    freesFreight:
      freeFreightOver !== null && order.goods >= freeFreightOver && order.goods - line.cost < freeFreightOver,
  };
}

function diesOf(packs: readonly UsedPack[], { end }: Horizon): LineWhy['dies'] {
  const dead = packs.filter(({ use }) => use.left > 0 && use.lastDay < end);
  const [first] = dead;
  if (!first) return null;
  const all = packs.reduce((sum, { pack }) => sum + pack.size, 0);
  const lost = dead.reduce((sum, { use }) => sum + use.left, 0);
  const after = Math.min(...dead.map(({ use }) => use.lastDay));
  return { part: lost / all, after: dayFromNumber(after) };
}

function rivalOf({ need }: Part, horizon: Horizon, first: UsedPack, pack: UsedPack['pack']): Rival {
  const place = Math.min(placeAfter(need, first.from, 0), need.days.length - 1);
  const way = pack.ways[place];
  const { offer } = pack;
  if (!way) return { offer, dies: null, left: 0, isLate: true };
  const use = openPack(need, horizon, pack, { ...way, covered: first.from, place });
  const dies = use.left > 0 && use.lastDay < horizon.end;
  const left = use.left / pack.size;
  return { offer, left, isLate: false, dies: dies ? { part: left, after: dayFromNumber(use.lastDay) } : null };
}
