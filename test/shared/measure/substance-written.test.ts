import { expect, test } from 'vitest';
import { plainSubstance } from '@/shared/measure/substance-written';

test.each([
  ['Nitrogen', 'N'],
  ['Total nitrogen (N)', 'N'],
  ['phosphate', 'P2O5'],
  ['Available phosphate (P2O5)', 'P2O5'],
  ['Available Phosphate (P₂O₅)', 'P2O5'],
  ['phosphorus', 'P'],
  ['Soluble potash', 'K2O'],
  ['potassium', 'K'],
  ['Soluble magnesium (Mg)', 'Mg'],
  ['chelated iron', 'Fe'],
  ['Sulphur', 'S'],
  ['fe', 'Fe'],
  ['k2o', 'K2O'],
  // Lime may be the oxide, the hydroxide or the carbonate.
  ['lime', 'lime'],
  ['humic acids', 'humic acids'],
])('%s in a nutrient is %s', (text, plain) => {
  expect(plainSubstance(text, true)).toBe(plain);
});

test('sulfur against mildew stays sulfur', () => {
  expect(plainSubstance(' sulfur ', false)).toBe('sulfur');
});
