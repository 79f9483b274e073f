import { type Dose, readDose } from '../measure/dose';
import { compare } from '../quantity/exact';
import type { Ids } from './check-ids';
import type { ShopFile } from './contract';
import { type Path, pathText, shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

type Product = NonNullable<Loose<ShopFile['products'][number]>>;

/** Doses that cannot be of their product, and label ranges whose ends are the wrong way round. */
export function checkDoses({ part }: ReadablePart<ShopFile>, ids: Ids, complain: Complain): void {
  for (const [index, product] of eachOf(part?.products)) {
    checkContents(['products', index, 'contents'], product, complain);
    checkLabel(['products', index], product, complain);
  }
  const check = (path: Path, id: string | null | undefined, dose: string | null | undefined) => {
    const place = id == null ? undefined : ids.products.get(id);
    const product = place === undefined ? null : part?.products?.[place];
    if (place === undefined || !product) return;
    checkedDose([...path, 'dose'], dose, product, ['products', place], complain);
  };
  for (const [index, recipe] of eachOf(part?.recipes)) {
    for (const [line, { product, dose }] of eachOf(recipe.ingredients)) {
      check(['recipes', index, 'ingredients', line], product, dose);
    }
  }
  for (const [index, { madeFrom }] of eachOf(part?.products)) {
    for (const [line, { product, dose }] of eachOf(madeFrom))
      check(['products', index, 'madeFrom', line], product, dose);
  }
}

/** A substance cannot be more than the whole. In % w/v it can pass 100, since a litre of a heavy acid weighs more than one kg. */
const WHOLE = { '% w/w': 100, '% v/v': 100, '% w/v': 500, 'g/kg': 1_000, 'g/L': 5_000, 'lb/gal': 50 } as const;

function checkContents(path: Path, { contents }: Product, complain: Complain): void {
  for (const [index, { amount, basis }] of eachOf(contents)) {
    if (amount == null || basis == null || amount <= WHOLE[basis]) continue;
    complain(
      [...path, index, 'amount'],
      `${amount} ${basis} is more than there can be. Write at most ${WHOLE[basis]}, or another basis.`,
    );
  }
}

function checkLabel(path: Path, product: Product, complain: Complain): void {
  const label = [...path, 'label'];
  for (const [index, rate] of eachOf(product.label?.rates)) {
    const at = [...label, 'rates', index];
    const min = checkedDose([...at, 'min'], rate.min, product, path, complain);
    const max = checkedDose([...at, 'max'], rate.max, product, path, complain);
    if (min && max && isAbove(min, max)) {
      complain(
        at,
        `The lowest dose, ${shown(min.text)}, is above the highest, ${shown(max.text)}. Write the lower one into min.`,
      );
    }
  }
  const { min, max } = product.label?.sprayPh ?? {};
  if (min != null && max != null && min > max) {
    complain(
      [...label, 'sprayPh'],
      `The lowest pH, ${min}, is above the highest, ${max}. Write the lower one into min.`,
    );
  }
}

/** The dose that a text stands for, having complained when it cannot be one of this product. */
function checkedDose(
  path: Path,
  text: string | null | undefined,
  product: Product,
  productPath: Path,
  complain: Complain,
): Dose | null {
  if (text == null || product.form == null) return null;
  const dose = readDose(text, product.form);
  if (!dose.ok) {
    complain(path, dose.message);
    return null;
  }
  if (dose.value.kind === 'substance') checkSubstance(path, dose.value.substance, product, productPath, complain);
  return dose.value;
}

function checkSubstance(path: Path, substance: string, product: Product, productPath: Path, complain: Complain): void {
  const contents = [...productPath, 'contents'];
  const named = [...eachOf(product.contents)].flatMap(([, content]) => content.substance ?? []);
  if (named.some((each) => each.trim().toLowerCase() === substance.trim().toLowerCase())) return;
  const there =
    named.length > 0 ? `It holds ${named.slice(0, 5).map(shown).join(', ')}.` : 'Nothing is written in its contents.';
  const unreadable = (product.contents ?? []).map((_, index) => [...contents, index, 'substance']);
  complain(
    path,
    `This product holds no ${shown(substance)}. ${there} Name one of those, add the substance to ${pathText(contents)}, or write the dose by volume or weight.`,
    [contents, ...unreadable],
  );
}

/** Only doses of one kind are compared: whether a weight is more than a volume depends on the density. */
function isAbove(a: Dose, b: Dose): boolean {
  if (a.kind === 'volume' && b.kind === 'volume') return compare(a.mlPerLitre, b.mlPerLitre) > 0;
  if (a.kind === 'mass' && b.kind === 'mass') return compare(a.gPerLitre, b.gPerLitre) > 0;
  if (a.kind === 'perArea' && b.kind === 'perArea') {
    return a.measure === b.measure && compare(a.perSquareMetre, b.perSquareMetre) > 0;
  }
  if (a.kind !== 'substance' || b.kind !== 'substance') return false;
  return a.substance.toLowerCase() === b.substance.toLowerCase() && compare(a.mgPerLitre, b.mgPerLitre) > 0;
}
