import fc from 'fast-check';
import { expect, test } from 'vitest';
import { acidDoses } from '@/lib/engine/mix/acid-doses';
import { type Acid, acidNamed, equivalentsPerMole } from '@/lib/engine/mix/acids';
import { alkaliIn } from '@/lib/engine/mix/alkali';
import {
  acidNeeded,
  alkalinityAt,
  type Carbonate,
  carbonateOf,
  phOf,
  type Water,
  waterFault,
  withAlkali,
} from '@/lib/engine/mix/water';
import { balancedPh, totalCarbonate } from './charge-balance';
import { acid, dosed, holding } from './some-products';

const of = (alkalinityMgPerLCaCO3: number, pH: number): Carbonate => {
  const found = carbonateOf({ alkalinityMgPerLCaCO3, pH });
  if (!found) throw new Error('there is such water');
  return found;
};

function named(substance: string): Acid {
  const found = acidNamed(substance);
  if (!found) throw new Error(`${substance} is an acid`);
  return found.acid;
}

/** Spray water as shops have it: purified to very hard, and from a little sour to softened with lime. */
const waters = fc.record({
  alkalinityMgPerLCaCO3: fc.double({ min: 5, max: 500, noNaN: true }),
  pH: fc.double({ min: 5.8, max: 9.2, noNaN: true }),
});
const target = fc.double({ min: 3.5, max: 8, noNaN: true });

const silicate = holding('silicate', ['5 % w/w K2O', '10 % w/w SiO2'], { densityGPerMl: 1.2, alkaliSilicate: true });

test('the worked case: 110 mg/L at pH 7.4 with 24 mg/L K2O from silicate takes 2.1853 meq/L of acid to pH 5.8', () => {
  const alkali = alkaliIn([dosed(silicate, '0.4 mL/L')]);
  expect(alkali).toBeCloseTo((2 * 24) / 94.196, 6);
  const need = acidNeeded(withAlkali(of(110, 7.4), alkali ?? 0), 5.8);
  expect(need).toMatchObject({ verdict: 'add acid', target: 5.8, message: null });
  expect(need.meqPerL).toBeCloseTo(2.1853, 4);
  // 2.1853 meq/L, by 85 % phosphoric acid of 1.685 g/mL, which gives 1.0382 equivalents per mole there: 0.144 mL/L.
  const [dose] = acidDoses([acid('p', ['85 % w/w phosphoric acid'], { densityGPerMl: 1.685 })], need);
  expect(dose?.perLitre).toBeCloseTo(((2.1853 / 1.0382) * 97.994) / (0.85 * 1685), 4);
});

test('the pH of 1,000 acidified waters agrees with the whole charge balance solved another way', () => {
  const constants = (pKas: number[]) => pKas.map((pKa) => 10 ** -pKa);
  const kinds = [
    { constants: constants([2.148, 7.198, 12.35]), strong: 0, known: 'phosphoric' },
    { constants: constants([3.128, 4.761, 6.396]), strong: 0, known: 'citric' },
    { constants: [], strong: 2, known: 'sulfuric' },
    { constants: constants([4.756]), strong: 0, known: 'acetic' },
    { constants: constants([3.86]), strong: 0, known: 'lactic' },
  ] as const;
  const acids = { phosphoric: 'H3PO4', citric: 'C6H8O7', sulfuric: 'H2SO4', acetic: 'CH3COOH', lactic: 'C3H6O3' };
  fc.assert(
    fc.property(
      waters,
      fc.constantFrom(...kinds),
      fc.double({ min: 0, max: 8, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
      (water, kind, mmol, alkali) => {
        const ours = phOf(
          withAlkali(of(water.alkalinityMgPerLCaCO3, water.pH), alkali),
          (pH) => mmol * equivalentsPerMole(named(acids[kind.known]), pH),
        );
        const cations = water.alkalinityMgPerLCaCO3 / 1000 / 50.0435 + alkali / 1000;
        const total = totalCarbonate(water.alkalinityMgPerLCaCO3, water.pH);
        const theirs = balancedPh(cations, total, [{ ...kind, constants: [...kind.constants], mol: mmol / 1000 }]);
        expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(0.01);
      },
    ),
    { numRuns: 1000 },
  );
});

test('water without anything in it has the pH that was measured', () => {
  fc.assert(
    fc.property(waters, (water) => {
      expect(phOf(of(water.alkalinityMgPerLCaCO3, water.pH))).toBeCloseTo(water.pH, 9);
    }),
  );
});

test('more acid is a lower pH, and more alkali a higher one', () => {
  const amount = fc.double({ min: 0, max: 10, noNaN: true });
  fc.assert(
    fc.property(waters, amount, amount, (water, some, more) => {
      const system = of(water.alkalinityMgPerLCaCO3, water.pH);
      const less = phOf(system, () => some);
      expect(phOf(system, () => some + more)).toBeLessThanOrEqual(less);
      expect(phOf(withAlkali(system, more), () => some)).toBeGreaterThanOrEqual(less);
      if (more > 0.001) expect(phOf(system, () => some + more)).toBeLessThan(less);
    }),
  );
});

test('the acid that a target needs brings the water to the target', () => {
  fc.assert(
    fc.property(waters, target, (water, wanted) => {
      const system = of(water.alkalinityMgPerLCaCO3, water.pH);
      const need = acidNeeded(system, wanted);
      if (need.verdict !== 'add acid') {
        expect(water.pH).toBeLessThanOrEqual(wanted + 1e-9);
        return;
      }
      expect(phOf(system, () => need.meqPerL)).toBeCloseTo(wanted, 6);
      expect(alkalinityAt(system, wanted)).toBeCloseTo(system.alkalinity - need.meqPerL, 9);
    }),
  );
});

test('water at its target, or below it, is told apart, and takes no acid', () => {
  const system = of(40, 6);
  expect(acidNeeded(system, 5.99).verdict).toBe('add acid');
  for (const met of [6, 6.09]) {
    expect(acidNeeded(system, met)).toMatchObject({
      verdict: 'none needed',
      meqPerL: 0,
      message: 'The water is at pH 6 already, so no acid is needed.',
    });
  }
  expect(acidNeeded(system, 6.11)).toMatchObject({
    verdict: 'acid cannot raise it',
    meqPerL: 0,
    message: 'The water is at pH 6, below the target of 6.11, and an acid cannot raise it.',
  });
});

test.each<[string, Water, boolean]>([
  ['purified water at pH 7', { alkalinityMgPerLCaCO3: 0, pH: 7 }, true],
  ['purified water with some air in it', { alkalinityMgPerLCaCO3: 0, pH: 5.6 }, true],
  ['an alkalinity that only the kit could not see', { alkalinityMgPerLCaCO3: 0, pH: 9.2 }, true],
  ['a pH that would need more alkalinity than there is', { alkalinityMgPerLCaCO3: 0, pH: 9.5 }, false],
  ['softened water that is all hydroxide', { alkalinityMgPerLCaCO3: 51, pH: 11 }, true],
  ['more hydroxide than alkalinity', { alkalinityMgPerLCaCO3: 48, pH: 11 }, false],
])('%s', (_, water, possible) => {
  expect(carbonateOf(water) !== null).toBe(possible);
  expect(waterFault(water)).toBe(
    possible
      ? null
      : `Water of pH ${water.pH} cannot have an alkalinity as low as ${water.alkalinityMgPerLCaCO3} mg/L as CaCO3. Measure both again.`,
  );
});
