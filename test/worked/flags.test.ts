import { expect, test } from 'vitest';
import { flagRows, planOf, shopWith, type Written } from './plan-of';

/*
 * Each rule in its simplest case, and the nearest case in which it does not fire. Source of every case here: worked by
 * hand from the definitions of the shop file.
 */

type Product = NonNullable<Written['products']>[number];
type Case = {
  label?: Product['label'];
  dose?: string;
  use?: string;
  /** When the bench was sprayed with the same recipe before: start and end. */
  sprayed?: [startedAt: string, endedAt: string | null][];
  startTime?: string;
  customers?: boolean;
  second?: Partial<Product>;
  lots?: Written['lots'];
  repeat?: string;
  water?: NonNullable<Written['shop']>['water'];
  targetPh?: number;
  harvestOn?: string;
  useWithinHours?: number;
  /** What the sprayed product holds, where it is not just anything. */
  substance?: string;
  monthlyHighsC?: number[];
};

const TODAY = '2026-06-01';
const STOCK = {
  id: 'l1',
  product: 'p1',
  pack: '1 L',
  paid: '10.00',
  receivedOn: '2026-01-05',
  expiresOn: '2027-01-05',
};

/** One liquid on one bench, sprayed on Monday 1 June 2026 at 19:00 for 30 minutes; the shop is open 9:00 to 18:00. */
function flagsOf({
  label,
  dose = '5 mL/L',
  use,
  sprayed = [],
  startTime,
  customers = false,
  second,
  lots,
  repeat,
  water,
  targetPh,
  harvestOn,
  useWithinHours,
  substance,
  monthlyHighsC,
}: Case) {
  const hours: [string, string][] = [['09:00', '18:00']];
  const others = second ? [{ id: 'p2', name: 'P2', kind: 'other' as const, form: 'liquid' as const, ...second }] : [];
  const plan = planOf(
    shopWith({
      shop: {
        water,
        monthlyHighsC,
        openingHours: { mon: hours, tue: hours, wed: hours, thu: hours, fri: hours, sat: hours, sun: hours },
      },
      products: [
        {
          id: 'p1',
          name: 'P1',
          kind: 'insecticide',
          form: 'liquid',
          formulation: 'EC',
          contents: substance ? [{ substance, amount: 80, basis: '% w/w' }] : [],
          label: { reiHours: 0, ...label },
        },
        ...others,
      ],
      lots: [...(lots ?? [STOCK]), ...others.map(({ id }) => ({ ...STOCK, id: 'l2', product: id }))],
      benches: [
        { id: 'b1', name: 'Bench', customers, harvestOn, plants: [{ name: 'plant', count: 10, mlPerPlant: 100 }] },
      ],
      recipes: [
        {
          id: 'r1',
          name: 'Recipe',
          targetPh,
          useWithinHours,
          ingredients: [{ product: 'p1', dose, use }, ...others.map(({ id }) => ({ product: id, dose: '1 mL/L' }))],
        },
      ],
      programs: [
        {
          id: 'g1',
          recipes: ['r1'],
          benches: ['b1'],
          startsOn: TODAY,
          repeat,
          startTime: startTime ?? '19:00',
          minutes: 30,
        },
      ],
      applications: sprayed.map(([startedAt, endedAt], index) => ({
        id: `a${index}`,
        recipe: 'r1',
        benches: ['b1'],
        startedAt,
        endedAt,
      })),
    }),
    TODAY,
    1,
  );
  return flagRows(plan);
}

const rates = [{ use: 'foliar', min: '4 mL/L', max: '8 mL/L' }];
const on = (day: string): [string, string] => [`${day}T12:00:00Z`, `${day}T12:30:00Z`];

const COOL = Array.from({ length: 12 }, () => 20);

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
  { name: 'a pH that nobody knows is not judged', label: { sprayPh }, flags: [] },

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
  const expected = flags.map((flag) => (flag.endsWith('03') ? flag : `${flag} ${TODAY}`));
  expect(flagsOf(given).toSorted()).toEqual(expected.toSorted());
});
