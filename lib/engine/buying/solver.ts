/**
 * A general-purpose solver of linear and mixed-integer programs, as the search sees it. Whoever runs the search hands
 * one in: the search builds the model and reads the answer, and knows neither which solver it is nor where it runs.
 */
export type Solver = {
  /** A new program that is minimised, without columns and rows. */
  open(): Program;
  /** How long the search may still take, in seconds; nothing once somebody has stopped it. */
  secondsLeft(): number;
  /** Told now and then how far the search is. */
  told(progress: Progress): void;
};

/** The cost of the best plan found so far, and what no plan can be below; micros. */
export type Progress = { best: number; bound: number };

export type Program = {
  /** Add a row, lower ≤ Σ value × column ≤ upper, and give its number. */
  addRow(lower: number, upper: number, entries: readonly Entry[]): number;
  /** Add a column with its cost and bounds, and give its number. */
  addColumn(column: { cost: number; upper: number; entries: readonly Entry[] }): number;
  /** Solve it as it is, every column a real number from nothing up to its bound. */
  relaxed(): Relaxed | null;
  /** Solve it with columns that must be whole numbers. Takes a possible solution as its start. */
  whole(columns: readonly number[], start: readonly number[], seconds: number): Whole | null;
  close(): void;
};

/** The number of a row or a column, and the value there. */
export type Entry = readonly [at: number, value: number];

/** What each column comes to, and the price of each row. */
export type Relaxed = { objective: number; values: ArrayLike<number>; duals: ArrayLike<number> };

/** The best solution found, and what none can be below. */
export type Whole = { objective: number; values: ArrayLike<number>; bound: number };
