import 'server-only';
import { figureAddress, type Shown } from '../engine/working/shown';
import { type Figures, valueAt } from '../engine/working/working';

/** A figure as a page shows it: its value, and the address under which its working opens. */
export type Fig = { at: string; value: Shown };

/** Finds the figure at an address, given part by part. */
export type FigAt = (...path: (string | number)[]) => Fig;

/**
 * The figures of one moment. A page never works a figure out beside the engine: it shows the value of the working that
 * opens under it, so that the two cannot disagree.
 *
 * Throws   RangeError when no working stands behind an address
 */
export function figuresOf(figures: Figures): FigAt {
  return (...path) => {
    const at = figureAddress(...path);
    const value = valueAt(figures, at);
    if (!value) throw new RangeError(`figures: nothing stands behind "${at}"`);
    return { at, value };
  };
}
