import { type Day, dayFromNumber } from '@/shared/time/day';
import { isCheaper } from '../ahead/cheapest-offer';
import type { Offer, Product } from '../shop';
import type { Part } from './baseline-policy';
import { comingFor, type UsedPack } from './bought';
import type { Horizon } from './horizon';
import { placeAfter } from './need';
import type { Order, OrderLine } from './orders';
import type { Pack } from './pack';
import { openPack, stillUsed } from './pack-use';
import type { PurchasePlan } from './purchase-plan';

/** Why a line of a purchase plan is as it is: the facts, for a sentence or a table. */
export type Reason =
  | { kind: 'nothing else is offered' }
  /** The other one would be cheaper per unit, but so much of it, as a part of 1, would die on a day. */
  | { kind: 'other dies'; other: Offer; part: number; on: Day }
  /** The other one would be cheaper per unit, but so much of it would be left, and not used within its life. */
  | { kind: 'other is too much'; other: Offer; part: number }
  /** The other one costs so many times as much per unit. */
  | { kind: 'other is dearer'; other: Offer; times: number }
  /** The other one would not be there in time. */
  | { kind: 'other is too late'; other: Offer; on: Day }
  /** The other one would be cheaper per unit, and is not once its orders are paid, or what is left of it. */
  | { kind: 'other costs more in all'; other: Offer }
  | { kind: 'price by quantity'; atLeast: number }
  /** Ordered before it has to be, so that it comes in the same order as something else. */
  | { kind: 'shares an order'; with: Product[]; latestOn: Day }
  /** Goods beyond what is needed, or sooner than needed, make the order large enough. */
  | { kind: 'freight becomes free' }
  | { kind: 'minimum is reached' }
  | { kind: 'is late'; neededOn: Day }
  | { kind: 'stays shut'; count: number };

export type ExplainedLine = { order: Order; line: OrderLine; reasons: Reason[] };

/** Every line of a plan with why it is so, in the order of its orders. */
export const whyOf = (plan: PurchasePlan): ExplainedLine[] =>
  plan.orders.flatMap((order) => order.lines.map((line) => ({ order, line, reasons: reasonsFor(plan, order, line) })));

function reasonsFor({ parts, horizon }: PurchasePlan, order: Order, line: OrderLine): Reason[] {
  const bought = parts.find(({ part }) => part.need.product === line.offer.product);
  const packs = bought?.purchase.packs.filter((one) => one.pack.offer === line.offer && one.orderOn === order.on) ?? [];
  const [first] = packs;
  if (!bought || !first) return [];
  return [
    ...againstOthers(bought.part, horizon, first),
    ...byQuantity(line),
    ...timing(bought.part, order, line, first),
    ...staysShut(packs),
  ];
}

/** What speaks against each other pack at the moment when the first of these is opened. */
function againstOthers({ need, packs }: Part, horizon: Horizon, chosen: UsedPack): Reason[] {
  const others = packs.filter(({ offer }) => offer !== chosen.pack.offer);
  if (others.length === 0) return [{ kind: 'nothing else is offered' }];
  const place = placeAfter(need, chosen.from, 0);
  if (place >= need.days.length) return [];
  return others.map((other): Reason => {
    const way = other.ways[place];
    if (!way) return { kind: 'other is too late', other: other.offer, on: dayFromNumber(need.days[place] ?? 0) };
    if (!isCheaper(other.offer, chosen.pack.offer)) {
      return { kind: 'other is dearer', other: other.offer, times: perUnit(other) / perUnit(chosen.pack) };
    }
    const coming = comingFor(need, horizon, { pack: other, orderOn: way.orderOn }, place);
    if (typeof coming === 'string') return { kind: 'other costs more in all', other: other.offer };
    const use = openPack(need, horizon, other, { ...coming, covered: chosen.from, place });
    if (use.left > 0 && use.lastDay < horizon.end) {
      const on = dayFromNumber(use.lastDay + 1);
      return { kind: 'other dies', other: other.offer, part: use.left / other.size, on };
    }
    const used = stillUsed(need, horizon, use);
    if (use.left > used) return { kind: 'other is too much', other: other.offer, part: (use.left - used) / other.size };
    return { kind: 'other costs more in all', other: other.offer };
  });
}

const perUnit = ({ levels, size }: Pack): number => (levels[0]?.price ?? 0) / size;

function byQuantity({ offer, count }: OrderLine): Reason[] {
  const reached = offer.breaks.filter(({ atLeast }) => atLeast <= count).map(({ atLeast }) => atLeast);
  return reached.length > 0 ? [{ kind: 'price by quantity', atLeast: Math.max(...reached) }] : [];
}

/** Why on this day: because it is late, or because it comes with something else. */
function timing({ need, isLate }: Part, order: Order, line: OrderLine, first: UsedPack): Reason[] {
  const place = placeAfter(need, first.from, 0);
  const day = need.days[place];
  if (day !== undefined && isLate[place]) return [{ kind: 'is late', neededOn: dayFromNumber(day) }];
  const latest = first.pack.ways[place]?.orderOn ?? first.orderOn;
  if (first.openedOn !== null && latest <= order.on) return [];
  const others = order.lines.filter(({ offer }) => offer.product !== line.offer.product);
  const { freeFreightOver, freightPerOrder, minimumOrder } = order.supplier;
  const without = order.goods - line.cost;
  const isFree = freightPerOrder !== null && freeFreightOver !== null && order.goods >= freeFreightOver;
  // What is never opened is there for the order's sake: no need of its own says how long it could wait.
  const shared = first.openedOn === null ? [] : [...new Set(others.map(({ offer }) => offer.product))];
  return [
    ...(shared.length > 0 ? [{ kind: 'shares an order' as const, with: shared, latestOn: dayFromNumber(latest) }] : []),
    ...(isFree && without < (freeFreightOver ?? 0) ? [{ kind: 'freight becomes free' as const }] : []),
    ...(minimumOrder !== null && without < minimumOrder ? [{ kind: 'minimum is reached' as const }] : []),
  ];
}

function staysShut(packs: readonly UsedPack[]): Reason[] {
  const count = packs.filter(({ openedOn }) => openedOn === null).length;
  return count > 0 ? [{ kind: 'stays shut', count }] : [];
}
