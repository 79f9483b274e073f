import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { missingFields } from '@/lib/engine/record/required';
import { mayGoOn, recordMayGoOn } from '@/lib/engine/record/retention';
import { recordRows } from '@/lib/views/records-csv';
import { csvText } from '@/shared/csv/write-rows';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { Instant } from '@/shared/time/instant';
import { Zone } from '@/shared/time/zone';
import { shopWith } from '../worked/plan-of';

/*
 * How long records of spraying are kept, and what they hold. `seen` was read in a copy of the source; `memory` was recalled
 * and not looked up again.
 */

const zone = Zone.parse('America/New_York');
const at = (text: string) => Instant.parse(Date.parse(text));
const keptUntil = (endedAt: string, reiHours: number | null, keepRecordsYears = 2) =>
  recordMayGoOn(
    [
      {
        startedAt: at('2026-03-01T12:00:00Z'),
        endedAt: at(endedAt),
        products: [{ reiMinutes: reiHours === null ? null : reiHours * 60 }],
      },
    ],
    { zone, keepRecordsYears },
  );

// 40 CFR 170.311(b)(6): two years from the day on which the restricted-entry interval expires (memory).
test.each([
  { ended: '2026-03-31T08:00:00-04:00', reiHours: 0, until: '2028-03-31' },
  { ended: '2026-03-31T08:00:00-04:00', reiHours: 12, until: '2028-03-31' },
  { ended: '2026-03-31T20:00:00-04:00', reiHours: 12, until: '2028-04-01' },
  { ended: '2026-03-31T08:00:00-04:00', reiHours: 48, until: '2028-04-02' },
  { ended: '2026-03-31T08:00:00-04:00', reiHours: null, until: '2028-03-31' },
])('two years: ended $ended, an interval of $reiHours h, kept until $until (memory)', ({ ended, reiHours, until }) => {
  expect(keptUntil(ended, reiHours)).toBe(until);
});

test.each([
  { years: 2, until: '2028-03-31', source: '7 CFR 110.3(c) and 7 U.S.C. 136i-1(a)(1): two years (seen)' },
  { years: 3, until: '2029-03-31', source: 'Regulation (EC) 1107/2009, Art. 67(1): three years (memory)' },
  { years: 1, until: '2028-03-31', source: 'no fewer than two years, whatever a shop sets (seen, as above)' },
])(
  'a shop that keeps records for $years years keeps one of 31 March 2026 until $until: $source',
  ({ years, until }) => {
    expect(mayGoOn(Day.parse('2026-03-31'), years)).toBe(until);
    expect(keptUntil('2026-03-31T08:00:00-04:00', 0, years)).toBe(until);
  },
);

test('a file may ask for two years or more, and for no fewer (seen, as above)', () => {
  const accepted = [1, 2, 3].map((keepRecordsYears) => {
    const parsed = parseShopFile(JSON.stringify(shopWith({ shop: { keepRecordsYears } })));
    return parsed.ok ? parsed.file.shop.keepRecordsYears : null;
  });
  expect(accepted).toEqual([null, 2, 3]);
});

/*
 * 7 CFR 110.3(a) (seen, edocket.access.gpo.gov/cfr_2006/janqtr/7cfr110.3.htm), as the Department of Agriculture counts it
 * out (seen, ams.usda.gov/rules-regulations/pesticide-records). Two of its nine have no column of their own: the size of
 * the area treated, and the applicator's certification number; both can be said in the location and beside the name.
 */
test.each([
  ['brand or product name', 'product'],
  ['EPA registration number', 'registration number'],
  ['total amount applied', 'amount'],
  ['month, day and year', 'started'],
  ['location of the application', 'location'],
  ['crop, commodity or site', 'crop or site treated'],
  ['name of the applicator', 'applicator'],
])('the log as a list has a column for the %s: %s', (_, column) => {
  const [titles = []] = parse(csvText(recordRows({ records: [], openings: [] }))) as string[][];
  expect(titles).toContain(column);
});

test('one line of each record is in force: the first of the version that counts', () => {
  const version = (number: number, more: object = {}) => ({
    ...{ version: number, unconfirmed: false, withdrawn: false, benches: [], passed: [], recipe: { name: 'r' } },
    ...{ products: [{ id: 'a' }, { id: 'b' }], confirmed: null, seal: null, temperatureC: 20 },
    ...more,
  });
  const record = (id: string, ...versions: object[]) => ({ id, state: 'counts', drawnFrom: [], versions });
  const records = [
    record('plain', version(1)),
    record('amended', version(1), version(2)),
    record('waiting', version(1), version(2, { unconfirmed: true })),
    record('withdrawn', version(1), version(2, { withdrawn: true })),
  ];
  const [titles = [], ...rows] = recordRows({ records, openings: [] } as unknown as Parameters<typeof recordRows>[0]);
  const [id, number, force] = ['record', 'version', 'in force'].map((title) => titles.indexOf(title));
  const inForce = rows.flatMap((row) => (row[force ?? 0] === 'yes' ? [`${row[id ?? 0]} ${row[number ?? 0]}`] : []));
  expect(inForce).toEqual(['plain 1', 'amended 2', 'waiting 1']);
  expect(rows[0]?.[titles.indexOf('temperature, °F')]).toBe(68);
});

// 40 CFR 170.311(b)(1)(i) to (vi) (memory; the older 170.122(c) was seen, law.cornell.edu/cfr/text/40/170.122).
const WHOLE = {
  startedAt: at('2026-03-31T12:00:00Z'),
  endedAt: at('2026-03-31T13:00:00Z'),
  crop: '10 ferns',
  location: 'House 2',
  products: [{ name: 'P', kind: 'fungicide' as const, registration: '0-0', actives: 'captan', reiMinutes: 720 }],
};

test.each([
  ['nothing', {}, []],
  ['the end', { endedAt: null }, ['endedAt']],
  ['the crop or site', { crop: null }, ['crop']],
  ['the location', { location: null }, ['location']],
  ['the product', { products: [] }, ['product']],
  ['the registration number', { products: [{ ...WHOLE.products[0], registration: null }] }, ['registration']],
  ['the active ingredient', { products: [{ ...WHOLE.products[0], actives: null }] }, ['actives']],
  ['the interval', { products: [{ ...WHOLE.products[0], reiMinutes: null }] }, ['interval']],
])('a record that lacks %s lacks that by the regulation', (_, without, fields) => {
  const kept = { ...WHOLE, ...without } as Parameters<typeof missingFields>[0];
  expect(missingFields(kept).map(({ field }) => field)).toEqual(fields);
});
