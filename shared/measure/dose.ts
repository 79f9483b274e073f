import { type Reading, read, unreadable } from '../outcome';
import { compare, divide, type Exact, exact, multiply, ZERO } from '../quantity/exact';
import { remembered } from '../text/remembered';
import { unitOfArea } from './area';
import { leadingNumber, quoted } from './number-text';
import { whichOunce } from './size';
import { isDrop, OUNCE, readUnit, type Unit, USUAL_DROP } from './unit';

/**
 * How much of a product is sprayed, as somebody wrote it, exact: so much for the spray that it goes into, or, per area,
 * so much for the ground that is sprayed, whatever the volume of spray. Per area it is mL or g on each square metre.
 */
export type Dose = { text: string } & (
  | { kind: 'volume'; mlPerLitre: Exact }
  | { kind: 'mass'; gPerLitre: Exact }
  | { kind: 'substance'; substance: string; mgPerLitre: Exact }
  | { kind: 'perArea'; measure: 'volume' | 'mass'; perSquareMetre: Exact }
);

type Form = 'liquid' | 'powder';

const EXAMPLE = '5 mL/gal';
const THOUSAND = exact(1000n);
const TEN = exact(10n);

/** A litre or a kilogram in each litre, or on each m²: nothing sprayed is stronger, so more is a slip of the unit. */
const STRONGEST = THOUSAND;

/**
 * A dose as people write it.
 *
 *   dose = number unit ("/" | "per") [number] unit of volume     "5 mL/gal"  "1 1/2 tsp per gal"  "8 fl oz/100 gal"
 *        | number unit ("/" | "per") [number] unit of area       "4 fl oz/1000 sq ft"  "2 lb/acre"  "2 mL/m2"
 *        | number "%" ["v/v" | "w/v"]                            "0.5 %": 5 mL/L of a liquid, 5 g/L of a powder
 *        | number "ppm" ["of"] substance                         "40 ppm spinosad": 40 mg of it per litre of spray
 *
 * A weight of a liquid is kind 'mass' and needs its density later; a spoon of a powder is kind 'volume' and needs the
 * weight of a level teaspoon later.
 *
 * Takes    the text; whether the product is a liquid or a powder; what a drop is worth here, in µL
 * Gives    mL/L, g/L or mg of the substance per litre of spray, or mL or g per m², exact, and the text as it was typed
 * Refuses  what `leadingNumber` refuses; a dose of nothing; an unknown unit; a dose per weight or nothing at all;
 *          "oz" alone on a liquid, with the question; drops of a powder; ppm of nothing; more than 1,000 mL or g per L,
 *          or per m²
 */
export const readDose = (text: string, form: Form, drop: Exact = USUAL_DROP): Reading<Dose> =>
  doses([form, `${drop.over}`, `${drop.under}`, text], () => readNewDose(text, form, drop));

const doses = remembered<Reading<Dose>>();

function readNewDose(text: string, form: Form, drop: Exact): Reading<Dose> {
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
    const what =
      dose.value.kind === 'perArea' ? 'more than a litre or a kilogram on every m²' : 'more product than spray';
    return unreadable(`${quoted(text)} is ${what}. Check the number and the units.`);
  }
  return dose;
}

function strengthOf(dose: Dose): Exact {
  switch (dose.kind) {
    case 'volume':
      return dose.mlPerLitre;
    case 'mass':
      return dose.gPerLitre;
    case 'substance':
      return divide(dose.mgPerLitre, THOUSAND);
    case 'perArea':
      return dose.perSquareMetre;
  }
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
  const over = readDosed(text, spray);
  if (!over.ok) return over;
  const rate = divide(divide(multiply(number, unit.value.worth), THOUSAND), over.value.amount);
  return read(over.value.per === 'area' ? perArea(text, unit.value, rate) : perLitre(text, unit.value, rate));
}

const perArea = (text: string, { kind }: Unit, perSquareMetre: Exact): Dose => ({
  text,
  kind: 'perArea',
  measure: kind,
  perSquareMetre,
});

const perLitre = (text: string, { kind }: Unit, rate: Exact): Dose =>
  kind === 'volume' ? { text, kind, mlPerLitre: rate } : { text, kind, gPerLitre: rate };

/** What the dose is for: litres of spray or m² of ground, one unit of it or a given number. */
function readDosed(text: string, spray: string): Reading<{ per: 'spray' | 'area'; amount: Exact }> {
  if (spray === '') return unreadable(`In ${quoted(text)} the spray is missing. Write it like "${EXAMPLE}".`);
  const amount = leadingNumber(/^\p{L}/u.test(spray) ? `1 ${spray}` : spray, '100 gal');
  if (!amount.ok) return amount;
  const { number, rest } = amount.value;
  const area = unitOfArea(rest);
  const unit = readUnit(rest, USUAL_DROP);
  if (unit.ok && unit.value === OUNCE) return unreadable(whichOunce(text));
  if (!area && (!unit.ok || unit.value.kind === 'mass')) {
    return unreadable(
      `${quoted(text)} must be per volume of spray or per area, and ${quoted(spray)} is neither. Write it like "${EXAMPLE}" or "2 mL/m2".`,
    );
  }
  if (compare(number, ZERO) === 0) {
    return unreadable(`${quoted(text)} is per no ${area ? 'area' : 'spray'} at all. Write it like "8 fl oz/100 gal".`);
  }
  if (area) return read({ per: 'area', amount: multiply(number, area) });
  return read({ per: 'spray', amount: divide(multiply(number, unit.ok ? unit.value.worth : ZERO), exact(1000000n)) });
}
