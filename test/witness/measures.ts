import { decimal, type Fraction, fraction, over, plus, rounded, times } from './fraction';

/* Units by their definitions, and sizes and doses as people write them. */

export type Goods = {
  form: 'liquid' | 'powder';
  densityGPerMl: number | null;
  gramsPerTeaspoon: number | null;
  contents: { substance: string; amount: number; basis: string }[];
};

/** A US gallon is 231 cubic inches of 16.387064 mL. */
const GALLON = times(decimal(231), decimal('16.387064'));
const POUND = decimal('453.59237');
const TEASPOON = over(GALLON, decimal(768));

const ML: Record<string, Fraction> = {
  mL: decimal(1),
  L: decimal(1000),
  gal: GALLON,
  qt: over(GALLON, decimal(4)),
  pt: over(GALLON, decimal(8)),
  'fl oz': over(GALLON, decimal(128)),
  tbsp: over(GALLON, decimal(256)),
  tsp: TEASPOON,
};
const GRAMS: Record<string, Fraction> = {
  mg: decimal('0.001'),
  g: decimal(1),
  kg: decimal(1000),
  oz: over(POUND, decimal(16)),
  lb: POUND,
};

type Amount = { ml: Fraction; grams: null } | { ml: null; grams: Fraction };

/** "1 1/2", "0.5" or "3/4". */
const written = (text: string): Fraction =>
  text
    .trim()
    .split(/\s+/)
    .map((part) => {
      const [top = '', bottom] = part.split('/');
      return bottom === undefined ? decimal(top) : over(decimal(top), decimal(bottom));
    })
    .reduce(plus);

/** `dropMl` is what a drop of the shop holds. */
function amountOf(text: string, dropMl: number): Amount {
  const [, number = '', unit = ''] = /^([\d./ ]*?)\s*([a-z][a-z ]*)$/i.exec(text.trim()) ?? [];
  const many = number === '' ? decimal(1) : written(number);
  if (unit === 'drops' || unit === 'drop') return { ml: times(many, decimal(dropMl)), grams: null };
  const [ml, grams] = [ML[unit], GRAMS[unit]];
  if (ml) return { ml: times(many, ml), grams: null };
  if (grams) return { ml: null, grams: times(many, grams) };
  throw new Error(`${text} has no unit that the witness knows`);
}

const THOUSAND = decimal(1000);

/** Whole µL of a liquid or mg of a powder that an amount of it is; null when that cannot be told. */
function unrounded(amount: Amount, goods: Goods): Fraction | null {
  if (goods.form === 'liquid') {
    if (amount.ml) return times(amount.ml, THOUSAND);
    if (goods.densityGPerMl === null) return null;
    return times(over(amount.grams, decimal(goods.densityGPerMl)), THOUSAND);
  }
  if (amount.grams) return times(amount.grams, THOUSAND);
  if (goods.gramsPerTeaspoon === null) return null;
  return times(times(over(amount.ml, TEASPOON), decimal(goods.gramsPerTeaspoon)), THOUSAND);
}

/** What a size holds, exact; throws where the file should have been refused. */
export function sizeOf(text: string, goods: Goods): Fraction {
  const size = unrounded(amountOf(text, 0.05), goods);
  if (size === null) throw new Error(`${text} cannot be told of this product`);
  return size;
}
export const stockOf = (text: string, goods: Goods): bigint => rounded(sizeOf(text, goods));

/** mL of a volume, exact. */
export function volumeOf(text: string): Fraction {
  const { ml } = amountOf(text, 0.05);
  if (ml === null) throw new Error(`${text} is no volume`);
  return ml;
}

/** What one litre of spray takes of a product, in µL or mg, exact; null when that cannot be told. */
export function perLitre(dose: string, goods: Goods, dropMl: number): Fraction | null {
  const [, percent] = /^([\d.]+)\s*%$/.exec(dose) ?? [];
  if (percent !== undefined) return times(decimal(percent), fraction(10_000n));
  const [, ppm, substance = ''] = /^([\d.]+)\s*ppm\s+(.+)$/.exec(dose) ?? [];
  if (ppm !== undefined) {
    const each = mgPerUnit(goods, substance);
    return each && times(over(decimal(ppm), each), THOUSAND);
  }
  const [top, bottom] = splitAtLast(dose);
  const amount = unrounded(amountOf(top, dropMl), goods);
  return amount && over(amount, over(volumeOf(bottom), THOUSAND));
}

/** "1 1/2 tsp/gal" has two slashes; the last one divides. */
const splitAtLast = (text: string): [string, string] => {
  const at = text.lastIndexOf('/');
  return [text.slice(0, at), text.slice(at + 1)];
};

/** mg of a substance in a mL of a liquid, or in a g of a powder; null when that cannot be told. */
function mgPerUnit({ form, densityGPerMl, contents }: Goods, substance: string): Fraction | null {
  const content = contents.find((one) => one.substance === substance);
  if (!content || content.amount === 0) return null;
  const x = decimal(content.amount);
  const density = densityGPerMl === null ? null : decimal(densityGPerMl);
  const perMl = { '% w/v': times(x, decimal(10)), 'g/L': x, 'lb/gal': over(times(times(x, POUND), THOUSAND), GALLON) };
  const perGram = { '% w/w': times(x, decimal(10)), 'g/kg': x };
  const byVolume = (perMl as Record<string, Fraction>)[content.basis];
  const byMass = (perGram as Record<string, Fraction>)[content.basis];
  if (form === 'liquid') return byVolume ?? (byMass && density ? times(byMass, density) : null);
  return byMass ?? null;
}

/** The number of a dose in mL, g or mg of one substance per litre, as it is written, with which of them it is. */
export function asWritten(dose: string, { form }: Goods, dropMl: number): { of: string; perLitre: Fraction } {
  const [, percent] = /^([\d.]+)\s*%$/.exec(dose) ?? [];
  if (percent !== undefined)
    return { of: form === 'liquid' ? 'mL' : 'g', perLitre: times(decimal(percent), decimal(10)) };
  const [, ppm, substance = ''] = /^([\d.]+)\s*ppm\s+(.+)$/.exec(dose) ?? [];
  if (ppm !== undefined) return { of: substance, perLitre: decimal(ppm) };
  const [top, bottom] = splitAtLast(dose);
  const amount = amountOf(top, dropMl);
  const litres = over(volumeOf(bottom), THOUSAND);
  return { of: amount.ml ? 'mL' : 'g', perLitre: over(amount.ml ?? amount.grams, litres) };
}
