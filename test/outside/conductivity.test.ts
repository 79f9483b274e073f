import { expect, test } from 'vitest';
import { estimateConductivity } from '@/lib/engine/mix/conductivity';
import { conductivityOf, type Ions } from '@/lib/engine/mix/ions';
import { dosed, holding, powder } from '../lib/engine/mix/some-products';

/*
 * Conductivity at 25 °C against published figures. `seen` was read in a copy of the source; `memory` was recalled and not
 * looked up again. `within` is the relative difference allowed.
 */

const STANDARD =
  'Standard KCl solutions for calibrating conductivity cells, CRC Handbook of Chemistry and Physics, by NIST measurements';
const EQUIVALENT = 'Equivalent conductivity of electrolytes in aqueous solution, CRC Handbook of Chemistry and Physics';

/** mmol/L of a salt's ions in a solution of so many mmol per kg of water, whose litre weighs about as much as water. */
const KG_WATER_PER_LITRE = 0.997;
const molal = (mmol: number): Ions => ({ K: mmol * KG_WATER_PER_LITRE, Cl: mmol * KG_WATER_PER_LITRE });

test.each<{ what: string; ions: Ions; published: number; within: number; source: string; basis: string }>([
  { what: '0.01 m KCl', ions: molal(10), published: 1.40823, within: 0.01, source: STANDARD, basis: 'seen' },
  { what: '0.1 m KCl', ions: molal(100), published: 12.8246, within: 0.01, source: STANDARD, basis: 'seen' },
  { what: '0.001 M KCl', ions: { K: 1, Cl: 1 }, published: 0.1469, within: 0.01, source: EQUIVALENT, basis: 'memory' },
  {
    what: '0.005 M CaCl2',
    ions: { Ca: 5, Cl: 10 },
    published: 1.203,
    within: 0.02,
    source: EQUIVALENT,
    basis: 'memory',
  },
  {
    what: '0.01 M KNO3',
    ions: { K: 10, NO3: 10 },
    published: 1.3275,
    within: 0.03,
    source: EQUIVALENT,
    basis: 'memory',
  },
  {
    what: '0.01 M NH4Cl',
    ions: { NH4: 10, Cl: 10 },
    published: 1.4121,
    within: 0.01,
    source: EQUIVALENT,
    basis: 'memory',
  },
  {
    what: '0.01 M KHCO3',
    ions: { K: 10, HCO3: 10 },
    published: 1.1,
    within: 0.02,
    source: EQUIVALENT,
    basis: 'memory',
  },
])('$what ($basis) conducts $published mS/cm', ({ ions, published, within }) => {
  expect(Math.abs(conductivityOf(ions) - published) / published).toBeLessThanOrEqual(within);
});

test('0.005 M MgSO4 (memory, as above) conducts 0.762 mS/cm, and reads a third high, since half of its ions are paired', () => {
  const high = conductivityOf({ Mg: 5, SO4: 5 }) / 0.762;
  expect(high).toBeGreaterThan(1.2);
  expect(high).toBeLessThan(1.45);
});

// What fertiliser labels print for 200 ppm of nitrogen in pure water, from memory, to some 10 %.
test.each([
  { grade: '20-10-20', contents: ['20 % w/w N', '10 % w/w P2O5', '20 % w/w K2O'], dose: '1 g/L', printed: 1.3 },
  { grade: '15.5-0-0 with 19 % Ca', contents: ['15.5 % w/w N', '19 % w/w Ca'], dose: '1.29 g/L', printed: 1.48 },
])('$grade at 200 ppm N (memory) conducts about $printed mS/cm', ({ grade, contents, dose, printed }) => {
  const { mSPerCm } = estimateConductivity({
    recipe: { targetPh: null, ingredients: [dosed(holding(grade, contents, powder), dose)] },
    water: { alkalinityMgPerLCaCO3: 0, pH: 6 },
    limit: null,
  });
  expect(Math.abs((mSPerCm ?? 0) - printed) / printed).toBeLessThanOrEqual(0.1);
});
