import { type Reading, read, unreadable } from '../outcome';
import { exact, fraction, multiply, subtract } from '../quantity/exact';
import { wholeNearest } from '../quantity/rounding';
import { readNumber } from './sent-fields';

const WRITE = 'Write degrees Celsius, such as 18.5 or -3, or Fahrenheit with its letter, such as 65 F.';
const [COLDEST, HOTTEST] = [-60, 70];

/**
 * A temperature as it was read off a thermometer: "18.5", "-3 °C", "65 °F".
 *
 * Gives    °C; null for an empty field: not known
 *            °C = (°F − 32) × 5 ÷ 9
 * Rounds   what was in °F, to the nearest tenth
 * Refuses  what is no number; what is colder than -60 °C or hotter than 70 °C
 */
export function readCelsius(text: string): Reading<number | null> {
  if (text.trim() === '') return read(null);
  const [, below, digits = '', unit] = /^\s*([-−]?)(.*?)\s*(?:°?\s*([CF]))?\s*$/is.exec(text) ?? [];
  const number =
    digits === '' ? unreadable(`${JSON.stringify(text.trim())} is no number. ${WRITE}`) : readNumber(digits, WRITE);
  if (!number.ok || number.value === null) return number;
  const degrees = below ? 0 - number.value : number.value;
  const celsius = /f/i.test(unit ?? '') ? fromFahrenheit(degrees) : degrees;
  if (celsius >= COLDEST && celsius <= HOTTEST) return read(celsius);
  return unreadable(`${JSON.stringify(text.trim())} is not between ${COLDEST} and ${HOTTEST} °C. ${WRITE}`);
}

const fromFahrenheit = (degrees: number): number =>
  wholeNearest<number>(multiply(subtract(exact(degrees), exact(32)), fraction(50n, 9n))) / 10;
