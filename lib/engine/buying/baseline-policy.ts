import { priceOfOne } from '@/shared/measure/price-break';
import { isCheaper } from '../ahead/cheapest-offer';
import type { Supplier } from '../shop';
import { comingFor } from './bought';
import type { Horizon } from './horizon';
import { type Need, placeAfter, toBuy } from './need';
import type { Market, Pack } from './pack';
import { openPack } from './pack-use';
import type { Bought } from './shortest-path';

/** One product to buy for: what is needed of it, and what it can be met with. */
export type Part = { need: Need } & Market;

/** Which of two packs somebody with a habit takes: negative for the first. */
export type BaselinePolicy = (a: Pack, b: Pack) => number;

/** Always the smallest pack; of two, the cheaper one. */
export const smallestPack: BaselinePolicy = (a, b) => a.size - b.size || (isCheaper(a.offer, b.offer) ? -1 : 1);

/** Always what is cheapest per mL or g when one pack is bought. */
export const cheapestPerMl: BaselinePolicy = (a, b) => (isCheaper(a.offer, b.offer) ? -1 : 1);

/** A product on the way through the horizon: what is covered, and what was bought for it so far. */
type Walker = { part: Part; covered: number; place: number; bought: Bought[] };

/**
 * What somebody would buy who always takes one pack, and orders it whenever the next need cannot be met: as late as it
 * still comes in time. Of the packs that come in time, that is: where none does, of all.
 *
 * What several products need from one supplier on one day is one order. An order below the supplier's minimum takes
 * more packs of its first product until it is large enough; they are used later.
 *
 * Gives    the packs of each product, in the order of the parts
 */
export function followPolicy(parts: readonly Part[], habit: BaselinePolicy, horizon: Horizon): Bought[][] {
  const walkers = parts.map((part): Walker => ({ part, covered: 0, place: 0, bought: [] }));
  for (;;) {
    const wants = walkers.flatMap((walker) => wantOf(walker, habit) ?? []);
    const orderOn = Math.min(...wants.map((want) => want.orderOn));
    const first = wants.find((want) => want.orderOn === orderOn);
    if (!first) return walkers.map(({ bought }) => bought);
    const { supplier } = first.pack.offer;
    const order = wants.filter((want) => want.orderOn === orderOn && want.pack.offer.supplier === supplier);
    const more = packsToMinimum(supplier, order);
    for (const want of order) take(want, want === first ? 1 + more : 1, horizon);
  }
}

type Want = { walker: Walker; pack: Pack; orderOn: number };

/** What a product needs next; null when all is met, or nothing meets it. */
function wantOf(walker: Walker, habit: BaselinePolicy): Want | null {
  const { need, packs } = walker.part;
  if (walker.covered >= toBuy(need)) return null;
  walker.place = placeAfter(need, walker.covered, walker.place);
  const inTime = packs.filter(({ ways }) => ways[walker.place]);
  // Nobody with a habit orders sooner because a price will rise.
  const orderOf = ({ ways }: Pack) => ways[walker.place]?.orderOn ?? 0;
  const isLatest = (one: Pack) =>
    !inTime.some((other) => other.offer.id === one.offer.id && orderOf(other) > orderOf(one));
  const [first, ...rest] = inTime.filter(isLatest);
  if (!first) return null;
  const pack = rest.reduce((best, one) => (habit(one, best) < 0 ? one : best), first);
  const orderOn = pack.ways[walker.place]?.orderOn;
  return orderOn === undefined ? null : { walker, pack, orderOn };
}

/** How many packs more of the first product it takes until an order is as large as its supplier asks. */
function packsToMinimum({ minimumOrder }: Supplier, [first, ...others]: readonly Want[]): number {
  if (!first || minimumOrder === null) return 0;
  const beside = others.reduce((total, { pack }) => total + pack.offer.price, 0);
  const goodsWith = (count: number) => beside + count * priceOfOne(first.pack.offer, count);
  let more = 0;
  while (goodsWith(1 + more) < minimumOrder && more < MOST_MORE) more += 1;
  return more;
}

/** Goods that cost next to nothing reach no minimum. */
const MOST_MORE = 10_000;

function take({ walker, pack, orderOn }: Want, count: number, horizon: Horizon): void {
  const { need } = walker.part;
  for (let taken = 0; taken < count; taken++) {
    walker.bought.push({ pack, orderOn });
    if (walker.covered >= toBuy(need)) continue;
    walker.place = placeAfter(need, walker.covered, walker.place);
    const { covered, place } = walker;
    const coming = comingFor(need, horizon, { pack, orderOn }, place);
    if (typeof coming !== 'string') walker.covered = openPack(need, horizon, pack, { ...coming, covered, place }).to;
  }
}
