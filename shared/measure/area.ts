import { type Reading, read, unreadable } from '../outcome';
import { compare, divide, type Exact, exact, fraction, multiply, toNumber, ZERO } from '../quantity/exact';
import { leadingNumber, quoted } from './number-text';
import { showNumber, type Units } from './show';

const EXAMPLE = '130 sq ft';

/** Exactly 0.3048 m to the foot. */
const SQUARE_FOOT = exact('0.09290304');
const SQUARE_YARD = multiply(SQUARE_FOOT, exact(9n));
const ACRE = multiply(SQUARE_FOOT, exact(43_560n));

const UNITS: [squareMetres: Exact, spellings: string[]][] = [
  [SQUARE_FOOT, ['sq ft', 'sqft', 'ft2', 'ft²', 'square foot', 'square feet', 'sf']],
  [fraction(SQUARE_FOOT.over, SQUARE_FOOT.under * 144n), ['sq in', 'in2', 'in²', 'square inch', 'square inches']],
  [SQUARE_YARD, ['sq yd', 'yd2', 'yd²', 'square yard', 'square yards']],
  [ACRE, ['ac', 'acre', 'acres']],
  [exact(1n), ['m2', 'm²', 'sq m', 'sqm', 'square metre', 'square metres', 'square meter', 'square meters']],
  [exact(10_000n), ['ha', 'hectare', 'hectares']],
];

/** What a unit of area is worth in m², exact; null when the text names none. */
export function unitOfArea(text: string): Exact | null {
  const name = text.trim().toLowerCase().replaceAll('.', '').replace(/\s+/g, ' ');
  return UNITS.find(([, spellings]) => spellings.includes(name))?.[0] ?? null;
}

/**
 * An area with its unit, as people write it.
 *
 * Gives    m², exact
 * Refuses  what `leadingNumber` refuses; no unit or an unknown one; an area of nothing
 * Source   the international foot of 0.3048 m; an acre is 43,560 square feet
 */
export function readArea(text: string): Reading<Exact> {
  const amount = leadingNumber(text, EXAMPLE);
  if (!amount.ok) return amount;
  const { number, rest } = amount.value;
  const unit = unitOfArea(rest);
  if (!unit) {
    return unreadable(`${quoted(text)} has no unit of area that is known here. Write it like "${EXAMPLE}" or "12 m2".`);
  }
  if (compare(number, ZERO) === 0)
    return unreadable(`${quoted(text)} is no area at all. Leave it empty when it is not known.`);
  return read(multiply(number, unit));
}

/**
 * An area for people: square feet, or acres from one on; in metric units m², or hectares from one on.
 *
 * Takes   m², exact
 * Rounds  to four significant digits, or to whole ones from a thousand on
 */
export function showArea(squareMetres: Exact, units: Units): string {
  const [small, large] = units === 'us' ? US : METRIC;
  const { worth, name } = compare(squareMetres, large.worth) < 0 ? small : large;
  const number = showNumber(toNumber(divide(squareMetres, worth)));
  return `${number} ${number === '1' && name === 'acres' ? 'acre' : name}`;
}

type Shown = { worth: Exact; name: string };
const US: [Shown, Shown] = [
  { worth: SQUARE_FOOT, name: 'sq ft' },
  { worth: ACRE, name: 'acres' },
];
const METRIC: [Shown, Shown] = [
  { worth: exact(1n), name: 'm²' },
  { worth: exact(10_000n), name: 'ha' },
];
