import { type Reading, read, unreadable } from '../outcome';
import { compare, divide, type Exact, exact, multiply, ZERO } from '../quantity/exact';
import { leadingNumber, quoted } from './number-text';
import { whichOunce } from './size';
import { isDrop, OUNCE, readUnit, USUAL_DROP } from './unit';

/** How much of a product goes into the spray, as somebody wrote it, exact. */
export type Dose = { text: string } & (
  | { kind: 'volume'; mlPerLitre: Exact }
  | { kind: 'mass'; gPerLitre: Exact }
  | { kind: 'substance'; substance: string; mgPerLitre: Exact }
);

type Form = 'liquid' | 'powder';

const EXAMPLE = '5 mL/gal';
const THOUSAND = exact(1000n);
const TEN = exact(10n);

/** A litre per litre, or a kilogram per litre: nothing sprayable is stronger, so more than this is a slip of the unit. */
const STRONGEST = THOUSAND;

/**
 * A dose as people write it.
 *
 *   dose = number unit ("/" | "per") [number] unit of volume     "5 mL/gal"  "1 1/2 tsp per gal"  "8 fl oz/100 gal"
 *        | number "%" ["v/v" | "w/v"]                            "0.5 %": 5 mL/L of a liquid, 5 g/L of a powder
 *        | number "ppm" ["of"] substance                         "40 ppm spinosad": 40 mg of it per litre of spray
 *
 * A weight of a liquid is kind 'mass' and needs its density later; a spoon of a powder is kind 'volume' and needs the
 * weight of a level teaspoon later.
 *
 * Takes    the text; whether the product is a liquid or a powder; what a drop is worth here, in µL
 * Gives    mL/L, g/L or mg of the substance per litre of spray, exact, and the text as it was typed
 * Refuses  what `leadingNumber` refuses; a dose of nothing; an unknown unit; a dose per weight, area or nothing at all;
 *          "oz" alone on a liquid, with the question; drops of a powder; ppm of nothing; more than 1,000 mL or g per L
 */
export function readDose(text: string, form: Form, drop: Exact = USUAL_DROP): Reading<Dose> {
  const amount = leadingNumber(text, EXAMPLE);
  if (!amount.ok) return amount;
  const { number, rest } = amount.value;
  const dose = readRest(text, number, rest, form, drop);
  if (!dose.ok) return dose;
  if (compare(number, ZERO) === 0) {
    return unreadable(
      `${quoted(text)} is a dose of nothing. Leave the product out, or the rate empty when none is known.`,
    );
  }
  if (compare(strengthOf(dose.value), STRONGEST) > 0) {
    return unreadable(`${quoted(text)} is more product than spray. Check the number and the units.`);
  }
  return dose;
}

function strengthOf(dose: Dose): Exact {
  if (dose.kind === 'volume') return dose.mlPerLitre;
  return dose.kind === 'mass' ? dose.gPerLitre : divide(dose.mgPerLitre, THOUSAND);
}

function readRest(text: string, number: Exact, rest: string, form: Form, drop: Exact): Reading<Dose> {
  const percent = /^(?:%|percent\b|pct\b)\s*(.*)$/i.exec(rest);
  if (percent) return readPercent(text, number, percent[1] ?? '', form);
  const ppm = /^ppm\b\s*(?:of\s+)?(.*)$/i.exec(rest);
  if (ppm) return readPpm(text, number, ppm[1] ?? '');
  const parts = /^(.*?)\s*(?:\/|\bper\b)\s*(.*)$/i.exec(rest);
  if (!parts)
    return unreadable(`${quoted(text)} does not say per how much spray. Write it like "${EXAMPLE}" or "0.5 %".`);
  return readRatio(text, number, parts[1] ?? '', parts[2] ?? '', form, drop);
}

function readPercent(text: string, number: Exact, basis: string, form: Form): Reading<Dose> {
  const volume: Dose = { text, kind: 'volume', mlPerLitre: multiply(number, TEN) };
  const mass: Dose = { text, kind: 'mass', gPerLitre: multiply(number, TEN) };
  if (basis === '') return read(form === 'liquid' ? volume : mass);
  if (/^v\s*\/\s*v$/i.test(basis)) return read(volume);
  if (/^w\s*\/\s*v$/i.test(basis)) return read(mass);
  return unreadable(`${quoted(text)}: write "%", "% v/v" or "% w/v", and nothing after it.`);
}

function readPpm(text: string, mgPerLitre: Exact, substance: string): Reading<Dose> {
  if (substance === '')
    return unreadable(`${quoted(text)}: ppm of what? Write the substance, such as "40 ppm spinosad".`);
  return read({ text, kind: 'substance', substance, mgPerLitre });
}

function readRatio(
  text: string,
  number: Exact,
  product: string,
  spray: string,
  form: Form,
  drop: Exact,
): Reading<Dose> {
  if (product === '') return unreadable(`${quoted(text)} has no unit for the product. Write it like "${EXAMPLE}".`);
  const unit = readUnit(product, drop);
  if (!unit.ok) return unit;
  if (unit.value === OUNCE && form === 'liquid') return unreadable(whichOunce(text));
  if (isDrop(unit.value) && form === 'powder')
    return unreadable(`${quoted(text)}: a powder has no drops. Write a weight.`);
  const litres = readSprayVolume(text, spray);
  if (!litres.ok) return litres;
  const rate = divide(divide(multiply(number, unit.value.worth), THOUSAND), litres.value);
  return read(
    unit.value.kind === 'volume' ? { text, kind: 'volume', mlPerLitre: rate } : { text, kind: 'mass', gPerLitre: rate },
  );
}

/** The spray that the dose is for, in litres: a unit of volume, once or a given number of times. */
function readSprayVolume(text: string, spray: string): Reading<Exact> {
  if (spray === '') return unreadable(`In ${quoted(text)} the spray is missing. Write it like "${EXAMPLE}".`);
  const amount = leadingNumber(/^\p{L}/u.test(spray) ? `1 ${spray}` : spray, '100 gal');
  if (!amount.ok) return amount;
  const unit = readUnit(amount.value.rest, USUAL_DROP);
  if (unit.ok && unit.value === OUNCE) return unreadable(whichOunce(text));
  if (!unit.ok || unit.value.kind === 'mass') {
    return unreadable(
      `${quoted(text)} must be per volume of spray, and ${quoted(spray)} is none. Write it like "${EXAMPLE}".`,
    );
  }
  if (compare(amount.value.number, ZERO) === 0) {
    return unreadable(`${quoted(text)} is per no spray at all. Write it like "8 fl oz/100 gal".`);
  }
  return read(divide(multiply(amount.value.number, unit.value.worth), exact(1000000n)));
}
