import type { BudgetLine, BudgetSum } from './budget-line';
import { budgetSum } from './budget-line';

/** Lines by where they stand, in the order they came in. */
export type Placed = { columns: Map<string, BudgetLine[]>; unknown: BudgetLine[] };

/** The lines of every row, and of all rows together. */
export type PlacedByRow = { rows: Map<string, Placed>; all: Placed };

/** Lines put where they stand in one pass. */
export function placedBy(lines: readonly BudgetLine[], rowOf: (line: BudgetLine) => string): PlacedByRow {
  const found: PlacedByRow = { rows: new Map(), all: nothing() };
  for (const line of lines) {
    const row = rowOf(line);
    const its = found.rows.get(row) ?? nothing();
    found.rows.set(row, its);
    put(its, line);
    put(found.all, line);
  }
  return found;
}

const nothing = (): Placed => ({ columns: new Map(), unknown: [] });

function put({ columns, unknown }: Placed, line: BudgetLine): void {
  const column = `${line.side}-${line.kind}`;
  const others = columns.get(column);
  if (others) others.push(line);
  else columns.set(column, [line]);
  if (line.cost === null) unknown.push(line);
}

const sums = new WeakMap<readonly BudgetLine[], BudgetSum>();

/** The sum of lines that stay as they are, added up once. */
export function sumOnce(lines: readonly BudgetLine[]): BudgetSum {
  const sum = sums.get(lines) ?? budgetSum(lines);
  sums.set(lines, sum);
  return sum;
}
