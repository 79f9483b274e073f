import type { Stock } from '../quantity/amounts';
import { divide, type Exact, exact, multiply, toNumber } from '../quantity/exact';
import { wholeDown, wholeNearest, wholeUp } from '../quantity/rounding';
import { coinPlaces } from './coin-places';

/*
 * Amounts for screens and paper, always with their unit. What is shown is rounded here and read by people only: no
 * shown text is ever read back, so the choice of units changes no stored value.
 */

export type Units = 'us' | 'metric';

const GALLON_UL = exact('3785411.784');
const POUND_MG = exact('453592.37');
const MILLION = exact(1000000n);
const THOUSAND = exact(1000n);

/** A quart and a pound as the shelf keeps them, so that a bag of one pound reads as one. */
const QUART: number = wholeDown(divide(GALLON_UL, exact(4n)));
const POUND: number = wholeDown(POUND_MG);

/**
 * A volume for people. In US units a quart or more reads in gallons; less reads in mL, which is what it is measured with.
 *
 * Takes   µL, whole or not
 * Rounds  gallons and litres to hundredths; mL to whole ones from 100, tenths from 10, else hundredths; a half away
 *         from zero. Something too small for that reads "less than 0.01 mL", never zero.
 */
export function showVolume(microlitres: number, units: Units): string {
  const volume = exact(microlitres);
  const size = Math.abs(microlitres);
  if (units === 'us' && size >= QUART) return `${decimal(divide(volume, GALLON_UL), 2)} gal`;
  if (units === 'metric' && size >= 1_000_000) return `${decimal(divide(volume, MILLION), 2)} L`;
  return small(divide(volume, THOUSAND), 'mL');
}

/**
 * A mass for people: in US units a pound or more reads in pounds, in metric ones a kilogram or more in kilograms; less
 * reads in grams, which is what it is weighed with.
 *
 * Takes   mg, whole or not
 * Rounds  as `showVolume` does
 */
export function showMass(milligrams: number, units: Units): string {
  const mass = exact(milligrams);
  const size = Math.abs(milligrams);
  if (units === 'us' && size >= POUND) return `${decimal(divide(mass, POUND_MG), 2)} lb`;
  if (units === 'metric' && size >= 1_000_000) return `${decimal(divide(mass, MILLION), 2)} kg`;
  return small(divide(mass, THOUSAND), 'g');
}

/** What a container holds, for people: the volume of a liquid, the mass of a powder. */
export const showStock = (amount: Stock, form: 'liquid' | 'powder', units: Units): string =>
  form === 'liquid' ? showVolume(amount, units) : showMass(amount, units);

/**
 * Money for people: "$12.35". Less than ten of the smallest coin keeps two more places, and in dollars reads in cents,
 * since a plant costs fractions of one: "0.65 ¢".
 *
 * Takes   micros, and a currency code of ISO 4217
 * Rounds  to the smallest coin, or a hundredth of it below ten; a half away from zero. Something too small for that
 *         reads "less than 0.01 ¢", never zero.
 */
export function showMoney(micros: number, currency: string): string {
  const amount = divide(exact(micros), MILLION);
  const places = coinPlaces(currency);
  const coins = multiply(amount, exact(10n ** BigInt(places)));
  const size = Math.abs(toNumber(coins));
  if (size === 0 || size >= 10) return formatOf(currency).format(nearest(amount, places));
  const tiny = size < 0.005;
  const shown = tiny ? exact('0.01') : coins;
  const text = currency === 'USD' ? `${decimal(shown, 2)} ¢` : parted(shown, places, currency);
  return tiny ? `less than ${text}` : text;
}

/** The same, or that it is not known: null. */
export const showMoneyIfKnown = (micros: number | null, currency: string): string =>
  micros === null ? 'not known' : showMoney(micros, currency);

/** A few coins with two places more than the currency has. */
function parted(coins: Exact, places: number, currency: string): string {
  const amount = divide(coins, exact(10n ** BigInt(places)));
  return formatOf(currency, places + 2).format(nearest(amount, places + 2));
}

/**
 * A span of time for people: "45 min", "12 h", "48 h", "1 h 30 min". Hours are not made into days, since an interval on
 * a label is read in hours.
 *
 * Rounds  up to whole minutes, so that no interval reads shorter than it is
 */
export function showMinutes(minutes: number): string {
  const whole: number = wholeUp(exact(minutes));
  const [hours, rest] = [(whole - (whole % 60)) / 60, whole % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${decimal(exact(hours), 0)} h` : `${decimal(exact(hours), 0)} h ${rest} min`;
}

/**
 * A bare number for people, where the unit stands beside it: a count, a rate, a concentration.
 *
 * Rounds  a whole number not at all, any other to four significant digits
 */
export function showNumber(value: number): string {
  if (Number.isInteger(value) || Math.abs(value) >= 1000) return decimal(exact(value), 0);
  return formatWith({ maximumSignificantDigits: 4 }).format(value);
}

/**
 * A number that is only an estimate, where more digits would promise too much: "11", "0.48", "1,200".
 *
 * Rounds  to two significant digits
 */
export const showRough = (value: number): string => formatWith({ maximumSignificantDigits: 2 }).format(value);

/**
 * A pH for people: "7.4", "8.31".
 *
 * Rounds  to hundredths, which is finer than any pen reads
 */
export const showPh = (pH: number): string => decimal(exact(pH), 2, 0);

function small(value: Exact, unit: string): string {
  const size = Math.abs(toNumber(value));
  if (size > 0 && size < 0.005) return `less than 0.01 ${unit}`;
  return `${decimal(value, size >= 100 ? 0 : size >= 10 ? 1 : 2, 0)} ${unit}`;
}

/** A decimal with so many places, a half away from zero; trailing zeros are kept down to the fewest places. */
const decimal = (value: Exact, places: number, fewest = places): string =>
  formatWith({ minimumFractionDigits: fewest, maximumFractionDigits: places }).format(nearest(value, places));

const nearest = (value: Exact, places: number): number =>
  wholeNearest(multiply(value, exact(10n ** BigInt(places)))) / 10 ** places;

const formatOf = (currency: string, places = coinPlaces(currency)): Intl.NumberFormat =>
  formatWith({ style: 'currency', currency, minimumFractionDigits: places, maximumFractionDigits: places });

/** Making a format takes far longer than using it, and a page shows hundreds of figures in a handful of formats. */
const formats = new Map<string, Intl.NumberFormat>();

function formatWith(options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = JSON.stringify(options);
  const format = formats.get(key) ?? new Intl.NumberFormat('en-US', options);
  formats.set(key, format);
  return format;
}
