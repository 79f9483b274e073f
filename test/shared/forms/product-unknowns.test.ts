import { expect, test } from 'vitest';
import { MeasureDrop, WeighSpoon } from '@/shared/forms/measuring';
import { unknownsOf } from '@/shared/forms/product-unknowns';

const unknown = (fields: Record<string, string>) => unknownsOf(fields).map(({ field }) => field);
const KNOWN = {
  ...{ kind: 'insecticide', form: 'liquid', 'label.reiHours': '0' },
  ...{ 'contents[0].substance': 'soap', 'contents[0].amount': '49', 'contents[0].basis': '% w/v' },
  ...{ 'label.rates[0].use': 'ferns', 'label.rates[0].max': '2 tsp/gal' },
  ...{ 'shelfLife.unopenedDays': '700', 'shelfLife.openedDays': '365' },
};

test('an interval that nobody entered keeps people out and stands first, and one of 0 h is known', () => {
  expect(unknownsOf({ ...KNOWN, 'label.reiHours': ' ' })[0]).toMatchObject({ field: 'label.reiHours', grave: true });
  expect(unknown(KNOWN)).toEqual([]);
});

test('a powder lacks the weight of its teaspoon, a liquid its density only where something goes by weight', () => {
  expect(unknown({ ...KNOWN, form: 'powder' })).toEqual(['gramsPerTeaspoon']);
  expect(unknown({ ...KNOWN, form: 'powder', gramsPerTeaspoon: '4.9' })).toEqual([]);
  expect(unknown({ ...KNOWN, 'contents[0].basis': '% w/w' })).toEqual(['densityGPerMl']);
  expect(unknown({ ...KNOWN, 'label.rates[0].max': '2 oz wt/gal' })).toEqual(['densityGPerMl']);
  expect(unknown({ ...KNOWN, 'label.rates[0].max': '2 g/m2', densityGPerMl: '1.1' })).toEqual([]);
});

test('with nothing entered, each unknown says what it prevents', () => {
  const says = unknownsOf({ kind: 'pH adjuster', form: 'liquid' }).map((one) => one.says);
  expect(says).toEqual([
    expect.stringMatching(/^People keep out/),
    expect.stringMatching(/target pH.*which acid/),
    expect.stringMatching(/^No dose is judged/),
    expect.stringMatching(/^Nobody can tell when it dies/),
  ]);
  expect(unknown({ ...KNOWN, 'shelfLife.openedDays': '' })).toEqual(['shelfLife.openedDays']);
});

test('readings come out of a form in their order, and a form with anything else is not read', () => {
  const about = { commandId: 'a'.repeat(32), shop: 's', pieces: ' 5 ', way: 'each' };
  const drop = { ...about, id: '', standing: '', 'readings[1]': '2', 'readings[0]': '1', 'readings[10]': '' };
  expect(MeasureDrop.parse(drop)).toMatchObject({ pieces: 5, readings: ['1', '2', ''] });
  expect(MeasureDrop.safeParse({ ...drop, more: '1' }).success).toBe(false);
  const spoon = { ...drop, id: 'p', standing: 'f'.repeat(64) };
  expect(WeighSpoon.parse(spoon)).toMatchObject({ id: 'p', readings: ['1', '2', ''] });
  for (const pieces of ['0', '', '1.5', '-1', '1e3']) {
    expect(WeighSpoon.safeParse({ ...spoon, pieces }).error?.issues[0]?.path).toEqual(['pieces']);
  }
});
