import type { Day } from '@/shared/time/day';
import type { Waste } from '../engine/ahead/plan';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import { type BottleSeen, bottleSeen } from './bottle-seen';
import type { Fig } from './figures';
import type { House } from './house';

/** A bottle of which something will be poured away. */
export type WasteSeen = {
  key: string;
  product: { id: string; name: string };
  bottle: BottleSeen;
  amount: Fig;
  cost: Fig;
  /** The last day it may be used. */
  lastDay: Day;
  /** Whether that day is already past. */
  past: boolean;
};

/** Every bottle of which something will be wasted within the weeks ahead, the first to die first. */
export function wasteAhead(house: House): WasteSeen[] {
  return house.plan.products
    .flatMap(({ wastes }) => wastes)
    .filter(({ amount }) => amount > 0)
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
    .map((waste) => wasteSeen(house, waste));
}

function wasteSeen({ plan, today, figure }: House, { container, on }: Waste): WasteSeen {
  const { lot, place, product } = container;
  const lastDay = lastUsableDay(container) ?? on;
  return {
    key: `${lot} ${place}`,
    product: { id: product.id, name: product.name },
    bottle: bottleSeen(plan, container),
    amount: figure('container', lot, place, 'wasted'),
    cost: figure('container', lot, place, 'wasteCost'),
    lastDay,
    past: lastDay < today,
  };
}
