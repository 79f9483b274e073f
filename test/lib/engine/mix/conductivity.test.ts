import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimateConductivity } from '@/lib/engine/mix/conductivity';
import { conductivityOf, IONS, type Ion, netCharge, together } from '@/lib/engine/mix/ions';
import type { Mixed } from '@/lib/engine/mix/mix-strength';
import { acid, dosed, holding, powder } from './some-products';

const WATER = { alkalinityMgPerLCaCO3: 100, pH: 7.5 };
const estimate = (
  mix: Mixed[],
  rest: Partial<Parameters<typeof estimateConductivity>[0]> & { targetPh?: number } = {},
) =>
  estimateConductivity({
    recipe: { targetPh: rest.targetPh ?? null, ingredients: mix },
    water: WATER,
    limit: null,
    ...rest,
  });

const feed = holding('feed', ['20 % w/w N', '10 % w/w P2O5', '20 % w/w K2O'], powder);
const citric = acid('citric', ['99 % w/w citric acid'], powder);

// 2 meq/L of calcium bicarbonate: 2 × (59.47 + 44.5) is 208 µS/cm, which 3 mmol/L of ionic strength slow by some 5 %.
test('plain water conducts by its alkalinity, and says that this is all that is known of it', () => {
  const { mSPerCm, atLeast, rests, unknown } = estimate([]);
  expect(mSPerCm).toBeGreaterThan(0.19);
  expect(mSPerCm).toBeLessThan(0.208);
  expect(mSPerCm).toBe(atLeast);
  expect(unknown).toEqual([]);
  expect(rests).toContain(
    "The water's alkalinity is counted as bicarbonate with calcium. Its chloride, sulfate and sodium are not known and not counted.",
  );
});

test('nitrogen of a 20-10-20 is three parts nitrate to two ammonium, and is said so', () => {
  // 200 mg/L N is 14.279 mmol; K 4.246 less H2PO4 1.409 leaves 2.84 more nitrate than ammonium at a low pH.
  const { rests } = estimate([dosed(feed, '1 g/L')], { targetPh: 5 });
  expect(rests.at(-1)).toMatch(/^Nitrogen is counted as 59\.9\d? % nitrate and the rest ammonium/);
});

test.each<[string, string[], RegExp]>([
  ['all of it nitrate beside plenty of calcium', ['1 g/L N', '20 g/L Ca'], /as 100 % nitrate/],
  ['all of it ammonium beside plenty of sulfur', ['1 g/L N', '20 g/L S'], /as 0 % nitrate/],
])('nitrogen is %s', (_, contents, said) => {
  expect(estimate([dosed(holding('n', contents), '5 mL/L')]).rests.at(-1)).toMatch(said);
});

test('more of anything conducts more, and acid conducts more than the carbonate it drives out', () => {
  const at = (mix: Mixed[]) => estimate(mix).atLeast;
  expect(at([dosed(feed, '0.5 g/L')])).toBeGreaterThan(at([]));
  expect(at([dosed(feed, '1 g/L')])).toBeGreaterThan(at([dosed(feed, '0.5 g/L')]));
  expect(at([dosed(citric, '2 g/L')])).toBeGreaterThan(at([dosed(citric, '0.5 g/L')]));
});

test('the phosphorus of phosphoric acid is not counted a second time as P2O5', () => {
  const twice = acid('twice', ['100 g/L phosphoric acid', '72.4 g/L P2O5', '5 g/L N']);
  const once = acid('once', ['100 g/L phosphoric acid', '5 g/L N']);
  const [a, b] = [twice, once].map((of) => estimate([dosed(of, '1 mL/L')]).atLeast);
  expect(a).toBe(b);
});

test('silicate brings its potassium once, with the alkali that it adds', () => {
  const silicate = holding('silicate', ['94.196 g/L K2O', '200 g/L SiO2'], { alkaliSilicate: true });
  const { mSPerCm, rests } = estimate([dosed(silicate, '1 mL/L')], { targetPh: 6 });
  // Calcium bicarbonate and 2 meq/L of potassium with the acid that holds pH 6, near 2 × (73.48 + 76.31) µS/cm more.
  expect(mSPerCm).toBeGreaterThan(0.42);
  expect(mSPerCm).toBeLessThan(0.55);
  expect(rests.some((said) => said.startsWith('Nitrogen'))).toBe(false);
});

test.each<[string, Mixed[], Partial<Parameters<typeof estimateConductivity>[0]>, string]>([
  ['water that nobody measured', [], { water: null }, 'The water was never measured, so what it holds is not counted.'],
  [
    'water that cannot be',
    [],
    { water: { alkalinityMgPerLCaCO3: 0, pH: 10 } },
    'Water of pH 10 cannot have an alkalinity as low as 0 mg/L as CaCO3. Measure both again.',
  ],
  [
    'a nutrient of unknown strength',
    [dosed(holding('d', ['5 % w/w K2O']), '1 mL/L')],
    {},
    'How much K is in the spray is not known.',
  ],
  [
    'silicate of unknown strength',
    [dosed(holding('s', ['5 % w/w K2O'], { alkaliSilicate: true }), '1 mL/L')],
    {},
    'Enter the density of Product s in g/mL, from its label.',
  ],
  [
    'an acid of unknown strength',
    [dosed(acid('p', ['25 % w/w H3PO4']), '1 mL/L')],
    {},
    'How much acid comes with Product p is not known.',
  ],
  [
    'bicarbonate',
    [dosed(holding('b', ['85 % w/w potassium bicarbonate'], powder), '2 g/L')],
    {},
    'Which ions come with Product b is not known.',
  ],
])('%s leaves the conductivity unknown, not lower', (_, mix, rest, said) => {
  const { mSPerCm, unknown, atLeast } = estimate([dosed(feed, '0.2 g/L'), ...mix], rest);
  expect(mSPerCm).toBeNull();
  expect(atLeast).toBeGreaterThan(0.1);
  expect(unknown).toContain(said);
});

test('a trace element of unknown strength leaves it known', () => {
  expect(estimate([dosed(holding('fe', ['6 % w/w Fe']), '1 mL/L')]).unknown).toEqual([]);
});

test('the limit is exceeded above it, kept at it, and unknown when more may come', () => {
  const { atLeast } = estimate([dosed(feed, '1 g/L')]);
  const over = (limit: number | null, mix: Mixed[] = []) =>
    estimate([dosed(feed, '1 g/L'), ...mix], { limit }).overLimit;
  expect(over(null)).toBeNull();
  expect(over(atLeast)).toBe(false);
  expect(over(atLeast * 0.999)).toBe(true);
  const bicarbonate = dosed(holding('b', ['85 % w/w potassium bicarbonate'], powder), '2 g/L');
  expect(over(atLeast * 2, [bicarbonate])).toBeNull();
  expect(over(atLeast * 0.5, [bicarbonate])).toBe(true);
});

test('ions together conduct more than either alone, less than both apart, and never less than nothing', () => {
  const salts: [Ion, Ion][] = [
    ['K', 'Cl'],
    ['Ca', 'NO3'],
    ['NH4', 'SO4'],
    ['Mg', 'H2PO4'],
  ];
  const salt = fc
    .tuple(fc.constantFrom(...salts), fc.double({ min: 0.01, max: 20, noNaN: true }))
    .map(([[cation, anion], meq]) => ({
      [cation]: meq / Math.abs(IONS[cation].charge),
      [anion]: meq / Math.abs(IONS[anion].charge),
    }));
  fc.assert(
    fc.property(salt, salt, (one, other) => {
      const both = together(one, other);
      expect(netCharge(both)).toBeCloseTo(0, 9);
      const [a, b, sum] = [conductivityOf(one), conductivityOf(other), conductivityOf(both)];
      expect(sum).toBeGreaterThan(Math.max(a, b));
      expect(sum).toBeLessThan(a + b);
    }),
  );
  expect(conductivityOf({})).toBe(0);
});
