/** Acid in one unit, whichever: what the estimate said a pH takes, and what it really took. */
export type Reading = { estimated: number; used: number };

export type LearnedCorrection = {
  /** What an estimate of acid is multiplied by, within the bounds. */
  factor: number;
  /** The median itself, which may lie outside them. */
  median: number;
  readings: number;
  /** Whether the readings ask for more than a correction may give. The water is then another than the shop believes. */
  beyondBounds: boolean;
};

/** A correction covers a kit that reads in steps, a dropper, a pen. What is further off than this is not an error of these. */
export const LEAST_FACTOR = 0.7;
export const MOST_FACTOR = 1.4;

/** One reading may be a slip, and then nothing contradicts it. */
const FEWEST_READINGS = 2;

/**
 * What the shop's own readings say about its estimates of acid.
 *
 *   factor = median of (acid really used ÷ acid estimated), but no less than 0.7 and no more than 1.4
 *
 * The median, so that a single slip of the pen moves it little. Beyond the bounds nothing is corrected further: the
 * alkalinity of the water is to be measured again. A factor is shown beside the estimate with how many readings it rests
 * on, and used only where somebody says so.
 *
 * Takes    one reading for each mix of which somebody noted how much acid went in and the pH that it gave, as `readingOf`
 *          in acid-doses.ts makes it; those without acid on either side say nothing and are passed over
 * Gives    null with fewer than two readings
 */
export function learnedCorrection(readings: readonly Reading[]): LearnedCorrection | null {
  const ratios = readings
    .map(({ estimated, used }) => used / estimated)
    .filter((ratio) => ratio > 0 && ratio < Infinity);
  if (ratios.length < FEWEST_READINGS) return null;
  const median = medianOf(ratios);
  const factor = Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, median));
  return { factor, median, readings: ratios.length, beyondBounds: factor !== median };
}

/** The middle one, or half way between the middle two: whatever is left once the ends were taken off in pairs. */
function medianOf(numbers: readonly number[]): number {
  let middle = [...numbers].sort((a, b) => a - b);
  while (middle.length > 2) middle = middle.slice(1, -1);
  return middle.reduce((sum, each) => sum + each, 0) / middle.length;
}
