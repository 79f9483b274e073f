/** What a run took, over several runs: the median is the one to quote, the spread says how far to trust it. */
export type Timing = { median: number; least: number; most: number };

/**
 * Time some work in this process, after a warm-up.
 *
 * Takes  the work, how many counted runs, and how many before them
 * Units  milliseconds of wall time
 */
export function timed(work: () => unknown, runs = 15, warmUp = 5): Timing {
  for (let run = 0; run < warmUp; run += 1) work();
  const took = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return spread(took);
}

/** The median and the spread of what some runs took, milliseconds. */
export function spread(took: readonly number[]): Timing {
  const sorted = took.toSorted((a, b) => a - b);
  const at = (place: number) => sorted[place] ?? Number.NaN;
  return { median: at((took.length - 1) >> 1), least: at(0), most: at(took.length - 1) };
}

/** A timing in one line. */
export const inMs = ({ median, least, most }: Timing): string =>
  `${median.toFixed(2).padStart(10)} ms   (${least.toFixed(2)} to ${most.toFixed(2)})`;
