import { type Numerals, plainNumeral } from '@/shared/csv/numeral';
import { readDose } from '@/shared/measure/dose';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type CellReading, cellFault, cellValue, numberIn } from './cell-reading';

type Product = ShopFile['products'][number];
type Content = Product['contents'][number];
type Rate = Product['label']['rates'][number];
type Break = ShopFile['offers'][number]['breaks'][number];

const BASES: readonly Content['basis'][] = ['% w/w', '% w/v', '% v/v', 'g/L', 'g/kg', 'lb/gal'];
const CONTENT = /^(.*\S)\s+(\S+?)\s*(%\s*[wv]\s*\/\s*[wv]|g\s*\/\s*l|g\s*\/\s*kg|lb\s*\/\s*gal)$/i;

/** "pyrethrins 1.4 % w/w": a substance, how much of it, and what that is measured in. */
export function readContent(item: string, numerals: Numerals): CellReading {
  const [, substance, amount, measure = ''] = CONTENT.exec(item) ?? [];
  const basis = BASES.find((each) => bare(each) === bare(measure));
  if (substance === undefined || amount === undefined || !basis) {
    return cellFault(
      { substance: item },
      `"${item}": write substance, amount and basis, such as "pyrethrins 1.4 % w/w".`,
    );
  }
  const read = numberIn(amount, numerals);
  return { value: { substance, amount: read.value, basis }, fault: read.fault };
}

const bare = (basis: string): string => basis.replace(/\s/g, '').toLowerCase();

export const contentText = ({ substance, amount, basis }: Content): string => `${substance} ${amount} ${basis}`;

/**
 * "roses: 8 mL/gal to 20 mL/gal", "roses: up to 20 mL/gal", "roses: 8 mL/gal or more", or "roses:" when no dose is known.
 * The use may have a colon in it: what follows the right one can be read.
 */
export function readRate(item: string, numerals: Numerals): CellReading {
  let fault = `"${item}": write the use, a colon and its doses, such as "roses: 8 mL/gal to 20 mL/gal".`;
  for (let colon = item.indexOf(':'); colon !== -1; colon = item.indexOf(':', colon + 1)) {
    const use = item.slice(0, colon).trim();
    const doses = readDoses(item.slice(colon + 1).trim(), numerals);
    if (use !== '' && doses.fault === null) return cellValue({ use, ...doses.value });
    fault = doses.fault ?? fault;
  }
  return cellFault({ use: item }, fault);
}

type Doses = Pick<Rate, 'min' | 'max'>;

function readDoses(text: string, numerals: Numerals): { value: Doses; fault: string | null } {
  const [least, most] = [/^(.+\S)\s+or more$/i.exec(text)?.[1], /^up to\s+(.+)$/i.exec(text)?.[1]];
  const both = betweens(text).find(([min, max]) => isDose(min, numerals) && isDose(max, numerals));
  if (text === '') return { value: { min: null, max: null }, fault: null };
  if (both) return dosesOf(both[0], both[1], numerals);
  if (most !== undefined && isDose(most, numerals)) return dosesOf(null, most, numerals);
  if (least !== undefined && isDose(least, numerals)) return dosesOf(least, null, numerals);
  const first = plainDose(betweens(text)[0]?.[0] ?? most ?? least ?? text, numerals);
  const why = first.ok ? readEither(first.value) : first;
  return { value: { min: null, max: null }, fault: why.ok ? onlyOne(text) : why.message };
}

const onlyOne = (text: string): string =>
  `"${text}": from which dose to which? Write "${text} to …", "up to ${text}", or "${text} to ${text}" when it is the only one.`;

function dosesOf(min: string | null, max: string | null, numerals: Numerals) {
  const plain = (text: string | null) => (text === null ? null : plainOrTyped(text, numerals));
  return { value: { min: plain(min), max: plain(max) }, fault: null };
}

/** Every way to take a text as one dose, "to", and another. */
function betweens(text: string): [string, string][] {
  return [...text.matchAll(/\s+to\s+/gi)].map(({ index, 0: between }) => [
    text.slice(0, index),
    text.slice(index + between.length),
  ]);
}

const readEither = (text: string) => {
  const asLiquid = readDose(text, 'liquid');
  return asLiquid.ok ? asLiquid : readDose(text, 'powder').ok ? readDose(text, 'powder') : asLiquid;
};

const isDose = (text: string, numerals: Numerals): boolean => {
  const plain = plainDose(text, numerals);
  return plain.ok && readEither(plain.value).ok;
};

const plainOrTyped = (text: string, numerals: Numerals): string => {
  const plain = plainDose(text, numerals);
  return plain.ok ? plain.value : text;
};

/** The numbers of a dose: the one in front, and the one behind "/" or "per". The name of a substance may have its own. */
function plainDose(text: string, numerals: Numerals) {
  const front = plainNumeral(text, numerals);
  if (!front.ok || /\bppm\b/i.test(front.value)) return front;
  const [all, before, per] = /^(.*?(?:\/|\bper\b)\s*)(\d.*,\d.*|\d[\d.,]*\s*\D*)$/i.exec(front.value) ?? [];
  if (all === undefined || before === undefined || per === undefined || /^\d+\/\d+/.test(front.value)) return front;
  const behind = plainNumeral(per, numerals);
  return behind.ok ? { ok: true as const, value: before + behind.value } : behind;
}

export function rateText({ use, min, max }: Rate): string {
  if (min !== null && max !== null) return `${use}: ${min} to ${max}`;
  if (max !== null) return `${use}: up to ${max}`;
  return min === null ? `${use}:` : `${use}: ${min} or more`;
}

/** "4: 198.00": from that many packs on, one costs that. */
export function readBreak(item: string, numerals: Numerals): CellReading {
  const [, from, price] = /^(\S+?)\s*:\s*(.+)$/.exec(item) ?? [];
  if (from === undefined || price === undefined) {
    return cellFault(
      { atLeast: item },
      `"${item}": write from how many packs on, a colon and the price, such as "4: 198.00".`,
    );
  }
  const atLeast = numberIn(from, numerals);
  const plain = plainNumeral(price, numerals);
  return {
    value: { atLeast: atLeast.value, price: plain.ok ? plain.value : price },
    fault: atLeast.fault ?? (plain.ok ? null : plain.message),
  };
}

export const breakText = ({ atLeast, price }: Break): string => `${atLeast}: ${price}`;
