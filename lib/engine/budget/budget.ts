import { micros } from '@/shared/quantity/amounts';
import { civilNumber, civilOf } from '@/shared/time/civil';
import { addDays, type Day, dayFromNumber, dayNumber } from '@/shared/time/day';
import { projectionOf } from '../ahead/projection';
import type { Bench, Shop } from '../shop';
import type { BudgetLine } from './budget-line';
import { type GroupShare, overBenches, overGroups } from './over-benches';
import { type Placed, type PlacedByRow, placedBy } from './placed-lines';
import { type Booked, spentIn } from './spent';
import { toSpendIn } from './to-spend';

/** How many months back the budget looks, this one among them, and how many weeks ahead. */
const MONTHS_BACK = 12;
const WEEKS_AHEAD = 52;

/** What was spent in the year behind and what will be in the year ahead, as lines that everything else adds up. */
export type Budget = { shop: Shop; today: Day; from: Day; to: Day; lines: BudgetLine[] };

/**
 * The budget of a shop: this month and the eleven before it as they were, and 52 weeks from today as they are planned.
 *
 * Takes    the shop, every bottle that ever was with its movements, and today
 */
export function budgetOf(shop: Shop, booked: readonly Booked[], today: Day): Budget {
  const from = firstOfMonth(monthNumber(today) - MONTHS_BACK + 1);
  const to = addDays(today, 7 * WEEKS_AHEAD - 1);
  const pieces = [...spentIn(shop, booked, today), ...toSpendIn(projectionOf(shop, today, WEEKS_AHEAD))];
  const within = pieces.filter(({ on, side }) => on >= from && on <= (side === 'planned' ? to : today));
  return { shop, today, from, to, lines: within.flatMap(overBenches) };
}

/** What the lines may be put together by. */
export const BUDGET_KEYS = ['month', 'program', 'bench', 'product'] as const;
export type BudgetKey = (typeof BUDGET_KEYS)[number];

/** What belongs to no program, bench or product. */
export const NONE = '';

/** In which row a line stands. */
function rowOf({ on, program, bench, product }: BudgetLine, key: BudgetKey): string {
  if (key === 'month') return on.slice(0, 7);
  return (key === 'program' ? program : key === 'bench' ? bench?.id : product?.id) ?? NONE;
}

/**
 * The columns: what was really spent on product, on what was wasted and on work; what product and work of that were
 * planned to cost; and what is planned of all three from today on. Nobody plans to waste something, so what was wasted
 * stands beside no plan.
 */
export const BUDGET_COLUMNS = [
  'actual-product',
  'actual-waste',
  'actual-labour',
  'foreseen-product',
  'foreseen-labour',
  'planned-product',
  'planned-waste',
  'planned-labour',
] as const;
export type BudgetColumn = (typeof BUDGET_COLUMNS)[number];

/** The lines of one cell: a row or (null) all of them, and one column. */
export const linesIn = (budget: Budget, key: BudgetKey, row: string | null, column: BudgetColumn): BudgetLine[] =>
  placed(budget, key, row)?.columns.get(column) ?? [];

/** The lines that nobody knows the cost of, of a row or (null) of all. */
export const unknownIn = (budget: Budget, key: BudgetKey, row: string | null): BudgetLine[] =>
  placed(budget, key, row)?.unknown ?? [];

const places = new WeakMap<Budget, Map<BudgetKey, PlacedByRow>>();

/** The lines of a row or (null) of all, put there once for each key: a page asks for hundreds of cells. */
function placed(budget: Budget, key: BudgetKey, row: string | null): Placed | undefined {
  const byKey = places.get(budget) ?? new Map<BudgetKey, PlacedByRow>();
  places.set(budget, byKey);
  const its = byKey.get(key) ?? placedBy(budget.lines, (line) => rowOf(line, key));
  byKey.set(key, its);
  return row === null ? its.all : its.rows.get(row);
}

/** The rows of a budget: every month of it in order, or what has any cost, the dearest first. */
export function rowsBy(budget: Budget, key: BudgetKey): string[] {
  if (key === 'month') return monthsOf(budget);
  const weights = new Map<string, number>();
  for (const line of budget.lines) {
    const row = rowOf(line, key);
    weights.set(row, (weights.get(row) ?? 0) + (line.cost ?? 0));
  }
  return [...weights].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1)).map(([row]) => row);
}

function monthsOf({ from, to }: Budget): string[] {
  const [first, last] = [monthNumber(from), monthNumber(to)];
  return Array.from({ length: last - first + 1 }, (_, after) => firstOfMonth(first + after).slice(0, 7));
}

/** Months counted from the year 0. */
function monthNumber(day: Day): number {
  const { year, month } = civilOf(dayNumber(day));
  return 12 * year + month - 1;
}

const firstOfMonth = (number: number): Day =>
  dayFromNumber(civilNumber((number - (number % 12)) / 12, (number % 12) + 1, 1));

/** What a plant of each group of a bench costs in the year ahead, in product and waste without the work, or in work. */
export function perPlant(budget: Budget, bench: Bench, column: BudgetColumn): GroupShare[] | null {
  const lines = linesIn(budget, 'bench', bench.id, column);
  if (lines.some(({ cost }) => cost === null)) return null;
  const cost = lines.reduce((total, line) => total + (line.cost ?? 0), 0);
  return overGroups(bench, micros(Math.max(cost, 0)));
}
