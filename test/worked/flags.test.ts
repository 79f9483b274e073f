import { expect, test } from 'vitest';
import { type Case, flagsOf, STOCK, TODAY } from './flag-case';

/*
 * Each rule in its simplest case, and the nearest case in which it does not fire. Source of every case here: worked by
 * hand from the definitions of the shop file.
 */

const rates = [{ use: 'foliar', min: '4 mL/L', max: '8 mL/L' }];
const on = (day: string): [string, string] => [`${day}T12:00:00Z`, `${day}T12:30:00Z`];

const sprayPh = { min: 5, max: 7 };

test.each<Case & { name: string; flags: string[] }>([
  { name: 'a plain spraying raises nothing', flags: [] },

  {
    name: 'a dose above the label stops',
    label: { rates },
    use: 'foliar',
    dose: '8.001 mL/L',
    flags: ['stop dose-outside-label'],
  },
  { name: 'a dose at the most of the label is within it', label: { rates }, use: 'foliar', dose: '8 mL/L', flags: [] },
  {
    name: 'a dose below the label warns',
    label: { rates },
    use: 'foliar',
    dose: '3.999 mL/L',
    flags: ['warn dose-outside-label'],
  },
  // 4 mL/L is 0.4 %.
  {
    name: 'a dose at the least of the label, in other words, is within it',
    label: { rates },
    use: 'foliar',
    dose: '0.4 %',
    flags: [],
  },
  {
    name: 'a use that the label does not name warns',
    label: { rates },
    use: 'drench',
    flags: ['warn dose-outside-label'],
  },
  { name: 'a label without rates judges no dose', dose: '50 %', flags: [] },

  // The 365 days ending with 1 June 2026 begin on 2 June 2025.
  {
    name: 'a third application in the 365 days of two is one too many',
    label: { maxApplicationsPerYear: 2 },
    sprayed: [on('2025-06-02'), on('2026-01-10')],
    flags: ['stop too-many-applications'],
  },
  {
    name: 'an application a year ago to the day no longer counts',
    label: { maxApplicationsPerYear: 2 },
    sprayed: [on('2025-06-01'), on('2026-01-10')],
    flags: [],
  },

  {
    name: 'six days after the last one is too soon for seven',
    label: { minDaysBetween: 7 },
    sprayed: [on('2026-05-26')],
    flags: ['stop too-soon'],
  },
  {
    name: 'seven days after the last one is not',
    label: { minDaysBetween: 7 },
    sprayed: [on('2026-05-25')],
    flags: [],
  },
  {
    name: 'planned sprayings are too soon after one another, from the second on',
    label: { minDaysBetween: 3 },
    repeat: 'FREQ=DAILY;INTERVAL=2;COUNT=2',
    flags: ['stop too-soon 2026-06-03'],
  },

  {
    name: 'the same mode a third time in a row warns',
    label: { modes: ['IRAC 3A'] },
    sprayed: [on('2026-05-01'), on('2026-05-15')],
    flags: ['warn mode-repeated'],
  },
  { name: 'a second time does not', label: { modes: ['IRAC 3A'] }, sprayed: [on('2026-05-15')], flags: [] },

  {
    name: 'what must not be mixed stops, by name',
    label: { doNotMixWith: ['p2 GREEN'] },
    second: { name: 'P2 green', label: { reiHours: 0 } },
    flags: ['stop must-not-mix'],
  },
  {
    name: 'by substance, from the other side',
    second: { label: { reiHours: 0, doNotMixWith: ['ec'] } },
    flags: ['stop must-not-mix'],
  },
  {
    name: 'by kind',
    label: { doNotMixWith: ['Surfactant'] },
    second: { kind: 'surfactant', label: { reiHours: 0 } },
    flags: ['stop must-not-mix'],
  },
  {
    name: 'by substance',
    label: { doNotMixWith: ['sulfur'] },
    second: { contents: [{ substance: 'Sulfur', amount: 10, basis: '% w/v' }], label: { reiHours: 0 } },
    flags: ['stop must-not-mix'],
  },
  {
    name: 'another substance may be mixed',
    label: { doNotMixWith: ['sulfur'] },
    second: { label: { reiHours: 0 } },
    flags: [],
  },

  { name: 'a target pH at the end of the label is inside', label: { sprayPh }, targetPh: 7, flags: [] },
  { name: 'a target pH beyond it warns', label: { sprayPh }, targetPh: 7.01, flags: ['warn ph-outside-range'] },
  {
    name: 'without a target the pH of the water counts',
    label: { sprayPh },
    water: { alkalinityMgPerLCaCO3: 90, pH: 7.5 },
    flags: ['warn ph-outside-range'],
  },
  {
    name: 'a pH that nobody knows warns where the label has a range',
    label: { sprayPh },
    flags: ['warn ph-outside-range'],
  },

  {
    name: 'a container past its last day with something in it warns',
    lots: [STOCK, { ...STOCK, id: 'old', expiresOn: '2026-05-31', openedOn: '2026-02-01', remaining: '1 mL' }],
    flags: ['warn lot-expired'],
  },
  {
    name: 'an empty one does not',
    lots: [STOCK, { ...STOCK, id: 'old', expiresOn: '2026-05-31', openedOn: '2026-02-01', remaining: '0 mL' }],
    flags: [],
  },
  {
    name: 'one on its last day does not',
    lots: [STOCK, { ...STOCK, id: 'old', expiresOn: '2026-06-01', openedOn: '2026-02-01', remaining: '1 mL' }],
    flags: [],
  },
  {
    name: 'a container without a last day is noted',
    lots: [{ ...STOCK, expiresOn: null }],
    flags: ['note unknown-expiry'],
  },

  // Ended at 07:01 and 12 h: closed until 19:01, and the spraying starts at 19:00.
  {
    name: 'a start while the bench is closed stops',
    label: { reiHours: 12 },
    sprayed: [['2026-06-01T06:30:00Z', '2026-06-01T07:01:00Z']],
    flags: ['stop bench-closed'],
  },
  {
    name: 'a start at the moment it reopens does not',
    label: { reiHours: 12 },
    sprayed: [['2026-06-01T06:30:00Z', '2026-06-01T07:00:00Z']],
    flags: [],
  },

  // 19:00–19:30, and 13.5 h to 09:00.
  { name: 'reopening when the shop opens is clear of it', customers: true, label: { reiHours: 13.5 }, flags: [] },
  {
    name: 'a minute later is closed in opening hours',
    customers: true,
    label: { reiHours: 13.51 },
    flags: ['warn closed-in-opening-hours'],
  },
  { name: 'starting as the shop closes is clear of it', customers: true, startTime: '18:00', flags: [] },
  {
    name: 'starting a minute before is not, even without an interval',
    customers: true,
    startTime: '17:59',
    flags: ['warn closed-in-opening-hours'],
  },
  { name: 'a bench that customers cannot reach may be closed', label: { reiHours: 24 }, flags: [] },

  { name: 'an unknown interval stops', label: { reiHours: null }, flags: ['stop rei-unknown'] },
  {
    name: 'and overlaps the opening hours of a bench with customers',
    customers: true,
    label: { reiHours: null },
    flags: ['stop rei-unknown', 'warn closed-in-opening-hours'],
  },

  // 1 L at 5 mL/L takes 5 mL; 4 mL are there.
  {
    name: 'what is short stops; without an offer its cost is noted as unknown',
    lots: [{ ...STOCK, openedOn: '2026-05-01', remaining: '4 mL' }],
    flags: ['stop short', 'note unknown-cost'],
  },
  {
    name: 'a lot whose price was never entered costs unknown',
    lots: [{ ...STOCK, paid: null }],
    flags: ['note unknown-cost'],
  },
])('$name', ({ flags, name: _, ...given }) => {
  const expected = flags.map((flag) => (flag.endsWith('03') ? flag : `${flag} ${TODAY}`));
  expect(flagsOf(given).toSorted()).toEqual(expected.toSorted());
});
