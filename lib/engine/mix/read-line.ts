import type { RecipeLine } from '@/shared/forms/recipe';
import { readNumber } from '@/shared/forms/sent-fields';
import { readDose } from '@/shared/measure/dose';
import { listed } from '../rules/in-words';
import type { Ingredient, Product, Shop } from '../shop';
import { sameSubstance } from '../strength/strength-of';
import type { LineFault } from './line-check';

/** A line of a recipe that was typed: the ingredient that it stands for, or what is wrong with it. */
export type LineRead = { ok: true; value: Ingredient } | { ok: false; fault: LineFault };

/**
 * A line of a recipe, as it was typed.
 *
 * Refuses  no product, or one that the shop does not have; what `readDose` refuses; ppm of what the product does not hold
 */
export function readLine(shop: Shop, { product: id, dose: text, use, order }: RecipeLine): LineRead {
  const product = shop.products.find((one) => one.id === id);
  if (!product)
    return wrong('product', id === '' ? 'Choose the product.' : 'This product is not in the shop any more.');
  if (text.trim() === '')
    return wrong('dose', `How much of ${product.name}? Write a dose, such as ${exampleFor(product)}.`);
  const dose = readDose(text.trim(), product.form, shop.drop);
  if (!dose.ok) return wrong('dose', dose.message);
  if (dose.value.kind === 'substance' && !holds(product, dose.value.substance)) {
    return wrong('dose', holdsNo(product, dose.value.substance));
  }
  const place = readNumber(order, '');
  return {
    ok: true,
    value: { product, dose: dose.value, use: use.trim() || null, order: place.ok ? place.value : null },
  };
}

const wrong = (field: LineFault['field'], message: string): LineRead => ({
  ok: false,
  fault: { kind: 'fault', field, message },
});

const exampleFor = ({ form }: Product): string => (form === 'liquid' ? '"2 tsp/gal"' : '"1.5 g/L"');

const holds = ({ contents }: Product, substance: string): boolean =>
  contents.some((content) => sameSubstance(content.substance, substance));

function holdsNo({ name, contents }: Product, substance: string): string {
  const there = [...new Set(contents.map((content) => content.substance))];
  const known = there.length > 0 ? `It holds ${listed(there)}.` : 'Nothing is entered as its contents yet.';
  return `${name} holds no "${substance}". ${known} Name one of those, or write the dose by volume or weight.`;
}
