import { expect, test } from 'vitest';
import { modesInWords } from '@/lib/views/mode-words';
import { product, smallShop } from '../engine/rules/small-shop';

test('a label keeps its modes as they were typed, and says which of them do not simply count', () => {
  const modes = ['irac 4a', 'FRAC 11', 'FRAC NC', 'none', 'M5', 'UN'];
  expect(smallShop({ products: [product('p1', { modes })] }).products.map(modesInWords)).toEqual([
    [
      'irac 4a',
      'FRAC 11 (high resistance risk)',
      'FRAC NC (never a repeat)',
      'none (names no group)',
      'M5 (never a repeat)',
      'UN (never a repeat)',
    ],
  ]);
});
