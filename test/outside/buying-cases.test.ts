import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { highsSolver } from '@/lib/solver/highs';
import { Day } from '@/shared/time/day';
import { parsedOrThrow } from '@/test/lib/data/any-shop-file';

/*
 * Small shops whose least cost was found by an independent program: an arc-flow mixed-integer model written from the
 * definitions of the shop file alone, with an exact replay, itself checked by enumerating 327,000 plans.
 * Source: that program's answers; none of its code is here.
 */

const MICROS = 1_000_000;

/** The cases that are proven take a tenth of this. */
const MOST_SECONDS = 8;

async function planOf(name: string) {
  const { weeks, optimum, shop } = JSON.parse(
    readFileSync(join(import.meta.dirname, `buying-cases/${name}.json`), 'utf8'),
  );
  const began = performance.now();
  const secondsLeft = () => MOST_SECONDS - (performance.now() - began) / 1_000;
  const solver = await highsSolver({ secondsLeft, told: () => {} });
  const plan = purchasePlanOf(shopOfFile(parsedOrThrow(shop)), Day.parse('2026-03-02'), weeks, solver);
  return { plan, optimum: Number(optimum) * MICROS };
}

test.each(['minimum-met-by-one', 'minimum-met-by-two', 'longer-lead-of-a-filler', 'turn-of-opening'])(
  '%s: the plan costs the least, and says that it is proven',
  async (name) => {
    const { plan, optimum } = await planOf(name);
    expect(Math.abs(plan.cost.total - optimum)).toBeLessThan(10);
    expect(plan.proven).toBe(true);
  },
);

test.each(['breaks-of-two-suppliers', 'four-small-packs', 'three-packs-together'])(
  '%s: a plan that costs more is not called proven, and its bound is not above the least',
  async (name) => {
    const { plan, optimum } = await planOf(name);
    expect(plan.bound).toBeLessThanOrEqual(optimum + 10);
    if (plan.cost.total > optimum + 10) expect(plan.proven).toBe(false);
  },
);
