import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type PurchasePlan, purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { buyingWorking } from '@/lib/engine/working/buying-figures';
import { HABITS, habitWay } from '@/lib/engine/working/buying-way';
import { explainedIn } from '@/lib/engine/working/buying-why-figures';
import { type FoundWorking, readAddress } from '@/lib/engine/working/shown';
import { AT_ONCE } from '@/lib/solver/at-once';
import { TODAY } from '../buying/any-market';
import { anyShop } from '../buying/any-shop';

const figure = (plan: PurchasePlan, ...path: string[]): FoundWorking => {
  const found = buyingWorking(plan, path);
  if (!found) throw new Error(`nothing opens under ${path.join('/')}`);
  return found;
};

const money = ({ value }: Pick<FoundWorking, 'value'>): number => (value.kind === 'money' ? value.micros : 0);
const amount = ({ value }: Pick<FoundWorking, 'value'>): number => (value.kind === 'stock' ? value.amount : 0);
const total = (amounts: number[]): number => amounts.reduce((sum, one) => sum + one, 0);

const anyPlan = fc.nat(100_000).map((seed) => purchasePlanOf(anyShop(seed), TODAY, 26, AT_ONCE));
const RUNS = { numRuns: 25 };

test('a habit bought again for its workings comes to what the plan says of it, and the plan to no more', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      for (const habit of HABITS) {
        const { cost, orders } = habitWay(plan, habit);
        expect(cost.total).toBe(plan.habits[habit]);
        expect(cost.packs).toBe(total(orders.map(({ goods }) => goods)));
        expect(money(figure(plan, 'habit', habit, 'more'))).toBe(plan.habits[habit] - plan.cost.total);
        expect(plan.habits[habit]).toBeGreaterThanOrEqual(plan.cost.total);
      }
    }),
    RUNS,
  );
});

test('what could be saved is the plan less its bound, and the bound is what its steps add up to', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const [bound, saved] = [figure(plan, 'bound'), figure(plan, 'saved')];
      expect(money(saved)).toBe(plan.proven ? 0 : plan.cost.total - money(bound));
      expect(money(saved)).toBeGreaterThanOrEqual(0);
      expect(money(bound)).toBeLessThanOrEqual(plan.cost.total);
      expect(total(bound.steps.map(money))).toBe(money(bound));
    }),
    RUNS,
  );
});

test('every step that is a figure opens to the same value, of the plan and of its habits', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const seen = new Set<string>();
      const look = (found: FoundWorking): void => {
        for (const { figure: at, value } of found.steps) {
          const [subject, weeks, ...path] = readAddress(at ?? '') ?? [];
          if (at === null || subject !== 'buying' || seen.has(at)) continue;
          seen.add(at);
          const inner = figure(plan, ...path);
          expect([at, weeks, inner.value]).toEqual([at, '26', value]);
          look(inner);
        }
      };
      for (const path of [['total'], ['habit', 'smallestPack'], ['habit', 'cheapestPerMl'], ['saved']]) {
        look(figure(plan, ...path));
      }
    }),
    RUNS,
  );
});

test('what would die of another pack is what it holds less what is used of it, as a part of what it holds', () => {
  let told = 0;
  fc.assert(
    fc.property(anyPlan, (plan) => {
      plan.orders.forEach((order, number) => {
        order.lines.forEach((line, at) => {
          const { reasons = [] } = explainedIn(plan).find((one) => one.order === order && one.line === line) ?? {};
          reasons.forEach((reason, place) => {
            if (reason.kind !== 'other dies' && reason.kind !== 'other is too much') return;
            const { value, steps } = figure(plan, 'order', `${number}`, 'line', `${at}`, 'why', `${place}`);
            const [holds = 0, ...rest] = steps.filter((step) => step.value.kind === 'stock').map(amount);
            const left = rest.at(-1) ?? 0;
            expect(holds - total(rest.slice(0, -1))).toBe(left);
            const part = value.kind === 'ratio' ? value.value / 100 : Number.NaN;
            // What is used after these weeks is rounded to a µL where it is told.
            expect(Math.abs(part * holds - left)).toBeLessThanOrEqual(1);
            told += 1;
          });
        });
      });
    }),
    { numRuns: 40 },
  );
  expect(told).toBeGreaterThan(5);
});

test('what a product bought comes to is told pack by pack, and what an order holds is told by what becomes of it', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      for (const { part, purchase } of plan.parts) {
        for (const what of ['capital', 'left', 'ofWhichWaste'] as const) {
          const { steps, ...found } = figure(plan, 'part', part.need.product.id, what);
          expect(total(steps.map(money))).toBe(money(found));
        }
        expect(
          figure(plan, 'part', part.need.product.id, 'left').steps.filter(({ value }) => value.kind === 'money'),
        ).toHaveLength(purchase.packs.length);
      }
      plan.orders.forEach((order, number) => {
        order.lines.forEach((line, at) => {
          const { steps } = figure(plan, 'order', `${number}`, 'line', `${at}`);
          expect(steps.filter(({ label }) => label.startsWith('Used of'))).toHaveLength(line.count);
        });
      });
      expect(buyingWorking(plan, ['part', 'nobody', 'left'])).toBeNull();
      expect(buyingWorking(plan, ['order', '99999', 'goods'])).toBeNull();
    }),
    RUNS,
  );
});
