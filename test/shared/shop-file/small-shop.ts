/** What JSON can say. */
export type Json = string | number | boolean | null | Json[] | { [field: string]: Json };
export type Path = (string | number)[];

/** A small shop that uses every field of the format once. A fresh copy each time, to be spoiled at will. */
export const smallShop = (): Json => ({
  format: 'bench-and-bottle/shop@1',
  shop: {
    name: 'Corner greenhouse',
    timeZone: 'America/New_York',
    currency: 'USD',
    units: 'us',
    openingHours: {
      mon: [
        ['09:00', '12:00'],
        ['13:00', '18:00'],
      ],
      tue: [],
      wed: [],
      thu: [],
      fri: [['09:00', '24:00']],
      sat: [],
      sun: [],
    },
    water: { alkalinityMgPerLCaCO3: 120, pH: 7.6 },
    fillCapacity: '2 gal',
    lossPerFill: '100 mL',
    measuringStep: '0.5 L',
    sprayers: [{ name: 'Backpack', capacity: '2 gal', lossPerFill: '100 mL', measuringStep: '0.5 L' }],
    measures: [{ name: '10 mL syringe', holds: '10 mL', step: '0.5 mL' }],
    dropMl: 0.04,
    conductivityLimit: 2.5,
    safetyDays: 3,
    wagePerHour: '18.00',
    sameModeInARow: 2,
    capitalPerYear: 0.1,
  },
  suppliers: [
    {
      id: 's1',
      name: 'North depot',
      freightPerOrder: '12.00',
      freeFreightOver: '150.00',
      minimumOrder: '0',
      workingDays: ['mon', 'tue', 'wed', 'thu', 'fri'],
      archived: false,
    },
  ],
  products: [liquid(), powder()],
  offers: [
    {
      id: 'o1',
      supplier: 's1',
      product: 'p1',
      pack: '1 gal',
      price: '212.00',
      breaks: [{ atLeast: 4, price: '198.00' }],
      leadDays: 5,
      since: '2026-01-05',
      earlier: [{ since: '2025-01-07', price: '205.00', breaks: [] }],
      archived: false,
    },
  ],
  lots: [
    {
      id: 'l1',
      product: 'p1',
      pack: '1 qt',
      count: 1,
      remaining: '600 mL',
      paid: '74.00',
      receivedOn: '2026-02-02',
      openedOn: '2026-02-10',
      expiresOn: '2027-02-01',
      keptIn: 'cabinet',
    },
    {
      id: 'l2',
      product: 'p2',
      pack: '250 g',
      count: 3,
      remaining: null,
      paid: '10.00',
      receivedOn: '2026-02-02',
      openedOn: null,
      expiresOn: null,
    },
  ],
  benches: [
    {
      id: 'b1',
      name: 'Front bench',
      customers: true,
      enclosed: true,
      coverage: 1,
      area: '130 sq ft',
      plants: [{ name: 'Herbs', pot: '4 in', count: 120, mlPerPlant: 18 }],
    },
    { id: 'b2', name: 'Back bench', customers: false, enclosed: true, coverage: 1.1, plants: [] },
  ],
  recipes: [
    {
      id: 'r1',
      name: 'Leaf spray',
      targetPh: 6.2,
      useWithinHours: 8,
      ingredients: [
        { product: 'p1', dose: '12 mL/gal', use: 'ornamentals, foliar', order: 2 },
        { product: 'p2', dose: '1 tsp/gal', use: null },
      ],
    },
  ],
  programs: [
    {
      id: 'g1',
      recipes: ['r1'],
      benches: ['b1', 'b2'],
      startsOn: '2026-03-03',
      endsOn: '2026-12-31',
      repeat: 'FREQ=WEEKLY;BYDAY=TU',
      startTime: '17:30',
      minutes: 45,
      changes: [
        {
          on: '2026-06-09',
          kind: 'moved',
          application: null,
          movedTo: '2026-06-10',
          startTime: '18:00',
          reason: 'wind',
        },
      ],
    },
  ],
  applications: [
    {
      id: 'a1',
      recipe: 'r1',
      benches: ['b1'],
      startedAt: '2026-02-24T22:30:00Z',
      endedAt: '2026-02-24T23:10:00Z',
      by: 'Ada',
      products: [{ product: 'p1', dose: '12 mL/gal', amount: '24 mL', reiMinutes: 750 }],
      sprayed: '2 gal',
      leftover: '100 mL',
      leftoverWent: 'on the next bench',
      conditions: 'calm, 18 °C',
      pH: 6.1,
      acid: { product: 'p2', amount: '2 g' },
      passed: [{ rule: 'too-soon', reason: 'the first round was washed off by rain' }],
      plannedCost: '3.20',
      cost: '3.25',
      plants: null,
    },
  ],
});

function liquid(): Json {
  return {
    id: 'p1',
    name: 'Leaf guard',
    kind: 'insecticide',
    form: 'liquid',
    formulation: 'EC',
    densityGPerMl: 0.95,
    gramsPerTeaspoon: null,
    contents: [{ substance: 'pyrethrins', amount: 1.4, basis: '% w/w' }],
    label: {
      rates: [{ use: 'ornamentals, foliar', min: '8 mL/gal', max: '20 mL/gal' }],
      reiHours: 12.5,
      phiDays: 0,
      maxApplicationsPerYear: 12,
      minDaysBetween: 7,
      modes: ['IRAC 3A'],
      signalWord: 'CAUTION',
      protectiveEquipment: ['gloves'],
      sprayPh: { min: 5, max: 7 },
      doNotMixWith: ['sulfur'],
      registration: 'none',
    },
    shelfLife: { unopenedDays: 730, openedDays: 365 },
    mixOrder: null,
    alkaliSilicate: false,
    gtins: ['2000000000015'],
    archived: false,
  };
}

function powder(): Json {
  return {
    id: 'p2',
    name: 'Green feed',
    kind: 'nutrient',
    form: 'powder',
    formulation: 'SP',
    densityGPerMl: null,
    gramsPerTeaspoon: 4.2,
    contents: [{ substance: 'N', amount: 20, basis: '% w/w' }],
    label: { rates: [], reiHours: 0 },
    shelfLife: { unopenedDays: null, openedDays: null },
    mixOrder: 3,
    alkaliSilicate: false,
  };
}

/** A copy with another value at a place; `undefined` takes the field out. */
export function changed(file: Json, [step, ...rest]: Path, value: Json | undefined): Json {
  if (step === undefined) return value ?? null;
  if (Array.isArray(file)) {
    const at = Number(step);
    if (rest.length === 0 && value === undefined) return file.filter((_, index) => index !== at);
    const copy = [...file];
    copy[at] = changed(file[at] ?? null, rest, value);
    return copy;
  }
  const fields = typeof file === 'object' && file !== null ? file : {};
  const entries = Object.entries(fields).filter(([name]) => name !== step);
  if (rest.length === 0 && value === undefined) return Object.fromEntries(entries);
  return Object.fromEntries([...entries, [String(step), changed(fields[step] ?? null, rest, value)]]);
}

/** The place of everything in a file, lists and objects included. */
export function placesIn(value: Json, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inside = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return [path, ...inside.flatMap(([step, each]) => placesIn(each, [...path, step]))];
}

export function valueAt(file: Json, path: Path): Json | undefined {
  let at: Json | undefined = file;
  for (const step of path) {
    if (Array.isArray(at)) at = at[Number(step)];
    else if (typeof at === 'object' && at !== null) at = at[String(step)];
    else return undefined;
  }
  return at;
}
