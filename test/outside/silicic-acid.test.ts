import { expect, test } from 'vitest';
import { phOf, silicateShare } from '@/lib/engine/mix/water';

/*
 * Silicic acid against published figures. `seen` was read in a copy of the source; `memory` was recalled and not looked up
 * again.
 */

/** The pH at which a part of it has given off its first proton. */
const pkByHalf = (): number => {
  let [low, high] = [0, 14];
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2;
    if (silicateShare(middle) < 0.5) low = middle;
    else high = middle;
  }
  return low;
};

test.each([
  { source: 'USGS, phreeqc.dat: H4SiO4 = H3SiO4- + H+, log K −9.83', basis: 'seen', pK: 9.83, within: 0.001 },
  {
    source: 'Sjöberg, Hägglund, Nordin and Ingri, Marine Chemistry 13 (1983) 35–44: pK1 9.84 in pure water at 25 °C',
    basis: 'seen',
    pK: 9.84,
    within: 0.02,
  },
])('$source ($basis)', ({ pK, within }) => {
  expect(Math.abs(pkByHalf() - pK)).toBeLessThanOrEqual(within);
});

/*
 * Alexander, Heston and Iler, The Solubility of Amorphous Silica in Water, J. Phys. Chem. 58 (1954) 453–455: about 120 mg/L
 * dissolve in neutral water (seen, its abstract: 0.01 to 0.012 %), more above pH 8 because H3SiO4⁻ is there beside Si(OH)4,
 * whose own amount stays the same (seen); the amounts by pH are from memory. Total = 120 × (1 + ionised ÷ not ionised).
 */
test.each([
  { pH: 9, mgPerL: 138 },
  { pH: 9.5, mgPerL: 180 },
  { pH: 10, mgPerL: 310 },
  { pH: 10.6, mgPerL: 876 },
])('at pH $pH about $mgPerL mg/L of silica dissolve (memory)', ({ pH, mgPerL }) => {
  const share = silicateShare(pH);
  const total = 120 * (1 + share / (1 - share));
  expect(Math.abs(total / mgPerL - 1)).toBeLessThanOrEqual(0.07);
});

/*
 * A salt of a weak acid and a strong base in pure water, as every textbook has it (Harris, Quantitative Chemical Analysis;
 * memory): x² ÷ (F − x) = Kw ÷ Ka. For 0.01 mol/L of NaH3SiO4, Kw ÷ Ka = 10^−13.995 ÷ 10^−9.83 = 6.84 × 10⁻⁵, so
 * x = 7.93 × 10⁻⁴ and the pH is 13.995 + log x = 10.894.
 */
test('0.01 mol/L of sodium silicate, one equivalent to each silicon, is at pH 10.89 (memory)', () => {
  expect(phOf({ alkalinity: 10, total: 0, silica: { least: 10, most: 10 } })).toBeCloseTo(10.894, 2);
});
