import { expect, test } from 'vitest';
import { sprayByLeaves, sprayByTrials } from '@/lib/engine/bench/spray-trials';

const trial = (plants: string, putIn: string, left: string) => ({ plants, putIn, left });
const NOTHING = trial('', '', '');

test('spraying twelve plants with a litre, of which 640 mL are left, gives 30 mL a plant', () => {
  expect(sprayByTrials([trial('12', '1 L', '640 mL'), NOTHING])).toEqual({
    ok: true,
    value: { mlPerPlant: 30, spread: null, rests: 'one trial on 12 plants' },
  });
});

test('several trials count by their plants, and show how far apart they were', () => {
  // 100 mL on 10 plants and 60 mL on 2: 160 mL on 12, while the two trials say 10 and 30.
  expect(sprayByTrials([trial('10', '200 mL', '100 mL'), trial('2', '60 mL', '')])).toEqual({
    ok: true,
    value: { mlPerPlant: 13.33, spread: { least: 10, most: 30 }, rests: '2 trials on 12 plants' },
  });
});

test('a trial that cannot be is named with what is wrong in it', () => {
  const says = (...trials: ReturnType<typeof trial>[]) => {
    const reading = sprayByTrials(trials);
    return reading.ok ? '' : reading.message;
  };
  expect(says(NOTHING)).toContain('Spray a few plants');
  expect(says(trial('3', '1 L', '500 mL'), trial('3', '1 L', '2 L'))).toMatch(/^Trial 2: More is left/);
  expect(says(trial('3', '1', '0 mL'))).toContain('no unit');
  expect(says(trial('3.5', '1 L', ''))).toContain('how many plants');
});

test('leaves of 450 cm² sprayed on both sides at 1.2 mL on 100 cm² take 10.8 mL, and say on what that rests', () => {
  const leaves = { areaCm2: '450', sides: '2', mlPer100Cm2: '1.2', source: 'own weighing' } as const;
  expect(sprayByLeaves(leaves)).toEqual({
    ok: true,
    value: { mlPerPlant: 10.8, spread: null, rests: expect.stringContaining('own weighing') },
  });
  expect(sprayByLeaves({ ...leaves, sides: '1' })).toMatchObject({ value: { mlPerPlant: 5.4 } });
  expect(sprayByLeaves({ ...leaves, source: ' ' })).toMatchObject({ ok: false });
  expect(sprayByLeaves({ ...leaves, areaCm2: '' })).toMatchObject({ ok: false });
});
