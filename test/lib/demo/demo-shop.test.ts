import { describe, expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import type { RuleName } from '@/lib/engine/rules/flag';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import { addDays, type Day, daysBetween, readDay, weekdayOf } from '@/shared/time/day';
import { readInstant } from '@/shared/time/instant';
import { atClock, dayOf, readZone } from '@/shared/time/zone';
import { runs } from '@/test/runs';

/** Every day of thirteen months in stretches of four weeks, a leap day among them. */
const STRETCHES = Array.from({ length: 14 }, (_, after) => addDays(day('2027-03-07'), 28 * after));
/** Seven days in a row somewhere in the year, one for each weekday. */
const EVERY_WEEKDAY = ['2026-03-02', '2026-10-26', '2027-02-22', '2028-02-24'].flatMap((first) =>
  Array.from({ length: 7 }, (_, after) => addDays(day(first), after)),
);

function day(text: string): Day {
  const reading = readDay(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}

function loaded(today: Day) {
  const parsed = parseShopFile(JSON.stringify(demoShop(today)));
  if (!parsed.ok) throw new Error(`${today}: ${JSON.stringify(parsed.faults)}`);
  return parsed.file;
}

test.each(STRETCHES)('the demo is a shop file without faults in the four weeks from %s', (first) => {
  // Of these days every third in an ordinary run, in a long one all.
  for (let after = 0; after < 28; after += runs(3, 1)) loaded(addDays(first, after));
});

test.each(EVERY_WEEKDAY)('it reads back as it was written on %s', (today) => {
  expect(loaded(today)).toEqual(demoShop(today));
});

test('the same day gives the same shop', () => {
  const today = day('2026-11-25');
  expect(JSON.stringify(demoShop(today))).toBe(JSON.stringify(demoShop(today)));
});

test('it has eight benches, two with customers, eighteen products, five recipes and six programs', () => {
  const { benches, products, recipes, programs, suppliers, applications } = demoShop(day('2026-11-25'));
  expect(benches.map(({ customers }) => customers)).toEqual([true, true, ...Array.from({ length: 6 }, () => false)]);
  expect([products, recipes, programs, suppliers].map(({ length }) => length)).toEqual([18, 5, 6, 3]);
  expect(programs.filter((program) => program.recipes.length > 1)).toHaveLength(1);
  expect(applications.length).toBeGreaterThan(100);
});

test('its history is one year long, in order, and ends before the day it is loaded', () => {
  const zone = readZone('America/New_York');
  if (!zone.ok) throw new Error(zone.message);
  for (const today of EVERY_WEEKDAY) {
    const starts = demoShop(today).applications.map(({ startedAt }) => {
      const instant = readInstant(startedAt);
      if (!instant.ok) throw new Error(instant.message);
      return instant.value;
    });
    expect(starts).toEqual(starts.toSorted((a, b) => a - b));
    const [first, last] = [starts[0], starts.at(-1)];
    expect(first && daysBetween(dayOf(zone.value, first), today)).toBe(364);
    expect(last && daysBetween(dayOf(zone.value, last), today)).toBe(1);
  }
});

const SHOWN: RuleName[] = [
  'bench-closed',
  'closed-in-opening-hours',
  'dose-outside-label',
  'lot-expired',
  'mixed-too-long',
  'mode-repeated',
  'must-not-mix',
  'oil-near-sulfur',
  'phi-reaches-harvest',
  'rei-unknown',
  'short',
  'too-hot',
  'too-many-applications',
  'too-soon',
  'unknown-cost',
  'unknown-expiry',
];

describe.each(EVERY_WEEKDAY.map((today) => ({ today, weekday: weekdayOf(today) })))(
  'loaded on $weekday $today',
  ({ today }) => {
    const shop = shopOfFile(loaded(today));
    const plan = planAhead(shop, today, 26);

    test('every kind of flag is in the plan, and the dose is outside the label in both directions', () => {
      const rules = new Set(plan.flags.map(({ rule }) => rule));
      expect(SHOWN.filter((rule) => !rules.has(rule))).toEqual([]);
      const doses = plan.flags.filter(({ rule }) => rule === 'dose-outside-label').map(({ severity }) => severity);
      expect([...new Set(doses)].toSorted()).toEqual(['stop', 'warn']);
    });

    test('only the old card breaks a label every time: what else stops is a clash of dates or an empty bottle', () => {
      const elsewhere = plan.flags.filter(({ severity, program }) => severity === 'stop' && program !== 'yard-monthly');
      const rules = new Set(elsewhere.map(({ rule }) => rule));
      expect([...rules].toSorted()).toEqual([
        'bench-closed',
        'phi-reaches-harvest',
        'short',
        'too-many-applications',
        'too-soon',
      ]);
      expect(elsewhere.filter(({ rule }) => rule !== 'short').length).toBeLessThanOrEqual(11);
      const beforeHarvest = elsewhere.filter(({ rule }) => rule === 'phi-reaches-harvest');
      expect(beforeHarvest).toMatchObject([{ benches: ['herb-trays'], product: 'spinosad-half' }]);
    });

    test('two programs fall due today, and more in the seven days', () => {
      const due = plan.sprayings.filter(({ date }) => date === today).map(({ program }) => program.id);
      // The yard may join them: where the day after tomorrow is missing from some months, it is due on the 28th.
      expect(due.filter((program) => program !== 'yard-monthly')).toEqual(['citrus-round', 'weekly-feed']);
      const week = plan.sprayings.filter(({ date }) => daysBetween(today, date) < 7);
      expect(week.length).toBeGreaterThanOrEqual(3);
    });

    test('a batch costs dollars and a plant cents', () => {
      for (const { recipe, materialCost, plants } of plan.sprayings) {
        if (recipe.id === 'yard-wash') expect(materialCost).toBeNull();
        else if (materialCost === null) throw new Error(`${recipe.id} has no cost`);
        else {
          expect(materialCost).toBeGreaterThan(400_000);
          expect(materialCost).toBeLessThan(8_000_000);
          expect(materialCost / plants).toBeLessThan(50_000);
        }
      }
    });

    test('one product is late, one is due this week, several within twelve weeks, and some never', () => {
      const weeks = plan.products.map(({ reorder }) => reorder?.weeks ?? null);
      expect(weeks.filter((left) => left !== null && left < 0)).toHaveLength(1);
      expect(weeks.filter((left) => left === 0)).toHaveLength(1);
      expect(weeks.filter((left) => left !== null && left >= 2 && left <= 12).length).toBeGreaterThanOrEqual(3);
      expect(weeks.filter((left) => left === null).length).toBeGreaterThanOrEqual(5);
    });

    test('tens of dollars are about to be wasted: a bottle past its day, and opened ones that die half full', () => {
      const { wasteCost } = plan.totals;
      expect(wasteCost).toBeGreaterThan(20_000_000);
      expect(wasteCost).toBeLessThan(100_000_000);
      const wastes = plan.products.flatMap((ahead) => ahead.wastes.map(({ container, on }) => [container.lot, on]));
      expect(wastes).toContainEqual(['calcium-a', today]);
      expect(wastes).toContainEqual(['neem-a', addDays(today, 29)]);
    });

    test('during the day two benches are closed after yesterday, the yard is unknown, and the rest are open', () => {
      const states = keepOut(shop, atClock(shop.zone, today, 12 * 60)).map(
        ({ bench, state }) => `${bench.id} ${state}`,
      );
      expect(states.filter((state) => !state.endsWith('open'))).toEqual([
        'herb-trays closed',
        'propagation-tent closed',
        'yard unknown',
      ]);
    });
  },
);
