import fc from 'fast-check';
import { expect, test } from 'vitest';
import { silicaIn } from '@/lib/engine/mix/alkali';
import { mixWater, sprayPhOf } from '@/lib/engine/mix/spray-ph';
import { acidNeeded, alkalinityAt, phOf, silicateShare, sureAcidNeeded, surePhOf } from '@/lib/engine/mix/water';
import { runs } from '../../../runs';
import { dosed, holding } from './some-products';

const WATER = { alkalinityMgPerLCaCO3: 110, pH: 7.4 };
const silicate = (...contents: string[]) =>
  holding('silicate', contents, { densityGPerMl: 1.2, alkaliSilicate: true, name: 'Silicate' });
const waterWith = (dose: string, ...contents: string[]) => {
  const found = mixWater([dosed(silicate(...contents), dose)], WATER);
  if (!found) throw new Error('such water can be');
  return found;
};

/*
 * Worked by hand at 25 °C: 3 mL/L of a silicate of 1.1 g/mL with 7.8 % SiO2 and 3.7 % K2O brings 3 × 1.1 × 78 = 257.4 mg/L
 * SiO2, which is 257.4 × 0.46744 ÷ 28.085 = 4.2841 mmol/L, and 122.1 mg/L K2O, 2 × 122.1 ÷ 94.196 = 2.5925 meq/L.
 */
test('silica and alkali of 3 mL/L of a potassium silicate', () => {
  const product = holding('silicate', ['7.8 % w/w SiO2', '3.7 % w/w K2O'], {
    densityGPerMl: 1.1,
    alkaliSilicate: true,
  });
  const mix = [dosed(product, '3 mL/L')];
  expect(silicaIn(mix).least).toBeCloseTo(4.2841, 4);
  expect(silicaIn(mix).most).toBe(silicaIn(mix).least);
  const water = mixWater(mix, { alkalinityMgPerLCaCO3: 0, pH: 7 });
  expect(water?.alkalinity).toBeCloseTo(2.5925, 4);
  /*
   * In water without carbonate: 4.2842 ÷ (1 + 10^(9.83 − pH)) + 10^(3 + pH − 13.995) = 2.5925. At pH 9.93 the share is
   * 1 ÷ (1 + 10^−0.1) = 0.5573, which is 2.3875, and OH⁻ 0.0861; at 9.99 it is 0.5910, 2.5320, and 0.0989: 2.6309. Between
   * them, at 9.974: 0.5821, 2.4938, and 0.0953: 2.5891.
   */
  expect(water && phOf(water)).toBeCloseTo(9.975, 2);
});

test('a silicate raises the pH less than its alkali alone would, and takes as much acid to a target below 7', () => {
  const [known, alone] = [waterWith('3 mL/L', '5 % w/w K2O', '10 % w/w SiO2'), waterWith('3 mL/L', '5 % w/w K2O')];
  expect(phOf(alone)).toBeGreaterThan(11);
  expect(phOf(known)).toBeLessThan(10.3);
  expect(acidNeeded(known, 5.8).meqPerL).toBeCloseTo(acidNeeded(alone, 5.8).meqPerL, 2);
  expect(acidNeeded(known, 9).meqPerL).toBeLessThan(acidNeeded(alone, 9).meqPerL - 0.5);
});

test('where the SiO2 was not entered nobody can say a high pH, and everybody the acid to a low target', () => {
  const water = waterWith('3 mL/L', '5 % w/w K2O');
  expect(surePhOf(water)).toBeNull();
  expect(sureAcidNeeded(water, 5.8)?.meqPerL).toBe(acidNeeded(water, 5.8).meqPerL);
  expect(sureAcidNeeded(water, 9)).toBeNull();
  // A trace of it moves nothing.
  expect(surePhOf(waterWith('0.001 mL/L', '5 % w/w K2O'))).toBeCloseTo(7.4, 1);
  const recipe = { targetPh: null, ingredients: [dosed(silicate('5 % w/w K2O'), '3 mL/L')] };
  expect(sprayPhOf(recipe, WATER)).toBeNull();
});

test('silica as the label names it: SiO2, SiO₂ or Si', () => {
  const mmol = (...contents: string[]) => silicaIn([dosed(silicate(...contents), '1 mL/L')]).least;
  expect(mmol('100 g/L SiO2', '50 g/L K2O')).toBeCloseTo(100 / 60.083, 3);
  expect(mmol('100 g/L SiO₂', '50 g/L K2O')).toBe(mmol('100 g/L SiO2', '50 g/L K2O'));
  expect(mmol('46.744 g/L Si', '50 g/L K2O')).toBeCloseTo(mmol('100 g/L SiO2', '50 g/L K2O'), 9);
});

test('the pH found is the one at which the alkalinity balances, and more silica never raises it', () => {
  const some = fc.record({
    alkalinity: fc.double({ min: 0, max: 20, noNaN: true }),
    total: fc.double({ min: 0, max: 10, noNaN: true }),
    silica: fc.double({ min: 0, max: 30, noNaN: true }),
    more: fc.double({ min: 0, max: 30, noNaN: true }),
  });
  fc.assert(
    fc.property(some, ({ alkalinity, total, silica, more }) => {
      const water = { alkalinity, total, silica: { least: silica, most: silica } };
      const pH = phOf(water);
      expect(alkalinityAt(water, pH)).toBeCloseTo(alkalinity, 6);
      expect(phOf({ ...water, silica: { least: silica + more, most: silica + more } })).toBeLessThanOrEqual(pH + 1e-9);
    }),
    { numRuns: runs(200, 3000) },
  );
});

test('half of silicic acid has given off its proton at its pK', () => {
  expect(silicateShare(9.83)).toBeCloseTo(0.5, 12);
});
