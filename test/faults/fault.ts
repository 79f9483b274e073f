/** Where a fault is planted: the text must stand there once. `formula` is what it breaks, in the words of the trade. */
export type Fault = { formula: string; file: string; find: string; put: string };

type Row = [formula: string, find: string, put: string];

/** Faults of one file. */
export const inFile = (file: string, ...rows: Row[]): Fault[] =>
  rows.map(([formula, find, put]) => ({ formula, file, find, put }));
