import { toNumber } from '../quantity/exact';
import { leadingNumber } from './number-text';

/** The units that are offered beside an amount; the first is meant where none is typed. */
export const AMOUNT_UNITS = {
  liquid: ['mL', 'tsp', 'tbsp', 'fl oz'],
  powder: ['g', 'tsp', 'oz'],
  spray: ['mL', 'L', 'gal'],
} as const;

export type AmountKind = keyof typeof AMOUNT_UNITS;

/** An amount as it is typed: its number apart from its unit. `unit` is null where the text says it in another way. */
type AmountTyped = { number: string; unit: string | null };

/** "14.5 g" in its two parts. A text whose unit is not offered stays whole. */
export function splitAmount(text: string, kind: AmountKind): AmountTyped {
  const unit = AMOUNT_UNITS[kind].find((one) => text.endsWith(` ${one}`));
  if (unit) return { number: text.slice(0, -unit.length - 1), unit };
  return /[a-zµ%]/i.test(text) ? { number: text, unit: null } : { number: text, unit: AMOUNT_UNITS[kind][0] };
}

/** The two parts as one text. A number with a unit typed behind it is left as it is; without a number there is no amount. */
export function joinAmount(number: string, unit: string | null): string {
  if (number.trim() === '' || unit === null || /[a-zµ%]/i.test(number)) return number;
  return `${number} ${unit}`;
}

const SPOONS = ['tsp', 'tbsp', 'fl oz'];

/**
 * An amount one step more or less: a quarter of a spoon, a tenth below 2, a half below 20, one below 200, else ten.
 *
 * Gives    the same text where its number cannot be read; never less than nothing
 */
export function stepAmount(text: string, kind: AmountKind, direction: 1 | -1): string {
  const { number, unit } = splitAmount(text, kind);
  const reading = leadingNumber(number.trim() === '' ? '0' : number, '4');
  if (unit === null || !reading.ok || reading.value.rest !== '') return text;
  const value = toNumber(reading.value.number);
  const step = stepAt(value, unit, direction);
  // Whole steps, so that no digit is left behind the last one.
  const steps = value / step + direction;
  const next = Math.max(0, direction > 0 ? Math.floor(steps + 1e-9) : Math.ceil(steps - 1e-9)) * step;
  return joinAmount(SPOONS.includes(unit) ? inQuarters(next) : String(Number(next.toFixed(2))), unit);
}

function stepAt(value: number, unit: string, direction: 1 | -1): number {
  if (SPOONS.includes(unit)) return 0.25;
  const reached = direction > 0 ? value : value - 1e-9;
  if (unit === 'L' || unit === 'gal') return 0.1;
  return reached < 2 ? 0.1 : reached < 20 ? 0.5 : reached < 200 ? 1 : 10;
}

const QUARTERS = ['', '1/4', '1/2', '3/4'];

function inQuarters(value: number): string {
  const [whole, rest] = [Math.floor(value), Math.round((value % 1) * 4)];
  return [whole > 0 || rest === 0 ? String(whole) : '', QUARTERS[rest] ?? ''].filter((part) => part !== '').join(' ');
}
