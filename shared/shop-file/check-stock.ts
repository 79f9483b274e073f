import { readSize, type Size, stockOf } from '../measure/size';
import type { Reading } from '../outcome';
import { read, unreadable } from '../outcome';
import type { Stock } from '../quantity/amounts';
import type { Ids } from './check-ids';
import type { ShopFile } from './contract';
import { type Path, pathText, shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

type Product = NonNullable<Loose<ShopFile['products'][number]>>;
type Lot = NonNullable<Loose<ShopFile['lots'][number]>>;

/** A product that something refers to, with its place in the file. */
type Referred = { product: Product; path: Path };

/** Packs that cannot be of their product, and lots that hold more, or were opened sooner, than they can. */
export function checkStock({ part }: ReadablePart<ShopFile>, ids: Ids, complain: Complain): void {
  const find = (id: string | null | undefined): Referred | null => {
    const index = id == null ? undefined : ids.products.get(id);
    const product = index === undefined ? null : part?.products?.[index];
    return product && index !== undefined ? { product, path: ['products', index] } : null;
  };
  for (const [index, offer] of eachOf(part?.offers)) {
    measured(['offers', index, 'pack'], offer.pack, find(offer.product), complain, 'A pack holds more than nothing.');
    checkBreaks(['offers', index, 'breaks'], offer.breaks, complain);
  }
  for (const [index, lot] of eachOf(part?.lots)) {
    checkAmounts(['lots', index], lot, find(lot.product), complain);
    checkDays(['lots', index], lot, complain);
  }
  checkHowMany(part?.lots, complain);
  for (const [index, { products, acid }] of eachOf(part?.applications)) {
    const at = ['applications', index];
    for (const [line, { product, amount }] of eachOf(products)) {
      measured([...at, 'products', line, 'amount'], amount, find(product), complain, null);
    }
    measured([...at, 'acid', 'amount'], acid?.amount, find(acid?.product), complain, null);
  }
}

export const MOST_CONTAINERS = 100_000;

function checkHowMany(lots: Loose<ShopFile['lots']>, complain: Complain): void {
  let containers = 0;
  for (const [index, { count }] of eachOf(lots)) {
    containers += count ?? 1;
    if (containers <= MOST_CONTAINERS) continue;
    complain(
      ['lots', index, 'count'],
      `With this there are more than ${MOST_CONTAINERS} containers; no shelf holds that many. Write fewer.`,
    );
    return;
  }
}

type Breaks = readonly (Loose<ShopFile['offers'][number]['breaks'][number]> | undefined)[] | null | undefined;

function checkBreaks(path: Path, breaks: Breaks, complain: Complain): void {
  const seen = new Set<number>();
  for (const [index, { atLeast }] of eachOf(breaks)) {
    if (atLeast == null) continue;
    if (seen.has(atLeast))
      complain([...path, index, 'atLeast'], `There is already a price from ${atLeast} packs on. Keep one.`);
    seen.add(atLeast);
  }
}

/** The stock that a size stands for, having complained when it cannot be told. */
function measured(
  path: Path,
  text: string | null | undefined,
  referred: Referred | null,
  complain: Complain,
  whenNothing: string | null,
): Stock | null {
  const form = referred?.product.form;
  if (text == null || !referred || form == null) return null;
  const size = readSize(text, form);
  if (!size.ok) {
    complain(path, size.message);
    return null;
  }
  const stock = stockIn(size.value, referred);
  if (!stock.ok) {
    complain(path, stock.message, [[...referred.path, form === 'liquid' ? 'densityGPerMl' : 'gramsPerTeaspoon']]);
    return null;
  }
  if (stock.value === 0 && whenNothing) complain(path, `${shown(text)} is nothing. ${whenNothing} Write its size.`);
  return stock.value;
}

function stockIn(size: Size, { product, path }: Referred): Reading<Stock> {
  const form = product.form === 'powder' ? 'powder' : 'liquid';
  const stock = stockOf(size, {
    form,
    densityGPerMl: product.densityGPerMl ?? null,
    gramsPerTeaspoon: product.gramsPerTeaspoon ?? null,
  });
  if (stock !== null) return read(stock);
  return unreadable(
    form === 'liquid'
      ? `${shown(size.text)} is a weight, and this product is a liquid. Write a volume, such as "1 qt", or its density into ${pathText([...path, 'densityGPerMl'])}.`
      : `${shown(size.text)} is a volume, and this product is a powder. Write a weight, such as "250 g", or what a level teaspoon of it weighs into ${pathText([...path, 'gramsPerTeaspoon'])}.`,
  );
}

function checkAmounts(path: Path, lot: Lot, referred: Referred | null, complain: Complain): void {
  const pack = measured([...path, 'pack'], lot.pack, referred, complain, 'A container can hold something.');
  const remaining = measured([...path, 'remaining'], lot.remaining, referred, complain, null);
  const count = lot.count ?? 1;
  if (count > 1 && lot.openedOn != null) complain([...path, 'openedOn'], severalAreFull(count), [[...path, 'count']]);
  if (pack === null || remaining === null || pack === 0) return;
  if (count > 1 && !isFull(remaining, pack, count)) {
    complain([...path, 'remaining'], severalAreFull(count), [[...path, 'count']]);
  } else if (count === 1 && remaining > pack) {
    complain(
      [...path, 'remaining'],
      `${shown(lot.remaining)} is more than the pack of ${shown(lot.pack)} holds. Write what is left in it, or null when it is full.`,
      [[...path, 'count']],
    );
  }
}

/** The size of each container is rounded once, so that their sum may be that much off the sum as it was typed. */
const isFull = (remaining: Stock, pack: Stock, count: number): boolean => {
  const off = remaining - pack * count;
  return off <= count && off >= -count;
};

const severalAreFull = (count: number): string =>
  `A lot of ${count} is ${count} full containers. Give an opened one a line of its own, with a count of 1.`;

function checkDays(path: Path, lot: Lot, complain: Complain): void {
  const { receivedOn, openedOn } = lot;
  if (receivedOn == null || openedOn == null || openedOn >= receivedOn) return;
  complain(
    [...path, 'openedOn'],
    `It was opened on ${openedOn}, before it was received on ${receivedOn}. Put one of the two days right.`,
  );
}
