import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import { instantOf } from '@/shared/time/instant';
import { reopens, standingOf, type WrittenHistory, type WrittenRecord, wholeMinutes } from './oracle';

/*
 * Random histories of spraying, written as a shop file and read by the program, beside the same rules worked out apart.
 * Each bench of a file is one history. KEEPOUT_HISTORIES=100000 tries as many as somebody has the patience for.
 */

const BENCHES_IN_FILE = 20;
const HISTORIES = Number(process.env.KEEPOUT_HISTORIES ?? 4_000);
const BENCHES = Array.from({ length: BENCHES_IN_FILE }, (_, at) => `b${at}`);

const ZONES = ['America/New_York', 'Europe/London', 'Australia/Lord_Howe', 'America/Santiago', 'Asia/Kathmandu', 'UTC'];

/** Labels as they are written: whole and half hours, hours with decimals, none, and unknown. */
const anyHours = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('0', '4', '12', '12.5', '24', '48', '0.01', '0.016', '0.017', '4.25', '72') },
  { weight: 3, arbitrary: fc.integer({ min: 0, max: 99_999 }).map((thousandths) => String(thousandths / 1000)) },
  { weight: 1, arbitrary: fc.constant(null) },
);

/** From a minute before the first change of the clocks of a year on, to the millisecond. */
const anyMoment = fc
  .tuple(
    fc.constantFrom('2026-03-08T06:00:00Z', '2026-11-01T05:00:00Z', '2027-02-28T12:00:00Z'),
    fc.integer({ min: 0, max: 4 * 86_400_000 }),
  )
  .map(([from, past]) => Date.parse(from) + past);
const anyLength = fc.oneof(
  fc.integer({ min: 0, max: 180 }).map((minutes) => minutes * 60_000),
  fc.integer({ min: 0, max: 86_400_000 }),
);

const PRODUCTS = ['p0', 'p1', 'p2', 'p3', 'p4'];
const RECIPES = ['r0', 'r1', 'r2', 'r3'];

const anyRecord = fc.record({
  recipe: fc.constantFrom(...RECIPES),
  benches: fc.uniqueArray(fc.constantFrom(...BENCHES), { minLength: 1, maxLength: 5 }),
  start: anyMoment,
  length: fc.option(anyLength, { freq: 12 }),
  products: fc.oneof(
    { weight: 2, arbitrary: fc.constant<WrittenRecord['products']>([]) },
    {
      weight: 1,
      arbitrary: fc.uniqueArray(
        fc.record({ product: fc.constantFrom(...PRODUCTS), reiMinutes: fc.option(fc.integer({ min: 0, max: 4_000 })) }),
        { minLength: 1, maxLength: 3, selector: ({ product }) => product },
      ),
    },
  ),
  kept: fc.option(fc.integer({ min: -86_400_000, max: 3 * 86_400_000 }), { freq: 2 }),
  isKept: fc.boolean(),
  withdrawn: fc.oneof({ weight: 5, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) }),
  writtenIn: fc.constantFrom(...ZONES),
});

const anyHistory = fc
  .record({
    hours: fc.tuple(...PRODUCTS.map(() => anyHours)),
    recipes: fc.tuple(...RECIPES.map(() => fc.uniqueArray(fc.constantFrom(...PRODUCTS), { maxLength: 3 }))),
    records: fc.array(anyRecord, { minLength: 5, maxLength: 40 }),
    zone: fc.constantFrom(...ZONES),
  })
  .map(({ hours, recipes, records, zone }) => {
    const history: WrittenHistory = {
      // The last product is a stock solution of the first.
      products: PRODUCTS.map((id, at) => ({ id, reiHours: hours[at] ?? null, madeFrom: id === 'p4' ? ['p0'] : [] })),
      recipes: RECIPES.map((id, at) => ({ id, products: recipes[at] ?? [] })),
      records: records.map((record, at): WrittenRecord => {
        const text = (moment: number) => DateTime.fromMillis(moment, { zone: record.writtenIn }).toISO() ?? '';
        const ended = record.length === null ? null : record.start + record.length;
        return {
          ...{ id: `a${at}`, recipe: record.recipe, benches: record.benches, products: record.products },
          startedAt: text(record.start),
          endedAt: ended === null ? null : text(ended),
          closedUntil: record.kept === null || !record.isKept ? null : text((ended ?? record.start) + record.kept),
          withdrawn: record.withdrawn,
        };
      }),
    };
    return { history, zone };
  });

function shopOf({ products, recipes, records }: WrittenHistory, zone: string): Shop {
  const text = JSON.stringify({
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'Any shop', timeZone: zone, currency: 'USD', fillCapacity: '10 L' },
    products: products.map(({ id, reiHours, madeFrom }) => ({
      ...{ id, name: id, kind: 'insecticide', form: 'liquid' },
      label: { reiHours: reiHours === null ? null : Number(reiHours) },
      madeFrom: madeFrom.map((product) => ({ product, dose: '100 mL/L' })),
    })),
    benches: BENCHES.map((id) => ({ id, name: id })),
    recipes: recipes.map(({ id, products: mixed }) => ({
      ...{ id, name: id },
      ingredients: mixed.map((product) => ({ product, dose: '2 mL/L' })),
    })),
    applications: records.map((record) => ({
      ...record,
      products: record.products.map((line) => ({ ...line, dose: '2 mL/L' })),
    })),
  });
  const parsed = parseShopFile(text);
  if (!parsed.ok) throw new Error(parsed.faults.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return shopOfFile(parsed.file);
}

/** The moments at which a state can change, one millisecond and one minute to either side, and one in between. */
function momentsOf(history: WrittenHistory): number[] {
  const changes = history.records.flatMap((record) => [Date.parse(record.startedAt), reopens(history, record) ?? 0]);
  const near = changes.filter((at) => at > 0).flatMap((at) => [at - 60_000, at - 1, at, at + 1, at + 60_000]);
  return [...near, Date.parse('2025-01-01T00:00:00Z'), Date.parse('2039-01-01T00:00:00Z')];
}

test(`${HISTORIES} histories: no bench opens early, none late, and each for the right reason`, {
  timeout: 3_600_000,
}, () => {
  let histories = 0;
  fc.assert(
    fc.property(anyHistory, ({ history, zone }) => {
      const shop = shopOf(history, zone);
      for (const now of momentsOf(history)) {
        const found = keepOut(shop, instantOf(now));
        for (const { bench, state, until, because } of found) {
          const wanted = standingOf(history, bench.id, now);
          // The one fault that may never be: an open bench before its time.
          if (state === 'open' && wanted.state !== 'open') throw new Error(`${bench.id} opens early at ${now}`);
          const said = because.map(({ id }) => id).join();
          if (state !== wanted.state || until !== wanted.until || said !== wanted.because.join()) {
            expect({ bench: bench.id, now, state, until, because: said }).toEqual({ ...wanted, bench: bench.id, now });
          }
        }
      }
      histories += BENCHES_IN_FILE;
    }),
    { numRuns: Math.round(HISTORIES / BENCHES_IN_FILE) },
  );
  expect(histories).toBeGreaterThanOrEqual(HISTORIES - BENCHES_IN_FILE);
});

test.each([
  ['0', 0],
  ['0.01', 1],
  ['0.016', 1],
  ['0.017', 2],
  ['12.5', 750],
  ['4.25', 255],
])('%s hours are %i minutes', (hours, minutes) => {
  expect(wholeMinutes(hours)).toBe(minutes);
});
