import type { Mixed } from '@/lib/engine/mix/mix-strength';
import type { Product } from '@/lib/engine/shop';
import { readDose } from '@/shared/measure/dose';
import { type Fields, product, smallShop } from '../rules/small-shop';

/** A product as a shop file has it. What it holds is written "25 % w/w phosphoric acid". */
export function holding(id: string, contents: string[], rest: Fields = {}): Product {
  const fields = { contents: contents.map(readContent), ...rest };
  const [found] = smallShop({ products: [product(id, {}, fields)], recipes: [], lots: [] }).products;
  if (!found) throw new Error('the shop has one product');
  return found;
}

export const acid = (id: string, contents: string[], rest: Fields = {}): Product =>
  holding(id, contents, { kind: 'pH adjuster', ...rest });

export const powder = { form: 'powder' };

/** A line of a mix. */
export function dosed(of: Product, dose: string): Mixed {
  const reading = readDose(dose, of.form);
  if (!reading.ok) throw new Error(reading.message);
  return { product: of, dose: reading.value };
}

function readContent(text: string): Fields {
  const parts = /^([\d.]+) (% w\/w|% w\/v|% v\/v|g\/L|g\/kg|lb\/gal) (.+)$/.exec(text);
  if (!parts) throw new Error(`${text} is no content`);
  return { substance: parts[3], amount: Number(parts[1]), basis: parts[2] };
}
