import type { Micros, Stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';

/** A value with its unit, as data: how it is written is the page's business. */
export type Shown =
  | { kind: 'money'; micros: number }
  | { kind: 'stock'; amount: Stock; form: 'liquid' | 'powder' }
  | { kind: 'volume'; ml: number }
  | { kind: 'mass'; g: number }
  | { kind: 'count'; value: number; of: string }
  | { kind: 'ratio'; value: number; unit: string }
  | { kind: 'day'; day: Day }
  | { kind: 'instant'; instant: Instant }
  | { kind: 'minutes'; minutes: number }
  | { kind: 'text'; text: string }
  | { kind: 'unknown'; because: string };

/** One input of a figure: what it is, its value, where it came from, and its own address when it was worked out too. */
export type Step = { label: string; value: Shown; from: string; figure: string | null };

/** How a figure was reached: the rule in words, and every input. */
export type Working = { figure: string; title: string; value: Shown; rule: string; steps: Step[] };

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
