import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FAULTS } from './faults';

test('the text of every fault still stands in its file, once', () => {
  const lost = FAULTS.filter(({ file, find, put }) => {
    const text = readFileSync(`${import.meta.dirname}/../../${file}`, 'utf8');
    return text.split(find).length !== 2 || find === put;
  });
  expect(lost.map(({ formula, file }) => `${formula} (${file})`)).toEqual([]);
});
