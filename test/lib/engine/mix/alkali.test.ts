import { expect, test } from 'vitest';
import { alkaliIn, alkaliOf, unreckonedIn } from '@/lib/engine/mix/alkali';
import type { Fields } from '../rules/small-shop';
import { dosed, holding, powder } from './some-products';

const silicate = (contents: string[], rest: Fields = {}) => holding('s', contents, { alkaliSilicate: true, ...rest });

test.each<[string, string[], number]>([
  // 1 mL/L of 94.196 g/L K2O is one mmol/L of it, which is two equivalents.
  ['two equivalents for each mole of K2O', ['94.196 g/L K2O', '200 g/L SiO2'], 2],
  ['small digits are the same oxide', ['94.196 g/L K₂O'], 2],
  ['potassium stated as the element is one each', ['39.098 g/L K'], 1],
  ['sodium silicate is counted the same way', ['61.979 g/L Na2O'], 2],
  ['a label that says it twice says it once', ['94.196 g/L K2O', '78.196 g/L K'], 2],
  ['potassium and sodium add up', ['94.196 g/L K2O', '22.99 g/L Na'], 3],
])('%s', (_, contents, meqPerL) => {
  expect(alkaliIn([dosed(silicate(contents), '1 mL/L')])).toBeCloseTo(meqPerL, 9);
});

test('what is no alkali silicate adds nothing, however much potassium it holds', () => {
  expect(alkaliIn([])).toBe(0);
  expect(alkaliIn([dosed(holding('feed', ['94.196 g/L K2O']), '1 mL/L')])).toBe(0);
});

test('two lines of silicate add up', () => {
  const line = dosed(silicate(['94.196 g/L K2O']), '1 mL/L');
  expect(alkaliIn([line, line])).toBeCloseTo(4, 9);
});

test.each<[string, string[], string, string]>([
  [
    'without its potassium on the label',
    ['20 % w/w SiO2'],
    '1 mL/L',
    'Enter how much K2O is in Product s by weight, from its label.',
  ],
  [
    'in % by weight without a density',
    ['5 % w/w K2O'],
    '1 mL/L',
    'Enter the density of Product s in g/mL, from its label.',
  ],
  ['weighed without a density', ['50 g/L K2O'], '1 g/L', 'Product s at 1 g/L cannot be turned into an amount yet.'],
])('a silicate %s makes the alkali unknown, and says what to enter', (_, contents, dose, missing) => {
  const mix = [dosed(silicate(contents), dose), dosed(silicate(['94.196 g/L K2O']), '1 mL/L')];
  expect(alkaliIn(mix)).toBeNull();
  expect(alkaliOf(mix)).toMatchObject([
    { meqPerL: null, missing },
    { meqPerL: expect.closeTo(2, 9), missing: null },
  ]);
});

test('one unknown of two metals is not nothing', () => {
  expect(alkaliIn([dosed(silicate(['94.196 g/L K2O', '5 % w/w Na2O']), '1 mL/L')])).toBeNull();
});

test('what moves the pH and is not counted is named once', () => {
  const bicarbonate = holding('b', ['85 % w/w potassium bicarbonate'], powder);
  const soap = holding('soap', ['49 % w/w potassium salts of fatty acids'], { densityGPerMl: 1.02 });
  const plain = holding('spinosad', ['0.5 % w/v spinosad']);
  const mix = [dosed(bicarbonate, '2 g/L'), dosed(soap, '1 %'), dosed(plain, '1 mL/L'), dosed(bicarbonate, '1 g/L')];
  expect(unreckonedIn(mix)).toEqual([bicarbonate, soap]);
});
