import type { Part } from '@/lib/engine/buying/baseline-policy';
import { type Horizon, horizonOf } from '@/lib/engine/buying/horizon';
import { needOf } from '@/lib/engine/buying/need';
import { marketFor } from '@/lib/engine/buying/pack';
import type { Offer, Product, Supplier } from '@/lib/engine/shop';
import { micros, stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { Day, WEEKDAYS } from '@/shared/time/day';

/** A Monday. */
export const TODAY = Day.parse('2026-03-02');

/** A repeatable stream of whole numbers below a bound. */
export function pickerFrom(seed: number): (below: number) => number {
  let state = (seed * 48271 + 11) % 2147483647 || 1;
  return (below) => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
}

export const supplierOf = (id: string, more: Partial<Supplier> = {}): Supplier => ({
  id,
  name: id,
  freightPerOrder: micros(0),
  freeFreightOver: null,
  minimumOrder: null,
  workingDays: { weekdays: new Set(WEEKDAYS.slice(0, 5)), closed: new Set() },
  closedOn: [],
  archived: false,
  ...more,
});

export const productOf = (id: string, unopenedDays: number | null, openedDays: number | null): Product => ({
  id,
  name: id,
  kind: 'nutrient',
  form: 'liquid',
  formulation: null,
  densityGPerMl: null,
  gramsPerTeaspoon: null,
  contents: [],
  label: {
    ...{ rates: [], rei: null, phiDays: null, maxApplicationsPerYear: null, minDaysBetween: null, modes: [] },
    ...{ signalWord: null, protectiveEquipment: [], sprayPh: null, doNotMixWith: [], registration: null },
    ...{ hotAboveC: null, firstAid: null, storage: null },
  },
  shelfLife: { unopenedDays, openedDays },
  mixOrder: null,
  alkaliSilicate: false,
  madeFrom: [],
  gtins: [],
  archived: false,
});

export type AnOffer = { size: number; price: number; leadDays?: number | null; breaks?: [number, number][] };

/** Sizes in µL, prices in micros. */
export const offerOf = (
  id: string,
  supplier: Supplier,
  product: Product,
  { size, price, leadDays = 2, breaks = [] }: AnOffer,
): Offer => ({
  id,
  supplier,
  product,
  packText: `${size} µL`,
  pack: exact(BigInt(size)),
  price: micros(price),
  breaks: breaks.map(([atLeast, each]) => ({ atLeast, price: micros(each) })),
  leadDays,
  since: null,
  earlier: [],
  later: [],
  notYet: false,
  putAway: false,
  archived: false,
});

/** What is asked of a product, as days from today and µL, none of it on the shelf. */
export function partOf(
  product: Product,
  offers: Offer[],
  demands: [day: number, amount: number][],
  horizon: Horizon,
): Part {
  const asked = demands.map(([day, amount]) => ({
    day: horizon.start + day,
    amount: stock(amount),
    short: stock(amount),
  }));
  const need = needOf(product, asked, horizon);
  return { need, ...marketFor(need, offers, horizon) };
}

export type AnyMarket = { horizon: Horizon; parts: Part[] };

/** How a market is made up: what its orders cost, and how large it is. */
export type MarketKind = Record<'parts' | 'demands' | 'leastSize' | 'leastPrice', number> &
  Record<'freight' | 'free' | 'minimum' | 'breaks', boolean>;

/** A market small enough to try everything in it. */
export function smallMarket(seed: number, kind: MarketKind): AnyMarket {
  const pick = pickerFrom(seed);
  const horizon = horizonOf({ safetyDays: pick(4), capitalPerYear: [0, 0.1, 0.5][pick(3)] ?? 0 }, TODAY, 2 + pick(4));
  const suppliers = Array.from({ length: 1 + pick(2) }, (_, index) =>
    supplierOf(`s${index}`, {
      freightPerOrder: kind.freight ? micros(pick(20) * 1_000_000) : null,
      freeFreightOver: kind.free && pick(2) ? micros((20 + pick(60)) * 1_000_000) : null,
      minimumOrder: kind.minimum && pick(2) ? micros((5 + pick(40)) * 1_000_000) : null,
      workingDays: { weekdays: new Set(WEEKDAYS.filter((_, day) => day === 0 || pick(3))), closed: new Set() },
    }),
  );
  const parts = Array.from({ length: kind.parts }, (_, index) => {
    const product = productOf(`p${index}`, pick(2) ? null : 20 + pick(300), pick(3) ? 3 + pick(40) : null);
    const offers = Array.from({ length: 1 + pick(2) }, (__, at) => {
      const [size, price] = [kind.leastSize + pick(250), kind.leastPrice + pick(30_000_000)];
      const breaks: [number, number][] = kind.breaks && pick(2) ? [[2 + pick(2), Math.round(price * 0.8)]] : [];
      const supplier = suppliers[pick(suppliers.length)] ?? supplierOf('s0');
      return offerOf(`o${index}-${at}`, supplier, product, { size, price, leadDays: pick(5), breaks });
    });
    const demands = Array.from({ length: 1 + pick(kind.demands) }, (): [number, number] => [
      pick(horizon.days),
      10 + pick(90),
    ]);
    return partOf(
      product,
      offers,
      demands.sort(([a], [b]) => a - b),
      horizon,
    );
  });
  return { horizon, parts };
}

/** A year of a whole shop: every product weekly, in five sizes, from suppliers who all ask for freight. */
export function largeMarket(
  seed: number,
  {
    products,
    suppliers,
    offeredBy = 1,
    rich = false,
  }: { products: number; suppliers: number; offeredBy?: number; rich?: boolean },
): AnyMarket {
  const pick = pickerFrom(seed);
  const weeks = 52;
  const horizon = horizonOf({ safetyDays: 3, capitalPerYear: 0.1 }, TODAY, weeks);
  const from = Array.from({ length: suppliers }, (_, id) =>
    supplierOf(`s${id}`, {
      freightPerOrder: micros((8 + pick(10)) * 1e6),
      freeFreightOver: rich && pick(2) ? micros(150e6) : null,
      minimumOrder: rich && pick(2) ? micros(40e6) : null,
    }),
  );
  const parts = Array.from({ length: products }, (_, id) => {
    const product = productOf(`p${id}`, 730, [56, 90, 120, 180, 364][pick(5)] ?? 90);
    const [weekly, weekday, base] = [(30 + pick(300)) * 1000 + pick(1000), pick(7), 15 + pick(60)];
    const demands = Array.from({ length: weeks - 1 }, (__, week): [number, number] => [
      (week + 1) * 7 + weekday,
      Math.round(weekly * (0.7 + pick(60) / 100)),
    ]).filter(() => pick(8) > 0);
    const offers = Array.from({ length: offeredBy }, (__, turn) =>
      [236_588, 473_176, 946_353, 3_785_412, 9_463_529].map((size, at) => {
        const price = Math.round(base * 1e6 * (size / 1e6) ** 0.75 * (0.9 + pick(20) / 100));
        const breaks: [number, number][] = rich && pick(3) === 0 ? [[3, Math.round(price * 0.9)]] : [];
        const supplier = from[(id + turn * 3) % suppliers] ?? supplierOf('s0');
        return offerOf(`o${id}-${turn}-${at}`, supplier, product, {
          size,
          price,
          leadDays: 2 + ((id + turn) % 3),
          breaks,
        });
      }),
    ).flat();
    return partOf(product, offers, demands, horizon);
  });
  return { horizon, parts };
}
