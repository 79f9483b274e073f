import type { Day } from '@/shared/time/day';
import type { ToEnter } from '../rules/to-enter';
import type { Bench, Product } from '../shop';

/** What money went for, or will go for. */
type BudgetKind = 'product' | 'waste' | 'labour';

/**
 * One piece of cost: of one product or of work, on one day, on one bench. Every figure of the budget is the sum of such
 * lines and of nothing else.
 */
export type BudgetLine = {
  /** What really happened; what was planned for that; or what is planned from today on. */
  side: 'actual' | 'foreseen' | 'planned';
  kind: BudgetKind;
  on: Day;
  /** Whole micros; below zero where something was taken back. Null when it is not known. */
  cost: number | null;
  /** What it is, in words. */
  what: string;
  /** Before it was split over benches, one piece: lines of one piece are one unknown. */
  piece: string;
  product: Product | null;
  /** Of what is not known: what to enter before it is. Left out where nothing can be entered any more. */
  toEnter?: readonly ToEnter[];
  /** The program that it belongs to. */
  program: string | null;
  bench: Bench | null;
};

/** A piece of cost that is not split over benches yet. */
export type Piece = Omit<BudgetLine, 'bench'> & { benches: readonly Bench[] };

/** The sum of some lines: what is known of it, and how many pieces are not. Null: there are some, and none is known. */
export type BudgetSum = { cost: number | null; unknown: number; lines: number };

/** Lines added up. Units: whole micros. */
export function budgetSum(lines: readonly BudgetLine[]): BudgetSum {
  const known = lines.flatMap(({ cost }) => (cost === null ? [] : [cost]));
  const unknown = new Set(lines.filter(({ cost }) => cost === null).map(({ piece }) => piece)).size;
  const cost = lines.length > 0 && known.length === 0 ? null : known.reduce((total, one) => total + one, 0);
  return { cost, unknown, lines: lines.length };
}
