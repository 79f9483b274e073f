import { expect, test } from 'vitest';
import { parseShopFile } from '@/shared/shop-file/parse';
import { changed, type Json, smallShop } from './small-shop';

const RATE = ['products', 0, 'label', 'rates', 0];
const ranged = (min: string, max: string): Json =>
  changed(changed(smallShop(), [...RATE, 'min'], min), [...RATE, 'max'], max);
const paths = (file: Json) => {
  const parsed = parseShopFile(JSON.stringify(file));
  return parsed.ok ? [] : parsed.faults.map(({ path }) => path);
};

test('a label may give its rates per area, and a recipe dose so', () => {
  expect(paths(ranged('4 fl oz/1000 sq ft', '1 pt/1000 sq ft'))).toEqual([]);
  expect(paths(changed(smallShop(), ['recipes', 0, 'ingredients', 0, 'dose'], '2 mL/m2'))).toEqual([]);
});

test('a range per area upside down is refused, and one of a weight and a volume is left to the label', () => {
  expect(paths(ranged('2 mL/m2', '10 L/ha'))).toEqual(['products[0].label.rates[0]']);
  expect(paths(ranged('2 mL/m2', '2 mL/m2'))).toEqual([]);
  expect(paths(ranged('2 g/m2', '1 mL/m2'))).toEqual([]);
});
