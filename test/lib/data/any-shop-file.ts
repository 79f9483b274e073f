import fc from 'fast-check';
import { checkDigit } from '@/shared/measure/gtin';
import { FORMAT, type ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { addDays, Day } from '@/shared/time/day';
import { day, doseOf, maybe, money, sizeOf, tidyMoney, word } from './any-fields';
import { applicationOf, order } from './any-record';

/*
 * Whole shops at random, as files that pass parsing. Everything refers to something, and everything that may be unknown
 * sometimes is.
 */

const product = (id: string) =>
  fc
    .record({
      name: word,
      kind: fc.constantFrom('nutrient' as const, 'fungicide' as const, 'pH adjuster' as const),
      form: fc.constantFrom('liquid' as const, 'powder' as const),
      formulation: maybe(fc.constant('EC')),
      densityGPerMl: maybe(fc.double({ min: 0.5, max: 2, noNaN: true })),
      gramsPerTeaspoon: maybe(fc.double({ min: 1, max: 9, noNaN: true })),
      contents: fc.array(
        fc.record({
          substance: word,
          amount: fc.double({ min: 0, max: 99, noNaN: true }).map((amount) => amount + 0),
          basis: fc.constantFrom('% w/w' as const, 'g/L' as const),
        }),
        { maxLength: 2 },
      ),
      reiHours: maybe(fc.constantFrom(0, 4, 12.5, 0.01)),
      hotAboveC: maybe(fc.constantFrom(30, 32.5)),
      madeFrom: fc.boolean(),
      days: maybe(fc.nat(400)),
      words: fc.array(word, { maxLength: 3 }),
      sprayPh: maybe(fc.constant({ min: 5, max: 7.25 })),
      alkaliSilicate: fc.boolean(),
      archived: fc.boolean(),
      gtins: fc.constantFrom([], ['20000000001'], ['20000000002', '20000000003']),
    })
    .map((from): ShopFile['products'][number] => {
      const { reiHours, days, words, sprayPh, gtins, hotAboveC, madeFrom, ...rest } = from;
      const [min, max] = from.form === 'liquid' ? ['1 mL/L', '3 mL/L'] : ['1 g/L', '2 g/L'];
      return {
        ...rest,
        id,
        gtins: gtins.map((number) => `${id.slice(1)}${number}`).map((digits) => digits + checkDigit(digits)),
        mixOrder: days,
        madeFrom: madeFrom ? [{ product: id, dose: from.form === 'liquid' ? '5 mL/L' : '100 g/L' }] : [],
        shelfLife: { unopenedDays: days, openedDays: days },
        label: {
          rates: words.map((use) => ({ use, min, max })),
          ...{ reiHours, phiDays: days, maxApplicationsPerYear: days, minDaysBetween: days, modes: words, sprayPh },
          ...{ signalWord: null, protectiveEquipment: words, doNotMixWith: words, registration: null },
          ...{ hotAboveC, firstAid: words[0] ?? null, storage: words[1] ?? null },
        },
      };
    });

const lotOf = (id: string, { id: product, form }: ShopFile['products'][number]) =>
  fc
    .record({
      pack: sizeOf(form),
      count: fc.constantFrom(1, 1, 1, 2, 7),
      left: fc.constantFrom(null, 0, 1, 77.125, 200),
      paid: maybe(fc.oneof(money, tidyMoney)),
      receivedOn: day,
      opened: maybe(fc.nat(50)),
      expiresOn: maybe(day),
      keptIn: maybe(word),
      order: maybe(fc.constant('q0')),
      offer: maybe(fc.constant('o0')),
    })
    .map(({ left, opened, receivedOn, count, ...rest }): ShopFile['lots'][number] => ({
      ...{ id, product, count, receivedOn, ...rest },
      remaining: left === null || count > 1 ? null : `${left} ${form === 'liquid' ? 'mL' : 'g'}`,
      openedOn: opened === null || count > 1 ? null : addDays(receivedOn, opened),
    }));

const bench = (id: string) =>
  fc.record({
    id: fc.constant(id),
    name: word,
    customers: fc.boolean(),
    enclosed: fc.boolean(),
    coverage: fc.double({ min: 0.1, max: 3, noNaN: true }),
    area: maybe(fc.constantFrom('130 sq ft', '12 m2')),
    place: maybe(word),
    harvestOn: maybe(day),
    plants: fc.array(
      fc.record({
        name: word,
        pot: maybe(word),
        count: fc.nat(500),
        mlPerPlant: maybe(fc.double({ min: 0, max: 90, noNaN: true })),
      }),
      { maxLength: 3 },
    ),
  });

const ids = (letter: string, most: number, least = 0) =>
  fc.integer({ min: least, max: most }).map((n) => Array.from({ length: n }, (_, place) => `${letter}${place}`));

/** Random whole shops. */
export const anyShopFile: fc.Arbitrary<ShopFile> = fc
  .record({ productIds: ids('p', 4, 1), benchIds: ids('b', 3, 1), lotIds: ids('l', 6), programIds: ids('g', 3) })
  .chain(({ productIds, benchIds, lotIds, programIds }) =>
    fc
      .record({ products: fc.tuple(...productIds.map(product)), benches: fc.tuple(...benchIds.map(bench)) })
      .chain(({ products, benches }) => {
        const one = fc.constantFrom(...products);
        return fc.record({
          format: fc.constant(FORMAT),
          shop: settings,
          suppliers: fc.tuple(supplier),
          products: fc.constant(products),
          offers: one.chain((of) => fc.tuple(offerOf(of))),
          lots: fc.tuple(...lotIds.map((id) => one.chain((of) => lotOf(id, of)))),
          benches: fc.constant(benches),
          recipes: fc.array(one, { minLength: 1, maxLength: 3 }).chain((of) => fc.tuple(recipeOf([...new Set(of)]))),
          programs: fc.tuple(...programIds.map((id) => programOf(id, benchIds))),
          applications: one.chain((of) => fc.tuple(applicationOf(benchIds, of))),
          orders: fc.tuple(order),
        });
      }),
  )
  .map((file) => parsedOrThrow(withItsSprayers(file)));

/** A program names no sprayer where the shop names none. */
const withItsSprayers = <
  File extends { shop: { sprayers: readonly unknown[] }; programs: readonly { sprayer: string | null }[] },
>(
  file: File,
): File =>
  file.shop.sprayers.length > 0
    ? file
    : { ...file, programs: file.programs.map((program) => ({ ...program, sprayer: null })) };

const settings = fc.record({
  name: word,
  timeZone: fc.constantFrom('America/New_York', 'Europe/Berlin', 'Asia/Tokyo'),
  currency: fc.constantFrom('USD', 'EUR'),
  units: fc.constantFrom('us' as const, 'metric' as const),
  openingHours: fc.constant({
    mon: [
      ['09:00', '12:00'],
      ['13:00', '18:00'],
    ],
    sun: [],
  }),
  water: maybe(fc.constant({ alkalinityMgPerLCaCO3: 118.5, pH: 7.55 })),
  fillCapacity: fc.constant('2 gal'),
  lossPerFill: fc.constantFrom('100 mL', '0 mL'),
  measuringStep: fc.constant('0.5 L'),
  sprayers: fc.constantFrom([], [{ name: 'one', capacity: '2 gal', lossPerFill: '0 mL', measuringStep: '0.5 L' }]),
  measures: fc.constantFrom([], [{ name: 'scale', holds: '500 g', step: '0.1 g' }]),
  dropMl: fc.constantFrom(0.05, 0.031),
  conductivityLimit: maybe(fc.constant(2.5)),
  safetyDays: fc.nat(9),
  wagePerHour: maybe(money),
  sameModeInARow: fc.integer({ min: 1, max: 5 }),
  capitalPerYear: fc.double({ min: 0, max: 1, noNaN: true }),
  minutesPerPlant: maybe(fc.constant(0.25)),
  minutesPerBatch: maybe(fc.constant(20)),
  specialDays: fc.constantFrom(
    [],
    [
      { on: '2026-07-04', name: null, hours: [] },
      { on: '2026-05-09', name: 'fair', hours: [['08:00', '20:00'] as [string, string]] },
    ],
  ),
  oilSulfurDays: fc.nat(40),
  monthlyHighsC: maybe(fc.constant([18, 19.5, 21, 24, 27, 31, 33, 33, 29, 25, 21, 18])),
  oilHotC: fc.constantFrom(29.5, 32),
  keepRecordsYears: fc.integer({ min: 2, max: 9 }),
  address: maybe(word),
  contact: maybe(word),
  emergency: fc.record({
    contacts: fc.constantFrom([], [{ name: 'Ada', phone: '555 0100' }]),
    medical: maybe(word),
    poisonLine: maybe(word),
  }),
});

const supplier = fc.record({
  id: fc.constant('s0'),
  name: word,
  freightPerOrder: maybe(money),
  freeFreightOver: maybe(tidyMoney),
  minimumOrder: maybe(tidyMoney),
  workingDays: fc.constantFrom(['mon', 'tue'], ['sun']),
  closedOn: fc.subarray(['2026-07-04', '2026-12-25']),
  archived: fc.boolean(),
});

const offerOf = ({ id, form }: ShopFile['products'][number]) =>
  fc.record({
    id: fc.constant('o0'),
    supplier: fc.constant('s0'),
    product: fc.constant(id),
    pack: sizeOf(form),
    price: money,
    breaks: fc.constantFrom(
      [],
      [
        { atLeast: 4, price: '1.00' },
        { atLeast: 9, price: '0.5' },
      ],
    ),
    leadDays: maybe(fc.nat(20)),
    since: maybe(fc.constant('2026-01-01')),
    earlier: fc.constantFrom(
      [],
      [
        { since: null, price: '3.00', breaks: [] },
        { since: '2025-03-01', price: '3.50', breaks: [{ atLeast: 2, price: '3' }] },
      ],
    ),
    archived: fc.boolean(),
  });

const recipeOf = (of: ShopFile['products']) =>
  fc.record({
    id: fc.constant('r0'),
    name: word,
    targetPh: maybe(fc.constant(6.2)),
    useWithinHours: maybe(fc.constantFrom(8, 0.5)),
    ingredients: fc.tuple(
      ...of.map(({ id, form }) =>
        fc.record({ product: fc.constant(id), dose: doseOf(form), use: maybe(word), order: maybe(fc.nat(20)) }),
      ),
    ),
  });

const programOf = (id: string, benchIds: string[]) =>
  fc.record({
    id: fc.constant(id),
    recipes: fc.constantFrom(['r0'], ['r0', 'r0']),
    benches: fc.shuffledSubarray(benchIds, { minLength: 1 }),
    startsOn: fc.constant(Day.parse('2026-03-03')),
    endsOn: maybe(fc.constant(Day.parse('2026-09-03'))),
    repeat: maybe(fc.constant('FREQ=WEEKLY;BYDAY=TU')),
    startTime: fc.constantFrom('00:00', '17:30', '09:05'),
    minutes: fc.nat(90),
    sprayer: maybe(fc.constant('one')),
    changes: fc.constantFrom(
      [],
      [{ on: '2026-03-03', kind: 'done' as const, application: 'a0', movedTo: null, startTime: null, reason: null }],
      [
        {
          on: '2026-03-03',
          kind: 'moved' as const,
          application: null,
          movedTo: '2026-03-05',
          startTime: '06:15',
          reason: 'rain',
        },
      ],
    ),
  });

/** A file as parsing gives it. Throws with the faults when it is refused. */
export function parsedOrThrow(file: unknown): ShopFile {
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.file;
}
