import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import type { Plan, ProductAhead, Waste } from '../engine/ahead/plan';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import { firstBy } from '../engine/looked-up';
import type { Container, Product } from '../engine/shop';

/** A container as a picture needs it. */
export type BottleSeen = {
  /** What it holds when full; a kilogram of powder counts as a litre. */
  litres: number;
  /** The part of it that is left, and the part that will be left over on its last day: 0 to 1. */
  left: number;
  wasted: number;
  opened: boolean;
  form: Product['form'];
  liquid: Liquid;
  /** Whether it has yet to arrive, and whether its last usable day is past. */
  coming: boolean;
  past: boolean;
  /** Its last usable day, short enough for a paper tag; "?" when nobody knows it. Null for a picture without a tag. */
  tag: string | null;
};

/** What colour a picture gives to what is inside. The name is always beside it. */
export type Liquid = 'feed' | 'insect' | 'fungus' | 'other';

const LIQUIDS: Record<Product['kind'], Liquid> = {
  nutrient: 'feed',
  biostimulant: 'feed',
  insecticide: 'insect',
  'insecticide/miticide': 'insect',
  miticide: 'insect',
  fungicide: 'fungus',
  surfactant: 'other',
  'pH adjuster': 'other',
  other: 'other',
};

export const liquidOf = (product: Product): Liquid => LIQUIDS[product.kind];

const aheadOf = firstBy(({ product }: ProductAhead) => product);
const wasteIn = firstBy(({ container }: Waste) => container);

/** How a container stands on the shelf, and how much of it the plan will leave over. */
export function bottleSeen(plan: Plan, container: Container): BottleSeen {
  const { product, size, remaining, receivedOn, openedOn } = container;
  const ahead = aheadOf(plan.products, product);
  const waste = ahead && wasteIn(ahead.wastes, container);
  const last = lastUsableDay(container);
  return {
    litres: size / 1_000_000,
    left: remaining / size,
    wasted: (waste?.amount ?? 0) / size,
    opened: openedOn !== null,
    form: product.form,
    liquid: liquidOf(product),
    coming: receivedOn > plan.today,
    past: last !== null && last < plan.today,
    tag: last === null ? '?' : tagText(last, plan.today),
  };
}

/** "2 Jun", and in another year "Jun 2027": the weekday says nothing on a bottle. */
function tagText(day: Day, today: Day): string {
  const [, dayOfMonth, month, year] = showDayShort(day, today).split(' ');
  return year ? `${month} ${year}` : `${dayOfMonth} ${month}`;
}
