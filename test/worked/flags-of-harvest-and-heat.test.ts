import { expect, test } from 'vitest';
import { type Case, flagsOf, TODAY } from './flag-case';

/*
 * More rules, each in its simplest case, and the nearest case in which it does not fire. Source of every case here: worked by
 * hand from the definitions of the shop file.
 */

const COOL = Array.from({ length: 12 }, () => 20);

test.each<Case & { name: string; flags: string[] }>([
  // 1 June and 7 days are 8 June.
  {
    name: 'seven days before a harvest on the eighth are kept',
    label: { phiDays: 7 },
    harvestOn: '2026-06-08',
    flags: [],
  },
  {
    name: 'a harvest on the seventh stops',
    label: { phiDays: 7 },
    harvestOn: '2026-06-07',
    flags: ['stop phi-reaches-harvest'],
  },
  { name: 'an unknown interval before a harvest warns', harvestOn: '2026-06-08', flags: ['warn phi-reaches-harvest'] },

  {
    name: 'oil and sulfur in one tank stop',
    second: { name: 'Winter oil', label: { reiHours: 0 } },
    substance: 'sulfur',
    monthlyHighsC: COOL,
    flags: ['stop oil-near-sulfur'],
  },
  { name: 'an oil in a cool month raises nothing', substance: 'mineral oil', monthlyHighsC: COOL, flags: [] },
  {
    name: 'in June, when it gets as warm as 32 °C, it warns',
    substance: 'mineral oil',
    monthlyHighsC: COOL.with(5, 32),
    flags: ['warn too-hot'],
  },
  { name: 'where nobody knows how warm it gets, that is noted', substance: 'mineral oil', flags: ['note too-hot'] },

  { name: 'half an hour of spraying is in time for half an hour', useWithinHours: 0.5, flags: [] },
  { name: 'and too long for 29 minutes', useWithinHours: 0.49, flags: ['warn mixed-too-long'] },
])('$name', ({ flags, name: _, ...given }) => {
  expect(flagsOf(given).toSorted()).toEqual(flags.map((flag) => `${flag} ${TODAY}`).toSorted());
});
