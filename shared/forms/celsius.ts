import { type Reading, read, unreadable } from '../outcome';
import { add, exact, fraction, multiply, subtract } from '../quantity/exact';
import { wholeNearest } from '../quantity/rounding';
import { readNumber } from './sent-fields';

const WRITE = 'Write degrees Celsius, such as 18.5 or -3, or Fahrenheit with its letter, such as 65 F.';
const WRITE_US = 'Write degrees Fahrenheit, such as 65, or Celsius with its letter, such as 18.5 C.';
const [COLDEST, HOTTEST] = [-60, 70];

/**
 * A temperature as it was read off a thermometer: "18.5", "-3 °C", "65 °F".
 *
 * Takes    the text, and what a number without a letter is in: °F in a shop with US units, °C in any other
 * Gives    °C; null for an empty field: not known
 *            °C = (°F − 32) × 5 ÷ 9
 * Rounds   what was in °F, to the nearest tenth
 * Refuses  what is no number; what is colder than -60 °C or hotter than 70 °C
 */
export function readCelsius(text: string, units: 'us' | 'metric' = 'metric'): Reading<number | null> {
  const write = units === 'us' ? WRITE_US : WRITE;
  if (text.trim() === '') return read(null);
  const [, below, digits = '', unit] = /^\s*([-−]?)(.*?)\s*(?:°?\s*([CF]))?\s*$/is.exec(text) ?? [];
  const number =
    digits === '' ? unreadable(`${JSON.stringify(text.trim())} is no number. ${write}`) : readNumber(digits, write);
  if (!number.ok || number.value === null) return number;
  const degrees = below ? 0 - number.value : number.value;
  const celsius = /f/i.test(unit ?? (units === 'us' ? 'F' : 'C')) ? fromFahrenheit(degrees) : degrees;
  if (celsius >= COLDEST && celsius <= HOTTEST) return read(celsius);
  return unreadable(`${JSON.stringify(text.trim())} is not between ${COLDEST} and ${HOTTEST} °C. ${write}`);
}

const fromFahrenheit = (degrees: number): number =>
  wholeNearest<number>(multiply(subtract(exact(degrees), exact(32)), fraction(50n, 9n))) / 10;

/** A temperature as a field of a form shows it, in °C or, in a shop with US units, in °F: "64.9 F". Rounds to the nearest tenth. */
export const celsiusTyped = (celsius: number, units: 'us' | 'metric'): string =>
  units === 'us' ? `${fahrenheit(celsius)} F` : `${celsius}`;

/**
 * A limit as a field of a form shows it: with its letter, so that it stays what it is when the shop's units change. Empty
 * when it is not known.
 */
export function warmthTyped(celsius: number | null, units: 'us' | 'metric'): string {
  if (celsius === null) return '';
  const fahrenheit = celsiusTyped(celsius, 'us');
  const again = readCelsius(fahrenheit);
  // Saving a form that nobody has changed changes nothing: what is finer than a tenth stays in °C.
  return units === 'us' && again.ok && again.value === celsius ? fahrenheit : `${celsius} C`;
}

/** The same for people: "18.3 °C", and in a shop with US units "65 °F (18.3 °C)". Rounds °F to the nearest degree. */
export const showWarmth = (celsius: number, units: 'us' | 'metric'): string =>
  units === 'us' ? `${Math.round(fahrenheit(celsius))} °F (${celsius} °C)` : `${celsius} °C`;

/** °F from °C, rounded to the nearest tenth. */
export const fahrenheit = (celsius: number): number =>
  wholeNearest<number>(add(multiply(exact(celsius), exact(18n)), exact(320n))) / 10;
