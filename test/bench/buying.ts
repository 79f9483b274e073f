import {
  type BaselinePolicy,
  cheapestPerMl,
  followPolicy,
  type Part,
  smallestPack,
} from '@/lib/engine/buying/baseline-policy';
import { purchaseOf } from '@/lib/engine/buying/bought';
import { ordersOf, totalOf } from '@/lib/engine/buying/orders';
import { plannedParts } from '@/lib/engine/buying/planned-parts';
import { shortestPath } from '@/lib/engine/buying/shortest-path';
import type { Supplier } from '@/lib/engine/shop';
import { highsSolver } from '@/lib/solver/highs';
import { micros } from '@/shared/quantity/amounts';
import { type AnyMarket, largeMarket } from '../lib/engine/buying/any-market';
import { inMs, timed } from './timing';

/*
 * How long it takes to choose what to buy: one product by the exact path and by the solver, on the same needs in one run,
 * and several products that share their suppliers' freight, with the proven gap. It reports; it never fails on a time.
 */

const SECONDS = 10;
const GROWTH = [1, 10, 50, 100, 200];

/** Report all of it. */
export async function reportOnBuying(): Promise<void> {
  console.log('\nWhat to buy over 52 weeks, five pack sizes of each product, one run each:');
  console.log('  products   exact path           solver, freight of 0.01   largest difference of a total');
  for (const products of GROWTH) await compareExact(products);
  console.log(`\n  with freight, at most ${SECONDS} s each:`);
  for (const [products, suppliers] of [
    [1, 1],
    [10, 2],
    [50, 10],
    [100, 20],
    [200, 40],
  ] as const) {
    await reportOnJoint(`${products} products, ${suppliers} suppliers`, largeMarket(7, { products, suppliers }));
  }
  const twice = largeMarket(7, { products: 50, suppliers: 10, offeredBy: 2 });
  await reportOnJoint('50 products, 10 suppliers, each product from two', twice);
  for (const [products, suppliers] of [
    [10, 2],
    [50, 10],
  ] as const) {
    const rich = largeMarket(7, { products, suppliers, rich: true });
    await reportOnJoint(`${products}, ${suppliers}, with free freight, minimum orders, quantity breaks`, rich);
  }
}

const watch = (seconds: number) => {
  const started = performance.now();
  return { secondsLeft: () => seconds - (performance.now() - started) / 1_000, told: () => {} };
};

/** The same needs by both ways. A cent of freight makes an order cost something, so that the solver is asked at all. */
async function compareExact(products: number): Promise<void> {
  const { horizon, parts } = withFreight(largeMarket(7, { products, suppliers: 1 }), 0);
  const exact = timed(() => parts.map(({ need, packs }) => shortestPath(need, packs, horizon)), 3, 1);
  const totals = parts.map(({ need, packs }) => shortestPath(need, packs, horizon)?.total ?? 0);
  const started = performance.now();
  let largest = 0;
  for (const [at, part] of parts.entries()) {
    const dear = withFreight({ horizon, parts: [part] }, 10_000);
    const { purchases } = plannedParts(dear.parts, horizon, await highsSolver(watch(SECONDS)));
    const cost = purchases.reduce((sum, one) => sum + one.goods + one.capital - one.left, 0);
    largest = Math.max(largest, Math.abs(cost - (totals[at] ?? 0)) / 1e6);
  }
  const took = performance.now() - started;
  const [a, b] = [inMs(exact).padEnd(20), `${took.toFixed(0)} ms`.padEnd(25)];
  console.log(`  ${String(products).padStart(8)}   ${a} ${b} ${largest.toFixed(6)}`);
}

/** The same market with one freight for every order. */
function withFreight({ horizon, parts }: AnyMarket, freight: number): AnyMarket {
  const sellers = new Map<Supplier, Supplier>();
  const sellerLike = (seller: Supplier): Supplier => {
    const known = sellers.get(seller) ?? { ...seller, freightPerOrder: micros(freight) };
    sellers.set(seller, known);
    return known;
  };
  const changed = parts.map(
    (part): Part => ({
      ...part,
      packs: part.packs.map((pack) => ({
        ...pack,
        offer: { ...pack.offer, supplier: sellerLike(pack.offer.supplier) },
      })),
    }),
  );
  return { horizon, parts: changed };
}

async function reportOnJoint(name: string, { horizon, parts }: AnyMarket): Promise<void> {
  const solver = await highsSolver(watch(SECONDS));
  const [started, cpu] = [performance.now(), process.cpuUsage()];
  const { purchases, bound, isCertain } = plannedParts(parts, horizon, solver);
  const [took, used] = [performance.now() - started, process.cpuUsage(cpu).user / 1e6];
  const total = totalOf(purchases, ordersOf(purchases));
  const byHabits = [smallestPack, cheapestPerMl].map((habit: BaselinePolicy) => {
    const bought = followPolicy(parts, habit, horizon).map((one, at) =>
      purchaseOf(parts[at]?.need ?? never(), horizon, one),
    );
    return (totalOf(bought, ordersOf(bought)) / 1e6).toFixed(0);
  });
  const gap = ((100 * (total - bound)) / total).toFixed(3);
  console.log(
    `  ${name.padEnd(60)} ${(took / 1_000).toFixed(1)} s (${used.toFixed(1)} s of the processor), ${(total / 1e6).toFixed(2)}, at most ${gap} % from the best${isCertain ? '' : ' (each order used up before the next)'}; habits ${byHabits.join(' and ')}`,
  );
}

function never(): never {
  throw new RangeError('a part for each purchase');
}
