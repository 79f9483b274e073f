import type { Spraying } from '@/lib/engine/ahead/plan';
import { sprayingsBetween } from '@/lib/engine/ahead/sprayings';
import type { Shop } from '@/lib/engine/shop';
import { addDays, Day, daysBetween } from '@/shared/time/day';

export const TODAY = Day.parse('2026-03-02');

/** What each product is needed for in each week, µL or mg, one row of weeks per product. */
export function demandTable(shop: Shop, weeks: number): Float64Array {
  return tabled(shop, weeks, sprayingsBetween(shop, TODAY, addDays(TODAY, 7 * weeks - 1)));
}

function tabled(shop: Shop, weeks: number, sprayings: Spraying[]): Float64Array {
  const row = new Map(shop.products.map((product, index) => [product, index * weeks]));
  const table = new Float64Array(shop.products.length * weeks);
  for (const { date, lines } of sprayings) {
    const week = Math.floor(daysBetween(TODAY, date) / 7);
    for (const { ingredient, amount } of lines) {
      const cell = (row.get(ingredient.product) ?? 0) + week;
      table[cell] = (table[cell] ?? 0) + (amount ?? 0);
    }
  }
  return table;
}

/**
 * The least that any program must do for the same table: the amounts are known and lie in typed arrays, and a loop adds
 * them up. It is the floor to measure against, not a way to run a shop.
 */
export function straightLoop(shop: Shop, weeks: number): () => Float64Array {
  const sprayings = sprayingsBetween(shop, TODAY, addDays(TODAY, 7 * weeks - 1));
  const row = new Map(shop.products.map((product, index) => [product, index * weeks]));
  const lines = sprayings.flatMap(({ date, lines }) =>
    lines.map(({ ingredient, amount }) => ({
      cell: (row.get(ingredient.product) ?? 0) + Math.floor(daysBetween(TODAY, date) / 7),
      amount: amount ?? 0,
    })),
  );
  const [cells, amounts] = [
    Uint32Array.from(lines, ({ cell }) => cell),
    Float64Array.from(lines, ({ amount }) => amount),
  ];
  return () => {
    const table = new Float64Array(shop.products.length * weeks);
    for (let line = 0; line < cells.length; line += 1) {
      const cell = cells[line] ?? 0;
      table[cell] = (table[cell] ?? 0) + (amounts[line] ?? 0);
    }
    return table;
  };
}
