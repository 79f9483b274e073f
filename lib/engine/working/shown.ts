import type { Micros, Stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import type { ToEnter } from '../rules/to-enter';

/** A value with its unit, as data: how it is written is the page's business. */
export type Shown =
  | ({ kind: 'money'; micros: number } & AtLeast)
  | ({ kind: 'stock'; amount: Stock; form: 'liquid' | 'powder' } & AtLeast)
  | { kind: 'volume'; ml: number }
  | { kind: 'mass'; g: number }
  | { kind: 'count'; value: number; of: string }
  | { kind: 'ratio'; value: number; unit: string }
  /** With `atLatest` it may be sooner, because something is not known. */
  | { kind: 'day'; day: Day; atLatest?: true }
  | { kind: 'instant'; instant: Instant }
  | { kind: 'minutes'; minutes: number }
  | { kind: 'text'; text: string }
  | { kind: 'unknown'; because: string };

/**
 * How many parts of a sum nobody knows, so that it is at least so much, or at most where those would be taken off; left
 * out when all of it is known.
 */
type AtLeast = { unknown?: number; atMost?: true };

/** One input of a figure: what it is, its value, where it came from, and its own address when it was worked out too. */
export type Step = { label: string; value: Shown; from: string; figure: string | null };

/**
 * How a figure was reached: the rule in words, every input, and where something is not known, what is to be entered and
 * where.
 */
export type Working = {
  figure: string;
  title: string;
  value: Shown;
  rule: string;
  steps: Step[];
  toEnter?: readonly ToEnter[];
};

/** A working before it is given its address. One with many inputs lists them only when they are asked for. */
export type FoundWorking = Omit<Working, 'figure'>;

/** The address of a figure. Ids are encoded, so that they may hold any character. */
export const figureAddress = (...path: (string | number)[]): string =>
  path.map((part) => encodeURIComponent(part)).join('/');

/** The parts of an address, or null when it is not one. */
export function readAddress(address: string): string[] | null {
  try {
    return address.split('/').map(decodeURIComponent);
  } catch {
    return null;
  }
}

/** Money as a shown value, or why it is unknown. */
export const money = (cost: Micros | null, because: string): Shown =>
  cost === null ? { kind: 'unknown', because } : { kind: 'money', micros: cost };

/**
 * A sum of costs as it is shown: what is known of it and how many parts are not; unknown when there are parts and none of
 * them is known, because that is not zero.
 */
export function sumShown(costs: readonly (number | null)[], because = 'None of it is known.'): Shown {
  const known = costs.filter((cost) => cost !== null);
  const unknown = costs.length - known.length;
  if (unknown > 0 && known.length === 0) return { kind: 'unknown', because };
  return { kind: 'money', micros: known.reduce((total, cost) => total + cost, 0), ...atLeast(unknown) };
}

/** What says of a sum how many parts of it are not known; nothing when all are. */
export const atLeast = (unknown: number): AtLeast => (unknown > 0 ? { unknown } : {});

/** A step that is typed in rather than worked out. */
export const entered = (label: string, value: Shown, from: string): Step => ({ label, value, from, figure: null });

/** A step that is a figure itself, and opens in turn. */
export const worked = (label: string, value: Shown, from: string, figure: string): Step => ({
  label,
  value,
  from,
  figure,
});

export const count = (value: number, of: string): Shown => ({ kind: 'count', value, of });
export const text = (words: string): Shown => ({ kind: 'text', text: words });
