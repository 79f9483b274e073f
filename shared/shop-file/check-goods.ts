import { gtinKey, readGtin } from '../measure/gtin';
import { readSize } from '../measure/size';
import type { ShopFile } from './contract';
import { type Path, shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

/** Bar codes given twice, measures that cannot measure, and prices whose days run backwards. */
export function checkGoods({ part }: ReadablePart<ShopFile>, complain: Complain): void {
  checkGtins(part?.products, complain);
  for (const [index, measure] of eachOf(part?.shop?.measures)) {
    checkMeasure(['shop', 'measures', index], measure, complain);
  }
  for (const [index, offer] of eachOf(part?.offers)) checkPrices(['offers', index], offer, complain);
}

function checkGtins(products: Loose<ShopFile['products']>, complain: Complain): void {
  const seen = new Map<string, { where: Path; name: string }>();
  for (const [index, { gtins, name }] of eachOf(products)) {
    for (const [line, text] of eachOf(gtins)) {
      const gtin = readGtin(text);
      if (!gtin.ok) continue;
      const other = seen.get(gtinKey(gtin.value));
      const where = ['products', index, 'gtins', line];
      if (other) {
        complain(
          where,
          `The bar code ${shown(text)} is already that of ${shown(other.name)}. A code belongs to one product.`,
          [other.where],
        );
      } else seen.set(gtinKey(gtin.value), { where, name: name ?? `products[${index}]` });
    }
  }
}

type Measure = NonNullable<Loose<ShopFile['shop']['measures'][number]>>;

/** An ounce on a measure is one of weight: a measuring cup says "fl oz". */
function checkMeasure(path: Path, { holds, step }: Measure, complain: Complain): void {
  const most = holds == null ? null : readSize(holds, 'powder');
  const least = step == null ? null : readSize(step, 'powder');
  if (!most?.ok || !least?.ok) return;
  if (most.value.kind !== least.value.kind) {
    complain(
      [...path, 'step'],
      `${shown(holds)} and ${shown(step)} are a volume and a weight. Write both as what it measures.`,
    );
    return;
  }
  const [a, b] = [amountOf(least.value), amountOf(most.value)];
  if (a.over === 0n)
    complain([...path, 'step'], `${shown(step)} is nothing. Write the smallest step it can be read to.`);
  else if (a.over * b.under > b.over * a.under) {
    complain(
      [...path, 'step'],
      `It holds ${shown(holds)}, and cannot be read to ${shown(step)}, which is more. Write a smaller step.`,
    );
  }
}

const amountOf = (size: Extract<ReturnType<typeof readSize>, { ok: true }>['value']) =>
  size.kind === 'volume' ? size.microlitres : size.milligrams;

type Offer = NonNullable<Loose<ShopFile['offers'][number]>>;

function checkPrices(path: Path, { earlier, since }: Offer, complain: Complain): void {
  let last: string | null = null;
  for (const [index, price] of eachOf(earlier)) {
    if (price.since == null) continue;
    if (last !== null && price.since < last) {
      complain(
        [...path, 'earlier', index, 'since'],
        `This price held from ${price.since}, and stands after one from ${last}. Write the oldest first.`,
      );
    }
    last = price.since;
  }
  if (last !== null && since != null && since < last) {
    complain(
      [...path, 'since'],
      `Today's price holds from ${since}, and an earlier one from ${last}. Put one of the two days right.`,
    );
  }
}
